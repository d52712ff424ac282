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
	a.figures = high
	a.curesBy(high)
	tops := a.fromBelow(low, high)
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
	a.fromAbove(tops, opened.list())
}

// fromBelow works out sure and firm, and gives the upper end of what can still
// be for every choice of ways now and later; the lower ends are drawn in one
// place, one after the other.
func (a *ahead) fromBelow(low, high *figures) (tops []*network) {
	a.sure, a.firm = make([]bool, len(a.e.ops)), make([]bool, len(a.e.ops))
	bottom := &network{}
	for c, combo := range a.e.combos {
		for l, then := range a.e.combos {
			if !a.passable(combo) || !a.passable(then) {
				continue
			}
			top := a.draw(high, combo, then)
			a.drawIn(bottom, low, combo, then)
			if c == l {
				a.laters = append(a.laters, a.laterBy(top))
			}
			a.bound(bottom, top)
			a.hold(bottom, len(tops) == 0)
			tops = append(tops, top)
		}
	}
	return tops
}

// hold narrows sure and firm to what one more choice of ways leaves of them. What
// is firm is in every scope, so there is nothing to choose when no more is sure.
func (a *ahead) hold(bottom *network, first bool) {
	firm, more := forced(&bottom.problem, len(a.e.ops)), first
	for o := range firm {
		a.firm[o] = (first || a.firm[o]) && firm[o]
		more = more || a.sure[o] && !firm[o]
	}
	if !more {
		return
	}
	surely := scope.Surely(a.solver, &bottom.problem, a.price, a.price)
	for o := range a.sure {
		a.sure[o] = (first || a.sure[o]) && surely[o]
	}
}

// fromAbove works out able, with what looks may open possibly in.
func (a *ahead) fromAbove(tops []*network, opened []int) {
	a.able = make([]bool, len(a.e.ops))
	for _, net := range tops {
		p := &net.problem
		for _, o := range opened {
			for _, j := range net.reach[o] {
				p.In[j] = !p.Out[j]
			}
		}
		possibly := scope.Possibly(a.solver, p, a.price, a.price)
		for o := range a.able {
			a.able[o] = a.able[o] || possibly[o]
		}
	}
}

// curesBy notes which operations curing each suspect can need, now or later, by
// any way.
func (a *ahead) curesBy(high *figures) {
	cures := newSets(len(a.e.suspects), len(a.e.ops))
	for _, combo := range a.e.combos {
		if !a.passable(combo) {
			continue
		}
		by := a.requirementsBy(high, combo)
		for k := range cures {
			if high.chance[k] > 0 {
				cures[k].join(by.curesNow.sets[k])
				cures[k].join(by.cures.sets[k])
			}
		}
	}
	a.cures = lists(cures)
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
