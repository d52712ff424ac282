package engine

import (
	"longstand/advisor"
	"longstand/advisor/reckon"
)

// spread adds up the uncertainty of lines: what each may come to, to be taken
// as varying by itself or together with all others.
type spread struct {
	mean    int64
	figures []reckon.Figure
}

// add counts a line, and writes on it what it counted for. Its mean is the
// line's own, from which savings have come off; figures that do not rise have
// no deviation.
func (s *spread) add(l *advisor.Line) {
	three, _ := reckon.ThreeFigures(float64(l.Low), float64(l.Usual), float64(l.High))
	f, _ := reckon.Maybe(l.Chance, reckon.Figure{Mean: float64(l.Mean), Deviation: three.Deviation})
	l.Expected, l.Deviation = round(f.Mean), f.Deviation
	s.mean += l.Expected
	s.figures = append(s.figures, f)
}

func (s *spread) told() advisor.Spread {
	return advisor.Spread{Mean: s.mean, Independent: reckon.Independent(s.figures...).Deviation, Dependent: reckon.Dependent(s.figures...).Deviation}
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
	t.Independent = around(t.FirmSpread.Mean, t.FirmSpread.Independent, t.Spread.Mean, t.Spread.Independent)
	t.Dependent = around(t.FirmSpread.Mean, t.FirmSpread.Dependent, t.Spread.Mean, t.Spread.Dependent)
}

// around is the range of all lines, its low end held to that of the firm ones.
func around(firm int64, firmDeviation float64, all int64, deviation float64) advisor.Range {
	floor, _ := reckon.Figure{Mean: float64(firm), Deviation: firmDeviation}.OneInTen()
	low, high := reckon.Figure{Mean: float64(all), Deviation: deviation}.OneInTen()
	return advisor.Range{Low: round(max(low, floor)), High: round(high)}
}
