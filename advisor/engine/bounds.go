package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/belief"
	"longstand/advisor/scope"
)

// cut makes the two cuts: over every way of the routes, the operations that are
// in every scope that can still be, and those that are in some. A look forces
// its own access in, so the access of every look that can be worth its minutes
// counts as possibly in: what lies behind it may then be in the scope of one of
// the look's outcomes.
func (a *ahead) cut() {
	low, high := a.ends()
	pairs := a.pairs(low, high)
	a.cuts(pairs)
	opened := map[int]bool{}
	for i := range a.e.looks {
		if a.mayPay(i, low, high) {
			a.looks = append(a.looks, i)
			mark(opened, a.e.mayOpen(&a.e.looks[i]))
		}
	}
	for _, p := range pairs {
		for o := range opened {
			for _, j := range p.high.reach[o] {
				p.high.problem.In[j] = !p.high.problem.Out[j]
			}
		}
	}
	if len(opened) > 0 {
		a.cuts(pairs)
	}
}

// pair is the two ends of what can still be, for one choice of ways.
type pair struct{ low, high *network }

// pairs draws both ends for every choice of ways now and later, and notes which
// operations curing a suspect can need.
func (a *ahead) pairs(low, high *figures) (out []pair) {
	cures := make([][]bool, len(a.e.suspects))
	for k := range cures {
		cures[k] = make([]bool, len(a.e.ops))
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
						tick(cures[k], p.high.reach[o])
						tick(cures[k], p.high.again[o])
					}
				}
			}
		}
	}
	a.cures = make([][]int, len(cures))
	for k := range cures {
		a.cures[k] = listed(cures[k])
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

// tick marks some places of a list of yes and no; listed gives them back in order.
func tick(set []bool, at []int) {
	for _, i := range at {
		set[i] = true
	}
}

func listed(set []bool) (out []int) {
	for i, in := range set {
		if in {
			out = append(out, i)
		}
	}
	return out
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

// ends gives the figures at the lowest and the highest that is still possible.
func (a *ahead) ends() (low, high *figures) {
	low, high = a.figuresAt(lowest), a.figuresAt(highest)
	low.unsure, high.unsure = true, true
	for k := range a.doubts {
		if a.doubts[k].here == advisor.False {
			continue
		}
		low.chance[k], high.chance[k] = a.bounds(k, true)
		if a.can(a.e.suspects[k].When.ID, advisor.False) || a.mayLose(k) {
			low.chance[k] = 0
		}
	}
	return low, high
}

// mayLose tells whether every operation that cures a suspect may turn out not
// to be fitted.
func (a *ahead) mayLose(k int) bool {
	for _, o := range a.e.suspects[k].curedBy {
		if !a.off[o] && !a.can(a.e.ops[o].Fitted.ID, advisor.False) {
			return false
		}
	}
	return true
}

// bounds is the lowest and highest chance that a suspect can come to have, by
// further answers and, with looks, by what a look finds. A sign that is known by
// a weaker channel than it may yet be counts as open.
func (a *ahead) bounds(k int, looks bool) (low, high float64) {
	d, sus := &a.doubts[k], &a.e.suspects[k]
	if sus.family >= 0 {
		return 0, 1 // rivals may rise or fall as well
	}
	lowBase, highBase := d.base, d.base
	for i := range sus.Bases {
		t := a.all(sus.Bases[i].When.ID)
		if t == advisor.False {
			continue
		}
		c := sus.Bases[i].Count.Chance()
		lowBase, highBase = min(lowBase, c), max(highBase, c)
		if t == advisor.True {
			break
		}
	}
	evidence := make([]belief.Evidence, 0, len(d.evidence))
	for i, sign := range sus.signs {
		ev := d.evidence[i]
		moves := slices.ContainsFunc(conditionsOf(sign), a.mayBeSurer)
		if len(sign.Levels) == 0 && ev.Truth.Known() && moves {
			ev.Truth = advisor.Unknown
		}
		if looks || moves || ev.Truth.Known() && len(ev.Open) == 0 {
			evidence = append(evidence, ev)
		}
	}
	low, _ = belief.Bounds(lowBase, evidence, a.e.book.Settings.Trust)
	_, high = belief.Bounds(highBase, evidence, a.e.book.Settings.Trust)
	return low, high
}

// mayBeSurer tells whether a condition may yet be known by a stronger channel.
func (a *ahead) mayBeSurer(id advisor.CondID) bool {
	for _, see := range a.sees {
		if see.Can(id, advisor.True) || see.Can(id, advisor.False) {
			return true
		}
	}
	return false
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
