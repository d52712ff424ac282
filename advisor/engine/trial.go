package engine

import (
	"slices"

	"longstand/advisor/scope"
	"longstand/advisor/worth"
)

// trial is the choice of a scope with some access forced in, held ready so that
// what a look may show is tried by what it changes alone.
type trial struct {
	solver  *scope.Solver
	problem scope.Problem // In and Benefit are its own, all else is the net's
	net     *network      // for which it stands, nil for none
	value   int64         // of the best scope as nothing is shown
	spare   []bool
}

// opened makes the trial ready for some access.
func (s *situation) opened(access []int) *trial {
	t := &s.trial
	in := append(t.spare[:0], s.net.problem.In...)
	for _, o := range access {
		for _, j := range s.net.reach[o] {
			in[j] = in[j] || !s.net.problem.Out[j]
		}
	}
	if t.net == s.net && slices.Equal(in, t.problem.In) {
		t.spare = in
		return t
	}
	if t.solver == nil {
		t.solver = scope.NewSolver(len(s.net.problem.Benefit), len(s.net.problem.Arcs))
	}
	benefit := append(t.problem.Benefit[:0], s.net.problem.Benefit...)
	t.net, t.spare, t.problem = s.net, t.problem.In, s.net.problem
	t.problem.In, t.problem.Benefit = in, benefit
	t.value = t.solver.Best(&t.problem, s.price).Value
	return t
}

// show sets the benefits of some nodes to what they are in one outcome.
func (t *trial) show(o *worth.Outcome, nodes []int32) {
	t.forget(nodes)
	for _, m := range o.Changes {
		if node := t.net.node[m.Suspect]; node >= 0 {
			t.problem.Benefit[node] += round(m.Chance*float64(t.net.loss[m.Suspect])) - t.net.benefit[m.Suspect]
		}
	}
}

// forget sets the benefits of some nodes back.
func (t *trial) forget(nodes []int32) {
	for _, i := range nodes {
		t.problem.Benefit[i] = t.net.problem.Benefit[i]
	}
}

// again chooses anew after the benefits of some nodes have changed.
func (t *trial) again(price scope.Price, nodes []int32) scope.Closure {
	return t.solver.Again(&t.problem, price, nodes)
}
