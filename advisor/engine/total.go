package engine

import (
	"slices"

	"longstand/advisor"
)

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
				if by, ok := s.e.operation[op.ForcedBy]; ok && l.Waits == "" && op.Forced == "needed" {
					l.Waits = s.waitsFor(by) // it comes only with work that waits
				}
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
		if s.forces.sound[k] != advisor.Unknown || s.doubts[k].here == advisor.False {
			continue
		}
		for _, door := range s.e.suspects[k].before {
			if s.net.reaches[o].has(door) {
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
