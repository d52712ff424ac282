package engine

import (
	"math"

	"longstand/advisor"
)

// z90 is the standard normal quantile that 1 in 10 lies beyond.
const z90 = 1.2815515655446004

// spread adds up the uncertainty of lines, as a variance when they are
// independent and as a deviation when they go together.
type spread struct {
	mean                int64
	variance, deviation float64
}

// add counts a line, and writes on it what it counted for.
func (s *spread) add(l *advisor.Line) {
	mean := float64(l.Mean)
	v := max(0, 0.3*sq(l.Low)+0.4*sq(l.Usual)+0.3*sq(l.High)-sq3(l))
	v = l.Chance*(v+mean*mean) - (l.Chance*mean)*(l.Chance*mean)
	l.Expected, l.Deviation = round(l.Chance*mean), math.Sqrt(v)
	s.mean += l.Expected
	s.variance += v
	s.deviation += l.Deviation
}

func (s *spread) told() advisor.Spread {
	return advisor.Spread{Mean: s.mean, Independent: math.Sqrt(s.variance), Dependent: s.deviation}
}

// sum totals the lines. A line that may not be needed has the mean p m and the
// variance p (v + m^2) - (p m)^2; three figures have the variance
// .3 low^2 + .4 usual^2 + .3 high^2 - mean^2 (the same weights as their mean).
// The low end is never under that of the firm lines alone: what may be needed
// cannot cost less than nothing.
func sum(t *advisor.Total) {
	var firm, all spread
	for i := range t.Lines {
		l := &t.Lines[i]
		all.add(l)
		switch l.Kind {
		case "firm":
			firm.add(l)
		case "look":
			firm.add(l)
			t.Looking += l.Mean
		}
	}
	t.Firm, t.Likely = firm.mean, all.mean
	t.FirmSpread, t.Spread = firm.told(), all.told()
	t.Maybe = t.Likely - t.Firm
	t.Independent = around(firm.mean, z90*math.Sqrt(firm.variance), all.mean, z90*math.Sqrt(all.variance))
	t.Dependent = around(firm.mean, z90*firm.deviation, all.mean, z90*all.deviation)
}

func sq(x int64) float64 { return float64(x) * float64(x) }

func sq3(l *advisor.Line) float64 {
	m := 0.3*float64(l.Low) + 0.4*float64(l.Usual) + 0.3*float64(l.High)
	return m * m
}

func around(firm int64, firmHalf float64, all int64, half float64) advisor.Range {
	low := max(float64(all)-half, float64(firm)-firmHalf, 0)
	return advisor.Range{Low: round(low), High: round(float64(all) + half)}
}
