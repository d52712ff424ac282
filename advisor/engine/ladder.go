package engine

import (
	"longstand/advisor"
	"longstand/advisor/scope"
)

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

// again lists the operations of an earlier scope that some later work needs once
// more.
func (s *situation) again(work []int, before []bool) []int {
	out := newSet(len(s.e.ops))
	todo := append([]int(nil), work...)
	for len(todo) > 0 {
		o := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for _, j := range s.reopens(o) {
			if before[j] && !out.has(j) && !s.done[j] {
				out.add(j)
				todo = append(todo, j)
			}
		}
	}
	return out.list()
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

// Place tells where a sum to spend lies on a ladder. A better scope for just
// this sum may lie on no step, so it also names the blocks of
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
