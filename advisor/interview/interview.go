// Package interview is the parlour: a book and the case so far go in, the next
// question or "done" comes out; what a person typed becomes an answer or a
// field error. It is a pure machine: whoever asks, and wherever the case is
// kept, sits behind a port.
package interview

import (
	"slices"

	"longstand/advisor"
)

// Adviser works out the advice on a case. The engine is one.
type Adviser interface {
	Book() *advisor.Book
	Advise(c *advisor.Case) *advisor.Advice
	Open(c *advisor.Case) []advisor.OpenQuestion // the advice's open questions alone
	// Cautions are the safety notes of some hazards as they apply to the case.
	Cautions(c *advisor.Case, hazards []string) []advisor.CautionAdvice
}

// Options are how far an interview goes.
type Options struct {
	All   bool // every question of the walk-round, whatever it changes
	Brief bool // only what is worth its minutes or feeds the structure
}

// Interview is one intake under way.
type Interview struct {
	adviser Adviser
	book    *advisor.Book
	options Options
	c       *advisor.Case
	advice  *advisor.Advice        // of c; nil after a change
	open    []advisor.OpenQuestion // of c
	known   bool                   // open is of c
	before  []advisor.OpenQuestion // of c without the answers of what is put again; nil when nothing is
	history []string               // questions answered or skipped, the last one last
	skipped map[string]bool
	warned  map[string]bool         // cautions that were shown whole
	notes   []advisor.CautionAdvice // all cautions that apply to c; nil after a change
	station string                  // asked for by the person; "" is the walk-round's order
	again   string                  // the question that back returned to
	asked   int
	onceOf  map[string]*advisor.OnceOver // by question
	put     map[string][]string          // by once-over: its questions as put last
	swept   map[string]map[string]bool   // by once-over, once answered: the questions that it answered
	passed  map[string]bool              // once-overs left for another time
	queue   []string                     // questions that a once-over left to be asked by themselves
}

// New starts an interview, or goes on with a case that has answers already.
func New(a Adviser, c *advisor.Case, o Options) *Interview {
	iv := &Interview{adviser: a, book: a.Book(), options: o, c: c, skipped: map[string]bool{}, warned: map[string]bool{},
		onceOf: map[string]*advisor.OnceOver{}, put: map[string][]string{}, swept: map[string]map[string]bool{}, passed: map[string]bool{}}
	for i := range iv.book.OnceOvers {
		for j := range iv.book.OnceOvers[i].Members {
			iv.onceOf[iv.book.OnceOvers[i].Members[j].Question] = &iv.book.OnceOvers[i]
		}
	}
	for i := range c.Answers {
		if q := iv.Question(c.Answers[i].Question); q != nil && q.Station != "inspection" {
			iv.history = append(iv.history, q.ID)
		}
	}
	iv.history = slices.Compact(iv.history)
	return iv
}

// Case is the case as answered so far.
func (iv *Interview) Case() *advisor.Case { return iv.c }

// Advice is the advice on the case as answered so far.
func (iv *Interview) Advice() *advisor.Advice {
	if iv.advice == nil {
		iv.advice = iv.adviser.Advise(iv.c)
	}
	return iv.advice
}

// matters are the open questions of the case as answered so far.
func (iv *Interview) matters() []advisor.OpenQuestion {
	if !iv.known {
		iv.open, iv.known = iv.adviser.Open(iv.c), true
	}
	return iv.open
}

// Question gives a question of the book by its id, or nil.
func (iv *Interview) Question(id string) *advisor.Question {
	return iv.book.Question(id)
}

// Next gives the next question or once-over, or nil when there is nothing left to ask.
func (iv *Interview) Next() *Prompt {
	iv.before = nil
	if o := iv.book.OnceOver(iv.again); o != nil {
		iv.before = iv.openWithout(iv.put[o.ID]...)
		return iv.oncePrompt(o, iv.put[o.ID], 0)
	}
	if iv.again != "" {
		iv.before = iv.openWithout(iv.again)
		return iv.prompt(advisor.OpenQuestion{ID: iv.again}, 0)
	}
	open := iv.left()
	if id := iv.queued(); id != "" {
		return iv.prompt(advisor.OpenQuestion{ID: id}, len(open))
	}
	if len(open) == 0 {
		return nil
	}
	at := 0
	if iv.station != "" {
		at = slices.IndexFunc(open, func(o advisor.OpenQuestion) bool { return o.Station == iv.station })
		if at < 0 {
			at, iv.station = 0, ""
		}
	}
	if o, listed := iv.together(open[at].ID); o != nil {
		return iv.oncePrompt(o, listed, len(open))
	}
	return iv.prompt(open[at], len(open))
}

// Take goes on with the case in which a question was answered.
func (iv *Interview) Take(id string, c *advisor.Case) {
	iv.warn(iv.Question(id))
	iv.went(id, c)
}

// went goes on with the case after a question or a once-over.
func (iv *Interview) went(id string, c *advisor.Case) {
	iv.c, iv.advice, iv.notes, iv.known, iv.again = c, nil, nil, false, ""
	iv.history = append(slices.DeleteFunc(iv.history, func(h string) bool { return h == id }), id)
	iv.queue = slices.DeleteFunc(slices.Clone(iv.queue), func(q string) bool { return q == id })
	iv.asked++
}

// Skip leaves a question or a once-over for another time, or with the answers
// that it has.
func (iv *Interview) Skip(id string) {
	if iv.again == id {
		iv.again = ""
	}
	iv.history = append(iv.history, id)
	iv.queue = slices.DeleteFunc(slices.Clone(iv.queue), func(q string) bool { return q == id })
	if o := iv.book.OnceOver(id); o != nil {
		iv.pass(o)
		return
	}
	for i := range iv.c.Answers {
		if iv.c.Answers[i].Question == id {
			return
		}
	}
	iv.skipped[id] = true
}

// Go moves to another station; false when nothing is left to ask there. What
// was skipped there is asked again.
func (iv *Interview) Go(station string) bool {
	before := iv.skipped
	iv.skipped = map[string]bool{}
	for id := range iv.passed {
		if iv.book.OnceOver(id).Station == station {
			delete(iv.passed, id)
		}
	}
	for id := range before {
		if q := iv.Question(id); q.Station != station {
			iv.skipped[id] = true
		}
	}
	for _, o := range iv.left() {
		if o.Station == station {
			iv.station, iv.again, iv.queue = station, "", nil
			return true
		}
	}
	return false
}

// Skipped lists the questions that were left for another time, in the book's order.
func (iv *Interview) Skipped() (ids []string) {
	for i := range iv.book.Questions {
		if id := iv.book.Questions[i].ID; iv.skipped[id] {
			ids = append(ids, id)
		}
	}
	return ids
}

// About is a question as a prompt of its own, outside the interview's order.
func (iv *Interview) About(q *advisor.Question) *Prompt {
	return iv.prompt(advisor.OpenQuestion{ID: q.ID}, 0)
}
