package book

import (
	"strings"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// anomalies are conditions that say nothing, rules that contradict or repeat
// one another, and items that nothing comes of, decided over every case that
// the conditions can tell apart. Where there are too many cases nothing is said.
func (p *prover) anomalies() {
	for _, it := range p.r.items {
		for _, c := range it.conds {
			if c.node != nil && it.kind.name != "derived" { // an expression may be a name for what is always so
				p.idle(it, c)
			}
		}
		p.cases(it)
		p.counts(it)
		if len(p.list) > maxFaults {
			return // nobody reads more
		}
	}
	p.pairs()
	p.holds()
	p.dangers()
}

// idle: a condition that is never true, or true of every car.
func (p *prover) idle(it *item, c *pending) {
	if p.never(c.to.ID) {
		p.list.Errorf(c.node.Span, "never-true", "the condition of %s is true of no car", it.id).Help = "two of its parts exclude one another"
	} else if p.r.Program.Always(c.to.ID).Answer == advisor.True {
		p.list.Warnf(c.node.Span, "always-true", "the condition of %s is true of every car", it.id).Help = "leave it out"
	}
}

// cases looks through the ordered lists of an item: the first case that is true
// is taken, so one that those before it cover is never reached.
func (p *prover) cases(it *item) {
	switch v := it.value.(type) {
	case *advisor.Suspect:
		covered(p, "case", v.Bases, func(b *advisor.Base) (advisor.Condition, diag.Span) { return b.When, b.At })
		covered(p, "case", v.IfLeft, func(l *advisor.Loss) (advisor.Condition, diag.Span) { return l.When, l.At })
	case *advisor.Sign:
		covered(p, "level", v.Levels, func(l *advisor.Level) (advisor.Condition, diag.Span) {
			if l.When.Given() {
				return l.When, l.When.At
			}
			return l.When, it.node.Field("levels").KeySpan
		})
	case *advisor.Operation:
		covered(p, "variant", v.Variants, func(w *advisor.Variant) (advisor.Condition, diag.Span) { return w.When, w.At })
	}
	if it.kind.name == settingsTable.name {
		s := &p.r.Book.Settings
		covered(p, "case", s.Hours, func(h *advisor.HoursFactor) (advisor.Condition, diag.Span) { return h.When, h.At })
		covered(p, "case", s.CareWhen, func(c *advisor.CareWhen) (advisor.Condition, diag.Span) { return c.When, c.At })
	}
}

// maxCases is how many cases of one list are compared.
const maxCases = 40

func covered[T any](p *prover, what string, list []T, at func(*T) (advisor.Condition, diag.Span)) {
	var before []advisor.CondID
	for i := range list {
		when, place := at(&list[i])
		if !when.Given() || i > maxCases {
			return // what follows is reported where the book is read
		}
		if i > 0 && !p.r.Program.Reached(when.ID, before...) && !p.never(when.ID) {
			d := p.list.Warnf(place, "shadowed", "this %s is never reached: those before it take every car that it speaks of", what)
			d.Help = "put it before them, or leave it out"
			_, first := at(&list[0])
			d.Related = []diag.Related{{At: first, Message: "the first of them"}}
		}
		before = append(before, when.ID)
	}
}

// instance tells a case in the words of the rules.
func instance(v condition.Verdict) string {
	if len(v.Example) == 0 {
		return "for instance: any car"
	}
	return "for instance: " + strings.Join(v.Example, ", ")
}
