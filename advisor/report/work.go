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
		p.para("  - ", "    ", fmt.Sprintf("%s [%s], %s. %s", o.Name, o.ID, Money(o.Cost-o.Saved, p.a.Settings), sentence(o.Reason)))
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
	return fmt.Sprintf("Set to %s by %s (the book said: %s): %s", o.Call, by, o.Was, sentence(o.Overruled.Why))
}

// because is a call's reason, and for a look the looks that settle it.
func (p *page) because(o *advisor.OperationAdvice) string {
	words := sentence(o.Reason)
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

// until says what a leave lasts until.
func until(words string) string {
	if strings.HasPrefix(strings.ToLower(words), "left") {
		return sentence(words)
	}
	return "Left until: " + sentenceStart(words)
}

// needed says how often a car like this one needs some work.
func needed(chance float64) string {
	return fmt.Sprintf("Needed on %s cars like this.", Chance(chance))
}

// lookNames names the first three of those ids that are looks.
func (p *page) lookNames(ids []string) []string {
	var out []string
	for _, id := range ids {
		for i := range p.a.Inspections {
			if len(out) < 3 && p.a.Inspections[i].ID == id {
				out = append(out, p.a.Inspections[i].Name)
			}
		}
	}
	return out
}

// mostNone is how much work is named that a car has no place for.
const mostNone = 8

// leave prints what to leave shut, why and until when.
func (p *page) leave() {
	p.title("Leave alone")
	var none []string
	for _, o := range p.inOrder() {
		switch {
		case o.Call == advisor.NotFitted:
			if !o.Access {
				none = append(none, o.Name)
			}
		case o.Call == advisor.Leave && !(o.Access && o.Overruled == nil && o.ID != "head_off" && o.ID != "engine_out" && o.ID != "gearbox_out"):
			words := p.because(o)
			if o.Chance != nil && o.Forced == "" {
				words += " " + needed(*o.Chance)
			}
			if o.Until != "" && o.Forced != "done" && o.ContainedIn == "" {
				words += " " + until(o.Until)
			}
			p.para("  - ", "    ", fmt.Sprintf("%s [%s]: %s", o.Name, o.ID, words))
		}
	}
	if more := len(none) - mostNone; more > 0 {
		none = append(none[:mostNone], fmt.Sprintf("and %d more", more))
	}
	if len(none) > 0 {
		p.para("Not on this car: ", "  ", strings.Join(none, "; ")+".")
	}
}

func (p *page) money() {
	t := &p.a.Total
	p.title("Money, before tax")
	m := func(x int64) string { return Money(x, p.a.Settings) }
	p.row("firm work and looks", m(t.Firm), "of which looking "+m(t.Looking))
	p.row("may be needed", m(t.Maybe), "each by its chance")
	p.row("likely", m(t.Likely), "the two together")
	p.waiting()
	p.para("", "", fmt.Sprintf("8 jobs in 10 end between %s and %s when one surprise does not bring the next, between %s and %s when they come together.",
		m(t.Independent.Low), m(t.Independent.High), m(t.Dependent.Low), m(t.Dependent.High)))
	p.para("", "", fmt.Sprintf("With tax at %s per cent the likely sum is %s.", trim(p.a.Settings.Tax*100), m(int64(float64(t.Likely)*(1+p.a.Settings.Tax)+0.5))))
}

// waiting says which money is not firm until a danger is known: the shell comes
// before the engine.
func (p *page) waiting() {
	var sum int64
	var names, dangers []string
	for i := range p.a.Total.Lines {
		l := &p.a.Total.Lines[i]
		if l.Waits == "" {
			continue
		}
		sum += l.Mean
		names = append(names, l.Name)
		if d := p.suspectName(l.Waits); !slices.Contains(dangers, d) {
			dangers = append(dangers, d)
		}
	}
	if sum > 0 {
		p.para("", "", fmt.Sprintf("Of what may be needed, %s is not firm until it is known whether %s, and the owner still wants the car: %s.",
			Money(sum, p.a.Settings), strings.Join(dangers, ", and whether "), strings.Join(names, "; ")))
	}
}

func (p *page) suspectName(id string) string {
	for i := range p.a.Suspects {
		if p.a.Suspects[i].ID == id {
			return p.a.Suspects[i].Name
		}
	}
	return id
}

func trim(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
}
