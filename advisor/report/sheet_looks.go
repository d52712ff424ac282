package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// look prints one look: what stops it, its cautions, and a box for every
// question that it can answer.
func (p *sheet) look(k *advisor.InspectionAdvice) {
	p.para("  ", "    ", fmt.Sprintf("Look: %s (%s)", strings.TrimSuffix(advisor.Sentence(k.Name), "."), Hours(k.Minutes)))
	if len(k.Tools) > 0 {
		p.para("      ", "      ", "With: "+strings.Join(k.Tools, ", ")+".")
	}
	if len(k.Blocked) > 0 {
		p.para("      ", "      ", "Not before: "+strings.Join(p.holdNames(k.Blocked), "; ")+".")
	}
	if k.Breaks != "" {
		p.para("      ", "      ", "May break: "+advisor.Sentence(k.Breaks))
	}
	p.cautions(k.Cautions, "      ")
	for _, id := range k.Answers {
		p.question(id)
	}
}

// question prints a box for an answer, with the words it may be given in.
func (p *sheet) question(id string) {
	if q := p.book.Question(id); q != nil {
		p.box(p.book.Box(id), q.Name+": "+mayBe(q))
	}
}

// mayBe lists what can be answered.
func mayBe(q *advisor.Question) string {
	switch q.Kind {
	case advisor.YesNoKind:
		return "yes or no"
	case advisor.Choice, advisor.Choices:
		var out []string
		for _, o := range q.Options {
			out = append(out, o.ID)
		}
		if q.Kind == advisor.Choices {
			return "any of " + strings.Join(out, ", ")
		}
		return strings.Join(out, ", ")
	case advisor.NumberKind, advisor.ReadingsKind:
		words := "a number"
		if q.Kind == advisor.ReadingsKind {
			words = "each reading"
		}
		if q.Unit != "" {
			words += " in " + q.Unit
		}
		return words
	}
	return "as it reads"
}

// undecided lists the work that a look decides.
func (p *sheet) undecided() {
	shown := false
	for i := range p.a.Operations {
		o := &p.a.Operations[i]
		if o.Call != advisor.LookFirst {
			continue
		}
		if !shown {
			p.title("Decided after looking")
			shown = true
		}
		words := o.Name
		if looks := p.lookNames(o.Settles); len(looks) > 0 {
			words += ". First: " + strings.Join(looks, "; ")
		}
		p.box(p.book.Box(o.ID), words)
		for _, k := range p.opened[o.ID] {
			p.look(k)
		}
	}
}

// shut names what stays shut, so that nobody opens it in passing.
func (p *sheet) shut() {
	if _, out := p.doors(); len(out) > 0 {
		p.title("Stays shut")
		p.para("", "", "Not to be done without asking: "+strings.Join(out, "; ")+".")
	}
}
