package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Ladder writes how far to go, from what is needed whatever the price to
// thorough. A budget (whole units; 0 for none) is placed between two steps.
func Ladder(a *advisor.Advice, budget int64) string {
	p := &page{a: a}
	m := func(x int64) string { return Money(x, a.Settings) }
	hundred := int64(100)
	for range a.Settings.MinorDigits {
		hundred *= 10
	}
	p.line("%s: how far to go", a.Case.Name)
	for i := range a.Ladder.Steps {
		s := &a.Ladder.Steps[i]
		mark := ""
		if i == a.Ladder.Here {
			mark = "   <- fits this owner's care (" + a.Care + ")"
		}
		if i == 0 {
			p.line("\nStep 0, whatever the price: make safe and stop the rot%s", mark)
		} else {
			p.line("\nStep %d, when saving %s later is worth %s now%s", i, m(hundred), m(hundred*s.Price.Num/s.Price.Den), mark)
		}
		if len(s.Enters) > 0 {
			p.para("  enters as one block: ", "    ", strings.Join(p.names(s.Enters), ", "))
		}
		p.line("  adds %s, expected to save %s later; the whole scope %s", m(s.AddCost), m(s.AddBenefit), m(s.Cost))
	}
	if budget > 0 {
		p.budget(budget)
	}
	p.footer()
	return p.b.String()
}

// budget says between which steps a sum lies.
func (p *page) budget(whole int64) {
	minor := whole
	for range p.a.Settings.MinorDigits {
		minor *= 10
	}
	steps := p.a.Ladder.Steps
	at := -1
	for i := range steps {
		if steps[i].Cost <= minor {
			at = i
		}
	}
	p.line("")
	m := func(x int64) string { return Money(x, p.a.Settings) }
	switch {
	case at < 0:
		p.para("", "", fmt.Sprintf("A budget of %s does not reach step 0 (%s): what is needed whatever the price comes first.", m(minor), m(steps[0].Cost)))
	case at == len(steps)-1:
		p.para("", "", fmt.Sprintf("A budget of %s covers the last step.", m(minor)))
	default:
		p.para("", "", fmt.Sprintf("A budget of %s lies between step %d (%s) and step %d (%s). A choice between the two may suit it better than either; ask before picking single jobs, since what is opened once is paid once.",
			m(minor), at, m(steps[at].Cost), at+1, m(steps[at+1].Cost)))
	}
}
