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
				p.sub(callTitle[call] + ":")
				shown = true
			}
			p.operation(o)
		}
	}
	p.ways()
}

// ways says, of each place with more than one way to it, which is taken and why.
func (p *page) ways() {
	for i := range p.a.Routes {
		w := &p.a.Routes[i]
		if i == 0 {
			p.sub("Which way:")
		}
		text := w.Place + ": " + w.Name + "; " + w.Why + "."
		if len(w.Lacks) > 0 {
			text += " The shop does not have: " + strings.Join(w.Lacks, "; ") + "."
		}
		p.para("  - ", "    ", text)
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
			p.sub("Routine on waking:")
			shown = true
		}
		p.para("  - ", "    ", fmt.Sprintf("%s [%s], %s. %s", o.Name, o.ID, Money(o.Cost-o.Saved, p.a.Settings), advisor.Sentence(o.Reason)))
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
		p.para("    ", "    ", p.overruled(o))
	}
	p.cautions(o.Cautions, "    ")
}

// overruled says who set a call otherwise, and why.
func (p *page) overruled(o *advisor.OperationAdvice) string {
	by := o.Overruled.By
	if o.Overruled.Date != "" {
		by += " on " + longDay(o.Overruled.Date, 0, p.a.Settings.Locale)
	}
	return fmt.Sprintf("Set to %s by %s (the book said: %s): %s", o.Call, by, o.Was, advisor.Sentence(o.Overruled.Why))
}

// because is a call's reason, and for a look the looks that settle it.
func (p *page) because(o *advisor.OperationAdvice) string {
	words := advisor.Sentence(o.Reason)
	if o.ContainedIn != "" {
		words = "Contained in: " + p.name(o.ContainedIn) + "."
	}
	if o.Forced == "needed" {
		words = "Needed for: " + p.name(o.ForcedBy) + "."
	}
	if o.Call == advisor.DoOpen && len(o.SharedWith) > 0 {
		words += fmt.Sprintf(" Alone it would cost %s; the way in is open for: %s.", Money(o.Alone, p.a.Settings), strings.Join(p.names(o.SharedWith[:min(3, len(o.SharedWith))]), "; "))
	}
	if o.Call == advisor.LookFirst {
		if o.Chance != nil {
			words += " " + needed(*o.Chance)
		}
		if looks := p.lookNames(p.settling(o)); len(looks) > 0 {
			words += " Settled by: " + strings.Join(looks, "; ") + "."
		}
	}
	return words
}

// settling lists the looks that settle an operation; of a danger not yet looked
// at, the advised looks at it.
func (p *page) settling(o *advisor.OperationAdvice) []string {
	if len(o.Settles) > 0 {
		return o.Settles
	}
	var out []string
	for i := range p.a.Inspections {
		k := &p.a.Inspections[i]
		if k.Advised && slices.ContainsFunc(k.Dangers, func(id string) bool { return slices.Contains(o.Suspects, id) }) {
			out = append(out, k.ID)
		}
	}
	return out
}

// needed says how often a car like this one needs some work.
func needed(chance float64) string {
	return fmt.Sprintf("Needed on %s cars like this.", Chance(chance))
}
