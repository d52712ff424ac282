package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Ladder writes how far to go, from what is needed whatever the price to
// thorough, and where a sum to spend lies on it (nil for none).
func Ladder(a *advisor.Advice, b *advisor.Budget) string { return ladder(&page{a: a}, b) }

// LadderMarkdown is the same page in Markdown.
func LadderMarkdown(a *advisor.Advice, b *advisor.Budget) string {
	return ladder(&page{a: a, markdown: true}, b)
}

func ladder(p *page, b *advisor.Budget) string {
	p.head(p.a.Case.Name + ": how far to go")
	p.para("", "", fmt.Sprintf("Each step holds all the steps before it. Sums are before tax, each rounded by itself. This owner's care: %s (%s).",
		p.a.Care, p.a.CareBecause))
	if b != nil {
		p.budget(b)
	}
	for i := range p.a.Ladder.Steps {
		p.step(i)
	}
	p.footer()
	return p.b.String()
}

// hundred is a hundred units of the currency, in minor units.
func (p *page) hundred() int64 {
	h := int64(100)
	for range p.a.Settings.MinorDigits {
		h *= 10
	}
	return h
}

// step tells of one step: when it pays, what enters, its sums, and what doing
// it later costs again.
func (p *page) step(i int) {
	s := &p.a.Ladder.Steps[i]
	m := func(x int64) string { return Money(x, p.a.Settings) }
	words := "Step 0, whatever the price: make safe and stop the rot"
	if i > 0 {
		words = fmt.Sprintf("Step %d, if %s saved later is worth %s today", i, m(p.hundred()), m(p.hundred()*s.Price.Num/s.Price.Den))
	}
	if i == p.a.Ladder.Here {
		words += " <- fits this owner's care"
	}
	p.gap()
	p.sub(words)
	p.para("  ", "  ", fmt.Sprintf("Adds %s and is expected to save %s later. The whole scope: %s.", m(s.AddCost), m(s.AddBenefit), m(s.Cost)))
	if len(s.Enters) > 1 {
		p.para("  ", "  ", "Enters as one block:")
	}
	for _, name := range p.names(s.Enters) {
		p.para("  - ", "    ", name)
	}
	if len(s.Again) > 0 {
		p.para("  ", "  ", fmt.Sprintf("Done later instead it costs %s more, paid a second time: %s.", m(s.AgainCost), strings.Join(p.names(s.Again), "; ")))
	}
}

// budget says between which steps a sum lies, and what fits what is left.
func (p *page) budget(b *advisor.Budget) {
	steps := p.a.Ladder.Steps
	m := func(x int64) string { return Money(x, p.a.Settings) }
	next := b.Within + 1
	switch {
	case b.Within < 0:
		p.para("", "", fmt.Sprintf("A budget of %s does not reach step 0 (%s): it falls short by %s, and what is needed whatever the price comes first.", m(b.Sum), m(steps[0].Cost), m(b.Short)))
		return
	case next == len(steps):
		p.para("", "", fmt.Sprintf("A budget of %s covers the last step and leaves %s.", m(b.Sum), m(b.Left)))
		return
	}
	words := fmt.Sprintf("A budget of %s lies between step %d (%s) and step %d (%s): it leaves %s over the one and falls short of the other by %s.",
		m(b.Sum), b.Within, m(steps[b.Within].Cost), next, m(steps[next].Cost), m(b.Left), m(b.Short))
	if len(b.Fits) == 0 {
		p.para("", "", words+" No later step by itself fits what is left.")
		return
	}
	p.para("", "", words+" By itself each of these later steps fits what is left:")
	for _, i := range b.Fits {
		p.para("  - ", "    ", fmt.Sprintf("of step %d, %s: %s", i, m(steps[i].Alone), strings.Join(p.names(steps[i].Enters), "; ")))
	}
}
