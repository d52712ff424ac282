package report

import (
	"fmt"
	"slices"
	"strings"
)

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
	p.para("", "", fmt.Sprintf("With tax at %s per cent the likely sum is %s.", trim(p.a.Settings.Tax*100), m(taxed(t.Likely, p.a.Settings))))
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

func trim(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
}
