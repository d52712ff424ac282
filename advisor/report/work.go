package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// work prints what is advised: the usual work on waking as one group, then the
// rest by call, in working order.
func (p *page) work() {
	p.title("The work we advise")
	ops := p.inOrder()
	p.routine(ops)
	for _, call := range []advisor.Call{advisor.Do, advisor.DoOpen, advisor.LookFirst} {
		shown := false
		for _, o := range ops {
			if o.Call != call || o.Routine && o.Overruled == nil {
				continue
			}
			if !shown {
				p.line("%s:", callTitle[call])
				shown = true
			}
			p.operation(o)
		}
	}
}

var callTitle = map[advisor.Call]string{advisor.Do: "Do", advisor.DoOpen: "Do while open", advisor.LookFirst: "Look first, then decide"}

// inOrder lists the operations by phase and part, then id.
func (p *page) inOrder() []*advisor.OperationAdvice {
	var out []*advisor.OperationAdvice
	for i := range p.a.Operations {
		out = append(out, &p.a.Operations[i])
	}
	slices.SortStableFunc(out, func(a, b *advisor.OperationAdvice) int {
		return cmp.Or(cmp.Compare(slices.Index(advisor.Phases, a.Phase), slices.Index(advisor.Phases, b.Phase)), cmp.Compare(a.Part, b.Part))
	})
	return out
}

func (p *page) routine(ops []*advisor.OperationAdvice) {
	shown := false
	for _, o := range ops {
		if !o.Routine || o.Call != advisor.Do || o.Overruled != nil {
			continue
		}
		if !shown {
			p.line("Routine on waking:")
			shown = true
		}
		p.para("  - ", "    ", fmt.Sprintf("%s, %s. %s", o.Name, Money(o.Cost, p.a.Settings), sentence(o.Reason)))
		p.cautions(o.Cautions, "    ")
	}
}

func (p *page) operation(o *advisor.OperationAdvice) {
	head := fmt.Sprintf("%s [%s], %s", o.Name, o.ID, Money(o.Cost-o.Saved, p.a.Settings))
	if o.Variant != "" {
		head += ", " + variant(o)
	}
	p.para("  - ", "    ", head)
	p.para("    ", "    ", p.because(o))
	if o.Overruled != nil {
		p.para("    ", "    ", fmt.Sprintf("Set by %s on %s (the book said: %s): %s", o.Overruled.By, o.Overruled.Date, o.Was, sentence(o.Overruled.Why)))
	}
	p.cautions(o.Cautions, "    ")
}

// because is a call's reason, and for a look the looks that settle it.
func (p *page) because(o *advisor.OperationAdvice) string {
	words := sentence(o.Reason)
	if o.Call == advisor.DoOpen && len(o.SharedWith) > 0 {
		words += fmt.Sprintf(" Alone it would cost %s; the way in is open for %s.", Money(o.Alone, p.a.Settings), strings.Join(p.names(o.SharedWith[:min(3, len(o.SharedWith))]), ", "))
	}
	if o.Call == advisor.LookFirst {
		if o.Chance != nil {
			words += fmt.Sprintf(" Needed in %s.", Chance(*o.Chance))
		}
		if looks := p.lookNames(o.Settles); len(looks) > 0 {
			words += " Settled by: " + strings.Join(looks, "; ") + "."
		}
	}
	return words
}

func (p *page) lookNames(ids []string) []string {
	var out []string
	for _, id := range ids[:min(3, len(ids))] {
		for i := range p.a.Inspections {
			if p.a.Inspections[i].ID == id {
				out = append(out, p.a.Inspections[i].Name)
			}
		}
	}
	return out
}

// leave prints what to leave shut, why and until when.
func (p *page) leave() {
	p.title("Leave alone")
	var none []string
	for _, o := range p.inOrder() {
		switch {
		case o.Call == advisor.NotFitted:
			none = append(none, o.Name)
		case o.Call == advisor.Leave && !(o.Access && o.Overruled == nil && o.ID != "head_off" && o.ID != "engine_out" && o.ID != "gearbox_out"):
			words := sentence(o.Reason)
			if o.Chance != nil && o.Forced == "" {
				words += " Needed in " + Chance(*o.Chance) + "."
			}
			if o.Until != "" && o.Forced != "done" {
				words += " " + sentence(o.Until)
			}
			p.para("  - ", "    ", o.Name+": "+words)
		}
	}
	if len(none) > 0 {
		p.para("Not on this car: ", "  ", strings.Join(none, ", ")+".")
	}
}

func (p *page) money() {
	t := &p.a.Total
	p.title("Money, before tax")
	m := func(x int64) string { return Money(x, p.a.Settings) }
	p.line("firm work and looks  %12s   of which looking %s", m(t.Firm), m(t.Looking))
	p.line("may be needed        %12s   each by its chance", m(t.Maybe))
	p.line("likely               %12s", m(t.Likely))
	p.para("", "", fmt.Sprintf("8 jobs in 10 end between %s and %s when one surprise does not bring the next, between %s and %s when they come together.",
		m(t.Independent.Low), m(t.Independent.High), m(t.Dependent.Low), m(t.Dependent.High)))
	p.para("", "", fmt.Sprintf("With tax at %s per cent the likely sum is %s.", trim(p.a.Settings.Tax*100), m(int64(float64(t.Likely)*(1+p.a.Settings.Tax)+0.5))))
}

func trim(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
}
