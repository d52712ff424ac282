package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// short says the whole advice in a few lines, for whoever reads no further:
// what is not to be done yet, where to look first, what is opened and what
// stays shut, and the money.
func (p *page) short() {
	p.title("In short")
	say := func(label string, list []string) {
		if len(list) > 0 {
			p.para("- ", "  ", label+strings.Join(list, "; ")+".")
		}
	}
	known, all := p.stopped(func(h *advisor.HoldAdvice) bool { return h.When == advisor.True }), p.stopped(func(*advisor.HoldAdvice) bool { return true })
	say("Not yet: ", known)
	say("Nor, until it is known whether their stops apply: ", slices.DeleteFunc(all, func(act string) bool { return slices.Contains(known, act) }))
	say("Look first: ", p.firstLooks(3))
	opened, shut := p.doors()
	if len(opened) == 0 {
		opened = []string{"nothing that is closed now"}
	}
	say("Open: ", opened)
	say("Leave shut: ", shut)
	t, m := &p.a.Total, func(x int64) string { return Money(x, p.a.Settings) }
	p.para("- ", "  ", fmt.Sprintf("Likely %s before tax, 8 jobs in 10 between %s and %s; firm today %s.",
		m(t.Likely), m(t.Independent.Low), m(t.Independent.High), m(t.Firm)))
	if stop, ok := named(p.a.Case, "stop_sum"); ok && stop < wholeTaxed(t.Likely, p.a.Settings) {
		p.para("- ", "  ", fmt.Sprintf("With tax that is over the %s at which the owner would rather stop: talk it over before any work but making safe and looking.",
			inFull(stop, p.a.Settings)))
	}
}

// stopped are the acts that some holds stop, those left out that follow from
// another.
func (p *page) stopped(counts func(*advisor.HoldAdvice) bool) []string {
	var all []string
	for _, act := range advisor.Acts {
		for i := range p.a.Holds {
			if h := &p.a.Holds[i]; counts(h) && slices.Contains(h.Stops, act) && !slices.Contains(all, act) {
				all = append(all, act)
			}
		}
	}
	return first(all)
}

// firstLooks names the looks to begin with.
func (p *page) firstLooks(most int) []string {
	out := make([]string, most)
	for i := range p.a.Inspections {
		if k := &p.a.Inspections[i]; k.Rank >= 1 && k.Rank <= most {
			out[k.Rank-1] = k.Name
		}
	}
	return slices.DeleteFunc(out, func(s string) bool { return s == "" })
}

// doors are the assemblies that are opened, and those that stay shut.
func (p *page) doors() (opened, shut []string) {
	for i := range p.a.Operations {
		o := &p.a.Operations[i]
		switch {
		case !o.Door:
		case o.Call == advisor.Do || o.Call == advisor.DoOpen:
			opened = append(opened, o.Name)
		case o.Call == advisor.LookFirst:
			opened = append(opened, o.Name+", if the looks say so")
		case o.Call == advisor.Leave && o.Forced != "done":
			shut = append(shut, o.Name)
		}
	}
	return opened, shut
}
