package report

import (
	"math"

	"longstand/advisor"
)

// reckoned gives the figures that the book works out from the answers and
// wants seen, each with what it means and the rule that it was held to.
func (p *page) reckoned() {
	first := true
	for i := range p.a.Derived {
		d := &p.a.Derived[i]
		if !d.Shown {
			continue
		}
		if first {
			p.title("Reckoned from the answers")
			first = false
		}
		p.para("- ", "  ", d.Name+": "+p.figure(d)+". "+d.Because)
	}
}

// figure writes a known value: a number to about three figures with its unit,
// else yes or no.
func (p *page) figure(d *advisor.DerivedValue) string {
	if !d.IsNumber {
		if d.Truth == advisor.True {
			return "yes"
		}
		return "no"
	}
	scale := 1.0
	switch size := math.Abs(d.Low); {
	case d.Unit == "":
		scale = 1000
	case size < 10:
		scale = 100
	case size < 100:
		scale = 10
	}
	text := digits(math.Round(d.Low*scale)/scale, -1, p.a.Settings.Locale)
	if d.Unit != "" {
		text += string(noBreak) + d.Unit
	}
	return text
}
