package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Why explains one operation, suspect, inspection, hold or question. Turns are
// the single answers that would change the call on an operation. An id that the
// advice does not know is an error.
func Why(a *advisor.Advice, id string, turns []advisor.Turn) (string, error) {
	p := &page{a: a}
	found := explain(a.Operations, id, func(o *advisor.OperationAdvice) string { return o.ID }, func(o *advisor.OperationAdvice) {
		p.whyOperation(o)
		p.turns(turns)
	})
	found = explain(a.Suspects, id, func(s *advisor.SuspectAdvice) string { return s.ID }, p.whySuspect) || found
	found = explain(a.Inspections, id, func(k *advisor.InspectionAdvice) string { return k.ID }, p.whyLook) || found
	found = explain(a.Holds, id, func(h *advisor.HoldAdvice) string { return h.ID }, p.whyHold) || found
	found = explain(a.Open, id, func(q *advisor.OpenQuestion) string { return q.ID }, p.whyQuestion) || found
	if !found {
		return "", fmt.Errorf("the advice on %s says nothing of %q: it names operations, suspects, inspections, standing holds and open questions", a.Case.ID, id)
	}
	p.line("")
	p.para("", "", Closing)
	return p.b.String(), nil
}

// explain tells of the item that has an id, if there is one.
func explain[T any](items []T, id string, of func(*T) string, tell func(*T)) (found bool) {
	for i := range items {
		if of(&items[i]) == id {
			tell(&items[i])
			found = true
		}
	}
	return found
}

// against words a call against its foil.
var against = map[advisor.Call]string{advisor.Do: "now, not later", advisor.DoOpen: "now, while it is open, not later",
	advisor.LookFirst: "look first, not yet decided", advisor.Leave: "left alone, not opened", advisor.NotFitted: "not on this car"}

func (p *page) whyOperation(o *advisor.OperationAdvice) {
	m := func(x int64) string { return Money(x, p.a.Settings) }
	p.para("", "  ", fmt.Sprintf("%s: %s", strings.TrimSuffix(sentence(o.Name), "."), against[o.Call]))
	p.para("", "", p.because(o))
	if o.Overruled != nil {
		p.para("", "", fmt.Sprintf("Set by %s on %s (the book said: %s): %s", o.Overruled.By, o.Overruled.Date, o.Was, sentence(o.Overruled.Why)))
	}
	if o.Call == advisor.Leave && o.Until != "" {
		p.para("", "", sentence(o.Until))
	}
	for _, id := range o.Suspects {
		for i := range p.a.Suspects {
			if p.a.Suspects[i].ID == id {
				p.line("")
				p.whySuspect(&p.a.Suspects[i])
			}
		}
	}
	p.line("\nMoney")
	p.para("  ", "    ", fmt.Sprintf("Itself %s; alone, with all that it needs, %s.", m(o.Cost), m(o.Alone)))
	if len(o.Needs) > 0 {
		p.para("  ", "    ", "It needs: "+strings.Join(p.names(o.Needs), ", ")+".")
	}
	if len(o.SharedWith) > 0 {
		p.para("  ", "    ", "The way in is shared with: "+strings.Join(p.names(o.SharedWith), ", ")+".")
	}
	if o.Margin != nil {
		if *o.Margin >= 0 {
			p.line("  Worth it by %s.", m(*o.Margin))
		} else {
			p.line("  Falls short by %s.", m(-*o.Margin))
		}
	} else if o.Forced != "" {
		p.line("  Decided whatever the price: %s.", o.Forced)
	}
	if o.BreakEven != nil {
		p.para("  ", "    ", "The call would turn at "+Chance(*o.BreakEven)+".")
	}
	if len(o.WouldIf) > 0 {
		p.para("  ", "    ", "Standing rules that would apply if more were known: "+strings.Join(o.WouldIf, ", ")+".")
	}
	p.cautions(o.Cautions, "  ")
	p.para("Sources: ", "  ", strings.Join(o.Sources, ", ")+".")
}

func (p *page) whySuspect(s *advisor.SuspectAdvice) {
	p.para("Suspected fault: ", "  ", fmt.Sprintf("%s, %s", s.Name, Chance(s.Chance)))
	p.para("  ", "  ", sentence(s.Because))
	p.para("  ", "  ", fmt.Sprintf("Before any sign %s: %s", Chance(s.Base), sentence(s.BaseNote)))
	p.signs("  For:", s, true)
	p.signs("  Against:", s, false)
	if s.IfLeft > 0 {
		p.para("  ", "  ", fmt.Sprintf("If it is there and is left it costs %s more, besides the later work.", Money(s.IfLeft, p.a.Settings)))
	}
	if s.Danger != "" {
		p.para("  ", "  ", "A danger ("+strings.ReplaceAll(s.Danger, "_", " ")+"): "+map[advisor.Truth]string{
			advisor.True: "looked at and found sound.", advisor.False: "known bad.", advisor.Unknown: "not yet looked at."}[s.Looked])
	}
}

func (p *page) signs(title string, s *advisor.SuspectAdvice, favours bool) {
	shown := false
	for i := range s.Ledger {
		l := &s.Ledger[i]
		if l.Ratio == 1 || l.Ratio > 1 != favours {
			continue
		}
		if !shown {
			p.line("%s", title)
			shown = true
		}
		weight := fmt.Sprintf("odds x %.1f", l.Ratio)
		if !favours {
			weight = fmt.Sprintf("odds / %.1f", 1/l.Ratio)
		}
		if !l.Counted {
			weight = "also seen, not counted again"
		}
		p.para("    - ", "      ", fmt.Sprintf("%s (%s; %s)", l.Name, l.How, weight))
	}
}

func (p *page) whyLook(k *advisor.InspectionAdvice) {
	p.line("%s", sentence(k.Name))
	p.para("", "", sentence(k.Reason))
	p.para("", "", fmt.Sprintf("%s; knowing is worth %s, so %s net of the time.", Hours(k.Minutes), Money(k.Worth, p.a.Settings), Money(k.Net, p.a.Settings)))
	if len(k.Settles) > 0 {
		p.para("It can change the call on: ", "  ", strings.Join(p.names(k.Settles), ", ")+".")
	}
	if len(k.Dangers) > 0 {
		p.para("It looks at dangers: ", "  ", strings.Join(k.Dangers, ", ")+".")
	}
	if len(k.Lifts) > 0 {
		p.para("It can lift: ", "  ", strings.Join(k.Lifts, ", ")+".")
	}
	p.cautions(k.Cautions, "")
}

func (p *page) whyHold(h *advisor.HoldAdvice) {
	p.para("", "  ", fmt.Sprintf("DO NOT %s UNTIL %s.", strings.Join(first(h.Stops), " or "), strings.TrimSuffix(h.Name, ".")))
	p.para("", "", sentence(h.Because))
	var by []string
	for _, s := range h.LiftedBy {
		by = append(by, s.Kind+" "+s.ID)
	}
	if len(by) > 0 {
		p.para("Lifted by: ", "  ", strings.Join(by, ", ")+".")
	}
	p.para("Sources: ", "  ", strings.Join(h.Sources, ", ")+".")
}

func (p *page) whyQuestion(q *advisor.OpenQuestion) {
	p.line("%s: still open, and it can matter.", q.ID)
	if len(q.Suspects) > 0 {
		p.para("It bears on: ", "  ", strings.Join(q.Suspects, ", ")+".")
	}
	if len(q.Feeds) > 0 {
		p.para("It can change: ", "  ", strings.Join(q.Feeds, ", ")+".")
	}
}

// turns lists the single answers that would change the call, a line for each
// question, the unknown ones first.
func (p *page) turns(turns []advisor.Turn) {
	p.line("\nSingle answers that would change this")
	if len(turns) == 0 {
		p.line("  No single answer changes this.")
		return
	}
	for i := 0; i < len(turns); {
		t := &turns[i]
		var words []string
		j := i
		for ; j < len(turns) && turns[j].Question == t.Question && turns[j].To == t.To; j++ {
			words = append(words, turns[j].Written)
		}
		how := "not known yet"
		if t.Asked {
			how = "answered otherwise"
		}
		if len(t.Looks) > 0 {
			how += "; " + strings.Join(p.lookNames(t.Looks), "; ")
		}
		if t.Minutes > 0 {
			how += ", " + Hours(t.Minutes)
		}
		p.para("  - ", "    ", fmt.Sprintf("%s: %s -> %s (%s)", t.Name, strings.Join(words, ", or "), t.To, how))
		i = j
	}
}
