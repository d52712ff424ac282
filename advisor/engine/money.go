package engine

import (
	"math"
	"slices"

	"longstand/advisor"
	"longstand/advisor/scope"
)

// z90 is the standard normal quantile that 1 in 10 lies beyond.
const z90 = 1.2815515655446004

// total adds up the money: firm lines, and maybe lines by their chance. Lows
// and highs are never added; both ways to combine the spread are given.
func (s *situation) total(a *advisor.Advice, looks []looked) advisor.Total {
	var t advisor.Total
	free := s.notWaiting(a.Operations)
	for o := range a.Operations {
		op := &a.Operations[o]
		switch {
		case op.Call == advisor.Do || op.Call == advisor.DoOpen:
			l := s.line(o, "firm", 1, op.Saved)
			if !free[o] {
				l.Waits = s.waitsFor(o)
			}
			if l.Waits != "" {
				l.Kind = "maybe"
			}
			t.Lines = append(t.Lines, l)
			t.Lines = append(t.Lines, s.riskLines(o, 1)...)
		case op.Call == advisor.LookFirst:
			p := op.MaybeChance
			if p == 0 && op.Chance != nil {
				p = *op.Chance
			}
			t.Lines = append(t.Lines, s.line(o, "maybe", p, 0))
			t.Lines = append(t.Lines, s.riskLines(o, p)...)
		}
	}
	for i := range looks {
		if looks[i].advised && !looks[i].advice.WhenOpen {
			k := &looks[i].advice
			t.Lines = append(t.Lines, advisor.Line{Operation: k.ID, Name: k.Name, Kind: "look", Chance: 1,
				Low: k.Cost, Usual: k.Cost, High: k.Cost, Mean: k.Cost, Minutes: k.Minutes})
		}
	}
	sum(&t)
	return t
}

// notWaiting marks the work that waits for no danger to be known: what is
// forced for safety, is usual on waking, opens to look or was accepted, and all
// that it needs.
func (s *situation) notWaiting(ops []advisor.OperationAdvice) []bool {
	out := make([]bool, len(ops))
	for o := range ops {
		if ops[o].Routine || slices.Contains([]string{"danger", "to look", "accepted"}, ops[o].Forced) {
			for _, j := range s.net.reach[o] {
				out[j] = true
			}
		}
	}
	return out
}

// waitsFor names the danger that must be known before the money on an operation
// is firm: the shell comes before the engine.
func (s *situation) waitsFor(o int) string {
	for k := range s.e.suspects {
		if s.forces.looked[k] != advisor.Unknown || s.doubts[k].here == advisor.False {
			continue
		}
		for _, door := range s.e.suspects[k].before {
			if slices.Contains(s.net.reach[o], door) {
				return s.e.suspects[k].ID
			}
		}
	}
	return ""
}

// line is the line of one operation, with its own three figures.
func (s *situation) line(o int, kind string, chance float64, saved int64) advisor.Line {
	b := &s.bills[o]
	at := func(h, p float64) int64 { return max(1, round(s.money(h, b.factor, p))-saved) }
	return advisor.Line{Operation: s.e.ops[o].ID, Name: s.e.ops[o].Name, Kind: kind, Chance: chance,
		Low: at(b.hours.Low, b.parts.Low), Usual: at(b.hours.Usual, b.parts.Usual), High: at(b.hours.High, b.parts.High),
		Mean: max(1, b.cost-b.riskMean-saved), Sum: s.sumOf(b, saved)}
}

// sumOf keeps how a bill came about, for the page that shows every step.
func (s *situation) sumOf(b *bill, saved int64) *advisor.Sum {
	figures := func(t advisor.Three, money func(float64) float64) advisor.Figures {
		at := func(x float64) int64 { return round(money(x)) }
		return advisor.Figures{Low: at(t.Low), Usual: at(t.Usual), High: at(t.High), Mean: at(t.Mean())}
	}
	return &advisor.Sum{Hours: b.hours, HoursMean: b.hours.Mean(), Factor: b.factor, Saved: saved,
		Labour: figures(b.hours, func(h float64) float64 { return s.money(h, b.factor, 0) }),
		Parts:  figures(b.parts, func(p float64) float64 { return s.money(0, b.factor, p) })}
}

// riskLines are the maybe lines of what opening may break, given the chance
// that the work is done at all.
func (s *situation) riskLines(o int, chance float64) []advisor.Line {
	var out []advisor.Line
	for _, k := range s.e.ops[o].Risks {
		out = append(out, advisor.Line{Operation: s.e.ops[o].ID, Name: k.Because, Kind: "risk", Chance: float64(chance * k.Count.Raw()),
			Low: k.Cost, Usual: k.Cost, High: k.Cost, Mean: k.Cost})
	}
	return out
}

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

// ladder gives the nested scopes between half the thrifty and twice the
// thorough price, and the step that fits this case's care.
func (s *situation) ladder() advisor.Ladder {
	thrifty, thorough := s.e.price("thrifty"), s.e.price("thorough")
	l := advisor.Ladder{Low: advisor.Price{Num: thrifty.Num, Den: thrifty.Den * 2}, High: advisor.Price{Num: thorough.Num * 2, Den: thorough.Den}}
	forced := s.solver.Best(&s.net.problem, advisor.Price{Num: 0, Den: 1})
	zero := advisor.Step{Price: advisor.Price{Num: 0, Den: 1}}
	base := append([]bool(nil), forced.Member...)
	for i, in := range base {
		if in {
			zero.Cost += s.net.problem.Cost[i]
			zero.Benefit += s.net.problem.Benefit[i]
			if i < len(s.e.ops) {
				zero.Enters = append(zero.Enters, s.e.ops[i].ID)
			}
		}
	}
	zero.AddCost, zero.AddBenefit = zero.Cost, zero.Benefit
	l.Steps = []advisor.Step{zero}
	steps, err := scope.Ladder(s.solver, &s.net.problem, l.Low, l.High)
	if err != nil {
		s.notes = append(s.notes, err.Error())
		return l
	}
	for _, st := range steps {
		l.Steps = s.addStep(l.Steps, st, base)
	}
	for i := range l.Steps {
		if p := l.Steps[i].Price; p.Num*s.price.Den < s.price.Num*p.Den {
			l.Here = i
		}
	}
	s.paidAgain(l.Steps)
	return l
}

// addStep names what enters at a step beyond what was in already.
func (s *situation) addStep(steps []advisor.Step, st scope.Step, base []bool) []advisor.Step {
	last := steps[len(steps)-1]
	out := advisor.Step{Price: st.Price, Cost: st.Cost, Benefit: st.Benefit, AddCost: st.Cost - last.Cost, AddBenefit: st.Benefit - last.Benefit}
	for _, i := range st.Enters {
		if int(i) < len(s.e.ops) && !(len(steps) == 1 && base[i]) {
			out.Enters = append(out.Enters, s.e.ops[i].ID)
		}
	}
	if len(out.Enters) == 0 {
		return steps
	}
	return append(steps, out)
}
