package engine

import (
	"longstand/advisor"
)

// paidAgain tells of each step what is open before it that would have to be
// done and paid again if the step were done later, on another visit: the access
// that its work needs, and what opening brings (a gasket, a filling of fluid);
// and by which step all else that it needs is in.
func (s *situation) paidAgain(steps []advisor.Step) {
	before := make([]bool, len(s.e.ops))
	entered := make([]int, len(s.e.ops)) // by operation: the step at which it enters
	for i := range steps {
		step, enters := &steps[i], s.e.operationsOf(steps[i].Enters)
		for _, o := range enters {
			entered[o] = i
			step.Alone += s.figures.cost[o]
		}
		for _, o := range enters {
			for _, j := range s.net.reach[o] {
				if entered[j] != i {
					step.After = max(step.After, entered[j])
				}
			}
		}
		if i > 0 {
			for _, o := range s.again(enters, before) {
				step.Again, step.AgainCost = append(step.Again, s.e.ops[o].ID), step.AgainCost+s.figures.cost[o]
			}
		}
		for _, o := range enters {
			before[o] = true
		}
	}
}

// Place tells where a sum to spend lies on a ladder. A better scope for just
// this sum may lie on no step (decision.md B8), so it also names the blocks of
// later steps that what is left would pay by themselves.
func Place(l *advisor.Ladder, sum int64) advisor.Budget {
	b := advisor.Budget{Sum: sum, Within: -1}
	for i := range l.Steps {
		if l.Steps[i].Cost <= sum {
			b.Within, b.Left = i, sum-l.Steps[i].Cost
		}
	}
	if next := b.Within + 1; next < len(l.Steps) {
		b.Short = l.Steps[next].Cost - sum
	}
	for i := b.Within + 1; i < len(l.Steps) && b.Within >= 0; i++ {
		if l.Steps[i].After <= b.Within && l.Steps[i].Alone <= b.Left {
			b.Fits = append(b.Fits, i)
		}
	}
	return b
}

// again lists the operations of an earlier scope that some later work needs once
// more.
func (s *situation) again(work []int, before []bool) []int {
	set := map[int]bool{}
	todo := append([]int(nil), work...)
	for len(todo) > 0 {
		o := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for _, j := range s.reopens(o) {
			if before[j] && !set[j] && !s.done[j] {
				set[j] = true
				todo = append(todo, j)
			}
		}
	}
	return sorted(set)
}

// reopens lists what doing an operation by itself takes each time: the access
// among its needs, and everything that it brings.
func (s *situation) reopens(o int) []int {
	var out []int
	each := func(needs []need, brought bool) {
		for _, n := range needs {
			if s.all(n.when) == advisor.False {
				continue
			}
			for _, j := range s.targets(n, s.combo) {
				if j != o && !s.off[j] && (brought || s.e.ops[j].Access) {
					out = append(out, j)
				}
			}
		}
	}
	op := &s.e.ops[o]
	each(op.needs, false)
	each(s.e.needsOf(op.Brings), true)
	for v, t := range s.variantTruths(o) {
		if t != advisor.False {
			each(op.variants[v], false)
		}
	}
	return out
}
