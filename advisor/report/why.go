package report

import (
	"fmt"
	"slices"

	"longstand/advisor"
)

// Why explains one operation, suspect, inspection, hold or question of a case,
// from its advice and from what engine.Why found would change it. The reason
// comes first, numbers after.
func Why(a *advisor.Advice, w *advisor.Why) string { return why(&page{a: a}, w) }

// WhyMarkdown is the same page in Markdown.
func WhyMarkdown(a *advisor.Advice, w *advisor.Why) string {
	return why(&page{a: a, markdown: true}, w)
}

func why(p *page, w *advisor.Why) string {
	switch w.Kind {
	case "operation":
		explain(p, w, p.a.Operations, func(o *advisor.OperationAdvice) string { return o.ID }, p.whyOperation)
	case "suspect":
		explain(p, w, p.a.Suspects, func(s *advisor.SuspectAdvice) string { return s.ID }, p.whySuspect)
	case "inspection":
		explain(p, w, p.a.Inspections, func(k *advisor.InspectionAdvice) string { return k.ID }, p.whyLook)
	case "hold":
		explain(p, w, p.a.Holds, func(h *advisor.HoldAdvice) string { return h.ID }, p.whyHold)
	case "question":
		p.whyQuestion(w)
	}
	p.turns(w)
	p.small(w)
	p.gap()
	p.para("", "", Closing)
	return p.b.String()
}

// idle says why the advice has nothing on an id of the book.
var idle = map[string]string{"suspect": "not suspected on this car", "inspection": "nothing left for it to answer on this car",
	"hold": "lifted, or does not apply to this car"}

// explain tells of the item that has the id; where the advice has none, the
// rule's own words stand.
func explain[T any](p *page, w *advisor.Why, items []T, of func(*T) string, tell func(*T)) {
	for i := range items {
		if of(&items[i]) == w.ID {
			tell(&items[i])
			return
		}
	}
	p.head(sentenceOpen(w.Name) + ": " + idle[w.Kind])
	p.para("", "", advisor.Sentence(w.Because))
}

// foil words a call against what might have been expected instead.
func foil(o *advisor.OperationAdvice) string {
	switch {
	case o.Call == advisor.NotFitted:
		return "not on this car"
	case o.Forced == "done":
		return "done already, not again"
	case o.Forced == "declined":
		return "declined by the owner, not done"
	case o.ContainedIn != "":
		return "within larger work, not by itself"
	case o.Call == advisor.LookFirst:
		return "look first, not yet decided"
	case o.Call == advisor.DoOpen:
		return "now, while it is open, not later"
	case o.Call == advisor.Do && o.Access:
		return "opened now, not later"
	case o.Call == advisor.Do:
		return "now, not later"
	case o.Access:
		return "left shut, not opened"
	}
	return "left as it is, not now"
}

func (p *page) whyOperation(o *advisor.OperationAdvice) {
	p.head(sentenceOpen(o.Name) + ": " + foil(o))
	p.para("", "", p.because(o))
	if o.Variant != "" {
		p.para("", "", "On this car: "+variant(o)+".")
	}
	if o.Overruled != nil {
		p.para("", "", p.overruled(o))
	}
	if o.Call == advisor.Leave && o.Until != "" && o.Forced != "done" && o.ContainedIn == "" {
		p.para("", "", until(o.Until))
	}
	p.cite(o.Sources)
	p.ledgers(o)
	p.moneyOf(o)
	p.care = o.Cautions
}

// ledgers tells of every suspected fault behind an operation.
func (p *page) ledgers(o *advisor.OperationAdvice) {
	shown := false
	for _, id := range o.Suspects {
		s := p.a.Suspect(id)
		if s == nil {
			continue
		}
		if !shown {
			p.title("What speaks for it and against it")
			shown = true
		}
		p.para("* ", "  ", fmt.Sprintf("%s: %s", sentenceOpen(s.Name), Chance(s.Chance)))
		p.ledger(s, o.Reason)
	}
}

func (p *page) whySuspect(s *advisor.SuspectAdvice) {
	p.head(fmt.Sprintf("%s: %s", sentenceOpen(s.Name), p.suspected(s)))
	p.para("", "", advisor.Sentence(s.Because))
	p.title("What speaks for it and against it")
	p.ledger(s, s.Because)
	if len(s.CuredBy) > 0 {
		p.title("What cures it")
	}
	for i := range p.a.Operations {
		if o := &p.a.Operations[i]; slices.Contains(s.CuredBy, o.ID) {
			p.para("  - ", "    ", fmt.Sprintf("%s [%s], %s: %s", o.Name, o.ID, Money(o.Cost, p.a.Settings), o.Call))
		}
	}
}

// suspected sets a fault's chance against what it was without any sign.
func (p *page) suspected(s *advisor.SuspectAdvice) string {
	words := Chance(s.Chance)
	switch {
	case s.Chance > s.Base:
		return words + ", more than on most cars laid up like this"
	case s.Chance < s.Base:
		return words + ", less than on most cars laid up like this"
	}
	return words + ", as on most cars laid up like this"
}

// small ends a page with the cautions and the sources of what it said.
func (p *page) small(w *advisor.Why) {
	if len(p.care) > 0 {
		p.title("Cautions")
		p.cautions(p.care, "")
	}
	p.sources(w)
}
