package scope

import "slices"

// nested tells whether best scopes can only grow with the price. What leaves a
// scope as the price rises would have both a negative benefit and a negative
// cost. That is ruled out when no free benefit is negative; or when every saving
// joins nodes that each cost at least all the savings that require them, for then
// no set that leaves can have a negative cost.
func (s *Solver) nested(p *Problem) bool {
	s.prepare(p)
	s.settle(p, -1)
	overlap := false
	for _, i := range s.free {
		overlap = overlap || p.Benefit[i] < 0
	}
	if !overlap {
		return true
	}
	for _, i := range s.free {
		if p.Cost[i] < 0 && (p.Benefit[i] < 0 || s.savings(p, i, true) > 0) || p.Cost[i] >= 0 && p.Cost[i] < s.savings(p, i, false) {
			return false
		}
	}
	return true
}

// savings adds up the free savings that node i requires, or that require it.
func (s *Solver) savings(p *Problem, i int32, required bool) (sum int64) {
	for _, l := range s.linksOf(i) {
		if (l.arc >= 0) == required && l.to != i && s.zone[l.to] > zoneNone {
			sum += max(-p.Cost[l.to], 0)
		}
	}
	return sum
}

// scopeLine is a scope and its line over the price.
type scopeLine struct {
	member        []bool
	price         Price // from which it holds
	cost, benefit int64
}

// plainLadder follows V(price) without assuming that scopes are nested.
func plainLadder(s *Solver, p *Problem, low, high Price) []Step {
	solve := func(price Price) scopeLine {
		l := scopeLine{member: slices.Clone(s.Best(p, price).Member), price: price}
		for i, in := range l.member {
			if in {
				l.cost += p.Cost[i]
				l.benefit += p.Benefit[i]
			}
		}
		return l
	}
	lines := []scopeLine{solve(low)}
	var split func(a, b scopeLine)
	split = func(a, b scopeLine) {
		if b.benefit <= a.benefit {
			return
		}
		cross := ratio(b.cost-a.cost, b.benefit-a.benefit)
		m := solve(cross)
		if worth(m, cross) == worth(a, cross) {
			// A scope that is best at a single price only is no step.
			if last := &lines[len(lines)-1]; last.price == cross && len(lines) > 1 {
				lines = lines[:len(lines)-1]
			}
			b.price = cross
			lines = append(lines, b)
			return
		}
		split(a, m)
		split(m, b)
	}
	if Less(low, high) {
		split(lines[0], solve(high))
	}
	return toSteps(lines)
}

func worth(l scopeLine, price Price) int64 { return price.Num*l.benefit - price.Den*l.cost }

func toSteps(lines []scopeLine) []Step {
	before := make([]bool, len(lines[0].member))
	steps := make([]Step, len(lines))
	for k, l := range lines {
		steps[k] = Step{Price: l.price, Cost: l.cost, Benefit: l.benefit}
		for i, in := range l.member {
			switch {
			case in && !before[i]:
				steps[k].Enters = append(steps[k].Enters, int32(i))
			case !in && before[i]:
				steps[k].Leaves = append(steps[k].Leaves, int32(i))
			}
		}
		before = l.member
	}
	return steps
}
