package interview

import (
	"slices"
	"strings"

	"longstand/advisor"
)

// HoursOf is what stands before an operation's id where its hours are meant.
const HoursOf = "hours:"

// Closing asks at the end of a job what was found of the suspects and how long
// the work took. It is a machine like Interview, and asks through the same
// askers. The forecast is not shown beside a question: who knows it finds it.
type Closing struct {
	book    *advisor.Book
	c       *advisor.Case
	asks    []toClose // in asking order
	passed  map[string]bool
	history []string
	again   string
	asked   int
}

// toClose is one thing to ask: what was found of a suspect, or the hours of an
// operation.
type toClose struct {
	id        string
	suspect   *advisor.Suspect
	operation *advisor.Operation
	reasons   []string
}

// Ending is one thing said at the end of a job: of the two, one is set.
type Ending struct {
	Looked *advisor.Looked
	Taken  *advisor.Taken
}

// NewClosing starts to close a job, or goes on with it. It asks of suspects
// whose cure is done, that were looked at, or whose place was opened, in this
// order, and of every other with all; then of the hours of what was done.
func NewClosing(b *advisor.Book, a *advisor.Advice, all bool) *Closing {
	cl := &Closing{book: b, c: a.Case, passed: map[string]bool{}}
	cl.asks = append(worthAsking(b, a, all), hoursOf(b, a.Case)...)
	return cl
}

// hoursOf lists the operations done, each once.
func hoursOf(b *advisor.Book, c *advisor.Case) (out []toClose) {
	for i := range c.Done {
		id := HoursOf + c.Done[i].Operation
		if op := b.Operation(c.Done[i].Operation); op != nil && !slices.ContainsFunc(out, func(t toClose) bool { return t.id == id }) {
			out = append(out, toClose{id: id, operation: op, reasons: []string{"done: " + op.Name}})
		}
	}
	return out
}

// Open lists what is still to be asked: ids of suspects, and HoursOf with ids
// of operations.
func (cl *Closing) Open() (ids []string) {
	for i := range cl.asks {
		if id := cl.asks[i].id; !cl.said(id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// said tells whether the case says it.
func (cl *Closing) said(id string) bool {
	if op, hours := strings.CutPrefix(id, HoursOf); hours {
		return cl.c.Took(op) != nil
	}
	return cl.c.LookedAt(id) != nil
}

// Skipped lists what was left for another time.
func (cl *Closing) Skipped() (ids []string) {
	for _, id := range cl.Open() {
		if cl.passed[id] {
			ids = append(ids, id)
		}
	}
	return ids
}

// About is the question of a suspect's id, or of HoursOf with an operation's,
// whether or not it is to be asked; nil when the book has no such id.
func (cl *Closing) About(id string) *Prompt {
	for i := range cl.asks {
		if cl.asks[i].id == id {
			return cl.prompt(&cl.asks[i])
		}
	}
	if op, hours := strings.CutPrefix(id, HoursOf); hours {
		if o := cl.book.Operation(op); o != nil {
			return cl.prompt(&toClose{id: id, operation: o})
		}
		return nil
	}
	if s := cl.book.Suspect(id); s != nil {
		return cl.prompt(&toClose{id: id, suspect: s})
	}
	return nil
}

// findings are the options of what can be found, in the order of
// advisor.Findings without what cannot be told, which is said as ever.
var findings = []advisor.Option{{ID: "found", Name: "found: it was there"},
	{ID: "sound", Name: "sound: looked at, and it was not there"}, {ID: "not_looked_at", Name: "not looked at"}}

// prompt puts one thing as a question of its own.
func (cl *Closing) prompt(t *toClose) *Prompt {
	q := &advisor.Question{ID: t.id, Station: "end of the job", How: advisor.Seen}
	p := &Prompt{Question: q, Number: cl.asked + 1, Reasons: t.reasons, day: cl.c.Day, currency: cl.book.Settings.Currency}
	if t.operation != nil {
		q.Kind, q.Unit, q.High = advisor.NumberKind, "h", mostHours
		q.Ask = "Hours taken: " + t.operation.Name
		q.Help = "All hours worked on it, access not counted where it has hours of its own."
		p.Form = "one figure in hours, as 2.5; c when nobody noted them"
		p.Now = hoursNow(cl.c.Took(t.operation.ID), q)
		return p
	}
	q.Kind, q.Options = advisor.Choice, findings
	q.Ask = "What was found: " + t.suspect.Name
	q.Help = "Nobody looked is not the same as not there."
	for i := range findings {
		p.Options = append(p.Options, findings[i].Name)
	}
	p.Form = "a number or a word; c when it was looked at and nobody could say"
	p.Now = foundNow(cl.c.LookedAt(t.suspect.ID), q)
	return p
}

// mostHours bounds the hours of one operation as a case does.
const mostHours = 2000

func foundNow(l *advisor.Looked, q *advisor.Question) []*advisor.Answer {
	if l == nil {
		return nil
	}
	a := &advisor.Answer{Value: advisor.Value{State: advisor.CantTell}}
	if i, ok := q.OptionBit(strings.ReplaceAll(l.Found, " ", "_")); ok {
		a.Value = advisor.OneOf(1 << i)
	}
	return []*advisor.Answer{a}
}

func hoursNow(t *advisor.Taken, q *advisor.Question) []*advisor.Answer {
	switch {
	case t == nil:
		return nil
	case !t.Known:
		return []*advisor.Answer{{Value: advisor.Value{State: advisor.CantTell}}}
	}
	return []*advisor.Answer{{Value: advisor.Number(t.Hours), Written: plain(t.Hours)}}
}
