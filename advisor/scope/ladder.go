package scope

import "slices"

// Step is one step from lean to thorough: what enters just above a price.
type Step struct {
	Price  Price   // the first step holds at the lowest price asked for
	Enters []int32 // as one block, in order
	// Leaves is empty but for problems that are not nested (see Ladder).
	Leaves []int32
	// Cost and Benefit are of the whole scope at this step, overlaps and
	// savings taken off.
	Cost, Benefit int64
}

// Ladder gives the best scopes between two prices, from low (where the first
// step holds) up to but without high, with every price at which the best scope
// changes, exact. V(price) is convex and its slope is the benefit of the scope,
// so two neighbouring scopes part where their lines cross, or a third lies
// between them (Eisner and Severance 1976).
//
// Scopes are nested when no set of nodes can have both a negative benefit and a
// negative cost; then each half is solved on its own nodes only. Otherwise the
// steps still follow V(price) exactly, but a step may let nodes go.
func Ladder(s *Solver, p *Problem, low, high Price) ([]Step, error) {
	for _, err := range [3]error{p.Check(), CheckPrice(low), CheckPrice(high)} {
		if err != nil {
			return nil, err
		}
	}
	if !s.nested(p) {
		return plainLadder(s, p, low, high), nil
	}
	l := ladder{s: s, p: p}
	l.start(s.Best(p, low), low)
	if Less(low, high) {
		last := s.Best(p, high)
		l.zones = int32(len(s.from)) // those of the whole choice stay apart
		l.split(l.between(last))
	}
	return l.steps, nil
}

type ladder struct {
	s     *Solver
	p     *Problem
	first []bool
	steps []Step
	zones int32
	pool  []int32 // what the steps' Enters are cut from
}

// start makes the first step.
func (l *ladder) start(c Closure, low Price) {
	l.first = slices.Clone(c.Member)
	l.pool = make([]int32, 0, len(c.Member))
	var members []int32
	for i, in := range l.first {
		if in {
			members = append(members, int32(i))
		}
	}
	l.add(low, members)
}

// add makes a step of the nodes that enter.
func (l *ladder) add(price Price, nodes []int32) {
	step := Step{Price: price}
	if len(l.steps) > 0 {
		last := l.steps[len(l.steps)-1]
		step.Cost, step.Benefit = last.Cost, last.Benefit
	}
	from := len(l.pool)
	l.pool = append(l.pool, nodes...)
	step.Enters = l.pool[from:len(l.pool):len(l.pool)]
	slices.Sort(step.Enters)
	for _, i := range nodes {
		step.Cost += l.p.Cost[i]
		step.Benefit += l.p.Benefit[i]
	}
	l.steps = append(l.steps, step)
}

// between gives the nodes of a larger scope that are not in the first, as one
// zone of their own.
func (l *ladder) between(c Closure) (nodes []int32, zone int32) {
	nodes = make([]int32, 0, len(c.Member))
	for i, in := range c.Member {
		if in && !l.first[i] {
			nodes = append(nodes, int32(i))
		}
	}
	return nodes, l.claim(nodes)
}

// claim gives nodes a zone that no other node is in.
func (l *ladder) claim(nodes []int32) int32 {
	l.zones++
	for _, i := range nodes {
		l.s.zone[i] = l.zones
	}
	return l.zones
}

// split finds the prices at which the nodes of a zone enter. The nodes of the
// smaller scope count as in, those outside the larger one as out.
func (l *ladder) split(nodes []int32, zone int32) {
	if len(nodes) == 0 {
		return
	}
	var cost, benefit int64
	for _, i := range nodes {
		cost += l.p.Cost[i]
		benefit += l.p.Benefit[i]
	}
	price := ratio(cost, benefit)
	l.s.pay(l.p, nodes, zone, price)
	k := 0
	for j, i := range nodes {
		if l.s.level[i] >= 0 {
			nodes[j], nodes[k] = nodes[k], i
			k++
		}
	}
	if k == 0 {
		l.add(price, nodes)
		return
	}
	lower, upper := nodes[:k], nodes[k:]
	zl, zu := l.claim(lower), l.claim(upper)
	l.split(lower, zl)
	l.split(upper, zu)
}
