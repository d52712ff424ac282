package engine

import (
	"slices"

	"longstand/advisor/scope"
)

// cut makes the two cuts: over every way of the routes, the operations that are
// in every scope that can still be, and those that are in some. A look forces
// its own access in, so the access of every look that can be advised counts as
// possibly in: what lies behind it may then be in the scope.
func (a *ahead) cut() {
	low, high := a.ends()
	pairs := a.pairs(low, high)
	a.cuts(pairs)
	opened := newSet(len(a.e.ops))
	for i := range a.e.looks {
		l, pays := &a.e.looks[i], a.mayPay(i, low, high)
		if pays {
			a.looks = append(a.looks, i)
		}
		if pays || a.maySee(l) {
			opened.addAll(a.e.mayOpen(l))
		}
	}
	for _, p := range pairs {
		for _, o := range opened.list() {
			for _, j := range p.high.reach[o] {
				p.high.problem.In[j] = !p.high.problem.Out[j]
			}
		}
	}
	if len(opened.list()) > 0 {
		a.cuts(pairs)
	}
}

// pair is the two ends of what can still be, for one choice of ways.
type pair struct{ low, high *network }

// pairs draws both ends for every choice of ways now and later, and notes which
// operations curing a suspect can need.
func (a *ahead) pairs(low, high *figures) (out []pair) {
	cures := make([]set, len(a.e.suspects))
	for k := range cures {
		cures[k] = newSet(len(a.e.ops))
	}
	a.figures = high
	for c, combo := range a.e.combos {
		for l, then := range a.e.combos {
			if !a.passable(combo) || !a.passable(then) {
				continue
			}
			p := pair{a.draw(low, combo, then), a.draw(high, combo, then)}
			if c == l {
				a.laters = append(a.laters, a.laterBy(p.high))
			}
			a.bound(p.low, p.high)
			out = append(out, p)
			for k := range cures {
				for _, o := range a.e.suspects[k].curedBy {
					if high.chance[k] > 0 && !a.off[o] {
						cures[k].addAll(p.high.reach[o])
						cures[k].addAll(p.high.reachLater[o])
					}
				}
			}
		}
	}
	a.cures = make([][]int, len(cures))
	for k := range cures {
		a.cures[k] = cures[k].list()
	}
	return out
}

// cuts works out sure, able and firm.
func (a *ahead) cuts(pairs []pair) {
	n := len(a.e.ops)
	a.sure, a.able, a.firm = make([]bool, n), make([]bool, n), make([]bool, n)
	for i, p := range pairs {
		surely, possibly := scope.TwoCuts(a.solver, &p.low.problem, a.price, &p.high.problem, a.price)
		firm := forced(&p.low.problem, n)
		for o := range n {
			a.sure[o] = (i == 0 || a.sure[o]) && surely[o]
			a.able[o] = a.able[o] || possibly[o]
			a.firm[o] = (i == 0 || a.firm[o]) && firm[o]
		}
	}
}

// bound completes the two networks: benefits at each end less the other end's
// overlaps and costs (what curing later costs rises with the cost that is paid
// now), and only what surely, or possibly, is forced.
func (a *ahead) bound(low, high *network) {
	for o := range a.e.ops {
		low.problem.Cost[o], high.problem.Cost[o] = high.problem.Cost[o], low.problem.Cost[o]
		l, h := low.overlap[o], high.overlap[o]
		low.problem.Benefit[o] += l - h
		high.problem.Benefit[o] += h - l
	}
	a.settle(a.forces, low, a.off)
	a.settle(a.forces, high, a.off)
	for o := range a.e.ops {
		f := &a.forces.ops[o]
		if f.outMaybe {
			low.problem.In[o], low.problem.Out[o] = false, true
		}
		if f.possibly && !a.off[o] && !a.done[o] && f.why != "declined" {
			high.problem.In[o], high.problem.Out[o] = true, false
		}
	}
}

// forced marks what is surely forced in, and what that surely needs.
func forced(p *scope.Problem, operations int) []bool {
	out := slices.Clone(p.In[:operations])
	for again := true; again; {
		again = false
		for _, arc := range p.Arcs {
			if i, j := arc[0], arc[1]; int(i) < len(out) && int(j) < len(out) && out[i] && !out[j] && !p.Out[j] {
				out[j], again = true, true
			}
		}
	}
	return out
}

// touched lists, by suspect, the undecided operations that its chance or its
// loss bears on.
func (a *ahead) touched() [][]int {
	out := make([][]int, len(a.cures))
	for k, ops := range a.cures {
		for _, o := range ops {
			if a.able[o] != a.sure[o] {
				out[k] = append(out[k], o)
			}
		}
	}
	return out
}
