package interview

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Prompt is one question as it is put to a person. Everything is in words.
type Prompt struct {
	Question *advisor.Question // of a once-over: its words, with its questions as options
	Once     *Once             // of a once-over
	Number   int               // of this sitting, from 1
	Left     int               // how many are left with this one, 0 when it is asked again
	Reasons  []string          // what it bears on, the nearest first
	Cautions []string          // before a look that can hurt
	Options  []string          // option names, in the order of their numbers
	Form     string            // what an answer looks like, and how it is taken to be known
	Now      []*advisor.Answer // the answers that the case has, when it is asked again
	Repeated bool              // shown just before: a short form will do
	currency string
	day      float64 // the day of the case, as a decimal year
}

func (iv *Interview) prompt(o advisor.OpenQuestion, left int) *Prompt {
	q := iv.Question(o.ID)
	p := &Prompt{Question: q, Number: iv.asked + 1, Left: left, Reasons: iv.reasons(&o, q),
		Cautions: iv.cautions(q), currency: iv.book.Settings.Currency, day: iv.c.Day}
	for i := range q.Options {
		p.Options = append(p.Options, q.Options[i].Name)
	}
	p.Form = p.form()
	for i := range iv.c.Answers {
		if iv.c.Answers[i].Question == q.ID {
			p.Now = append(p.Now, &iv.c.Answers[i])
		}
	}
	return p
}

// reasons says in words what an answer bears on.
func (iv *Interview) reasons(o *advisor.OpenQuestion, q *advisor.Question) (out []string) {
	if len(o.Feeds)+len(o.Suspects) == 0 {
		for _, open := range iv.around() {
			if open.ID == q.ID {
				o = &open
			}
		}
	}
	for _, id := range o.Feeds {
		out = append(out, iv.nameOf(id))
	}
	for _, id := range o.Suspects {
		out = append(out, iv.nameOf(id))
	}
	out = oneOfEach(out)
	switch {
	case len(out) > 0:
	case q.Rank > 0:
		out = []string{"asked of every car first"}
	case q.Always:
		out = []string{"asked of every car, for the record"}
	default:
		out = []string{changesNothing}
	}
	return out
}

const changesNothing = "it changes nothing in this case; asked because everything was wanted"

// oneOfEach puts the first reason of each kind before the others.
func oneOfEach(reasons []string) []string {
	var first, others []string
	met := map[string]bool{}
	for _, r := range reasons {
		kind, _, _ := strings.Cut(r, ":")
		if met[kind] {
			others = append(others, r)
		} else {
			first = append(first, r)
		}
		met[kind] = true
	}
	return append(first, others...)
}

// nameOf gives the words for an id of the book.
func (iv *Interview) nameOf(id string) string {
	b := iv.book
	for i := range b.Suspects {
		if b.Suspects[i].ID == id {
			return "suspected: " + b.Suspects[i].Name
		}
	}
	for i := range b.Operations {
		if b.Operations[i].ID == id {
			return "work: " + b.Operations[i].Name
		}
	}
	for i := range b.Holds {
		if b.Holds[i].ID == id {
			return "hold: stands until " + b.Holds[i].Name
		}
	}
	for i := range b.Standing {
		if b.Standing[i].ID == id {
			return "standing rule: " + strings.TrimSuffix(b.Standing[i].Because, ".")
		}
	}
	for i := range b.Inspections {
		if b.Inspections[i].ID == id {
			return "look: " + b.Inspections[i].Name
		}
	}
	switch id {
	case advisor.FeedsCare:
		return "price: how dear a job put off is reckoned"
	case advisor.FeedsHours:
		return "hours: how long every job takes"
	}
	return id
}

// form says what an answer looks like, and the default channel.
func (p *Prompt) form() string {
	q := p.Question
	unit := q.Unit
	if unit == "money" {
		unit = p.currency
	}
	var form string
	switch q.Kind {
	case advisor.YesNoKind:
		form = "yes or no"
	case advisor.Choice:
		form = "a number or a word; not 2 is anything but 2"
	case advisor.Choices:
		form = "all that apply, by number or word, or none"
	case advisor.NumberKind:
		form = "a figure or a range"
	case advisor.ReadingsKind:
		form = "the figures, a space between them"
	case advisor.Year:
		form = "a year"
	case advisor.Code:
		form = "the code as stamped"
	default:
		form = "in your own words"
	}
	if unit != "" {
		form += " in " + unit
	}
	if q.Low < q.High && (q.Kind == advisor.NumberKind || q.Kind == advisor.Year || q.Kind == advisor.ReadingsKind) {
		form += fmt.Sprintf(" from %s to %s", plain(q.Low), plain(q.High))
	}
	return form + "; " + knownAs[q.How] + " unless you say otherwise"
}

// knownAs are the channels in words.
var knownAs = map[advisor.Channel]string{advisor.Seen: "taken as seen", advisor.Measured: "taken as measured",
	advisor.Paper: "taken as known from paper", advisor.Owner: "taken as the owner's word",
	advisor.Secondhand: "taken as hearsay", advisor.Nohow: "taken as seen"}
