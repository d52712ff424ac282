// Package oracles holds what the tests of this module share: one problem, put to
// several solvers that know nothing of one another.
package oracles

import (
	"math"

	"github.com/crillab/gophersat/maxsat"
	"gonum.org/v1/gonum/graph/network"
	"gonum.org/v1/gonum/graph/simple"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
	"longstand/advisor/scope"
)

// weights are the nodes' weights at a price; force is added to what is forced in
// and taken from what is forced out, for solvers that know no forcing.
func weights(p *scope.Problem, price scope.Price, force int64) []int64 {
	w := make([]int64, len(p.Benefit))
	for i := range w {
		w[i] = price.Num*p.Benefit[i] - price.Den*p.Cost[i]
		if p.In != nil && p.In[i] {
			w[i] += force
		}
		if p.Out != nil && p.Out[i] {
			w[i] -= force
		}
	}
	return w
}

// enough is more than all weights of a problem together.
func enough(p *scope.Problem, price scope.Price) int64 {
	sum := int64(1)
	for _, w := range weights(p, price, 0) {
		sum += max(w, -w)
	}
	return sum
}

func forcedIn(p *scope.Problem) (n int64) {
	for _, in := range p.In {
		if in {
			n++
		}
	}
	return n
}

// byFlow is the value of the best closure as positive weights less the maximum
// flow. gonum wants nodes numbered from 0 and gives the value only.
func byFlow(p *scope.Problem, price scope.Price) int64 {
	force := enough(p, price)
	n := len(p.Benefit)
	s, t := int64(n), int64(n+1)
	g := simple.NewWeightedDirectedGraph(0, 0)
	for i := range n + 2 {
		g.AddNode(simple.Node(i))
	}
	var positive int64
	for i, w := range weights(p, price, force) {
		if w > 0 {
			positive += w
			g.SetWeightedEdge(simple.WeightedEdge{F: simple.Node(s), T: simple.Node(i), W: float64(w)})
		}
		if w < 0 {
			g.SetWeightedEdge(simple.WeightedEdge{F: simple.Node(i), T: simple.Node(t), W: float64(-w)})
		}
	}
	for _, a := range p.Arcs {
		if a[0] != a[1] {
			g.SetWeightedEdge(simple.WeightedEdge{F: simple.Node(a[0]), T: simple.Node(a[1]), W: math.Inf(1)})
		}
	}
	flow := network.MaxFlowDinic(g, simple.Node(s), simple.Node(t), -1)
	return positive - int64(math.Round(flow)) - force*forcedIn(p)
}

// bySimplex is the value by linear programming: maximise w x with x_i <= x_j for
// "i requires j" and x <= 1, in standard form with the slacks as first basis
// (which skips the search for one). ok is false when the simplex gives up, which
// says nothing against ours.
func bySimplex(p *scope.Problem, price scope.Price) (value int64, ok bool) {
	n, m := len(p.Benefit), len(p.Arcs)
	force := enough(p, price)
	rows := m + n
	c, b := make([]float64, n+rows), make([]float64, rows)
	a := mat.NewDense(rows, n+rows, nil)
	for i, w := range weights(p, price, force) {
		c[i] = -float64(w)
		a.Set(m+i, i, 1)
		b[m+i] = 1
	}
	for r, arc := range p.Arcs {
		a.Set(r, int(arc[0]), a.At(r, int(arc[0]))+1)
		a.Set(r, int(arc[1]), a.At(r, int(arc[1]))-1)
	}
	basis := make([]int, rows)
	for r := range rows {
		a.Set(r, n+r, 1)
		basis[r] = n + r
	}
	opt, _, err := lp.Simplex(c, a, b, 1e-10, basis)
	if err != nil {
		return 0, false
	}
	return int64(math.Round(-opt)) - force*forcedIn(p), true
}

// byMaxSAT is the value by weighted partial MaxSAT, forcing and requirements as
// hard clauses: what cannot be satisfied is what the best closure forgoes.
func byMaxSAT(p *scope.Problem, price scope.Price) int64 {
	name := func(i int) string { return "x" + string(rune('A'+i)) }
	var clauses []maxsat.Constr
	var positive int64
	for i, w := range weights(p, price, 0) {
		switch {
		case w > 0:
			positive += w
			clauses = append(clauses, maxsat.WeightedClause([]maxsat.Lit{maxsat.Var(name(i))}, int(w)))
		case w < 0:
			clauses = append(clauses, maxsat.WeightedClause([]maxsat.Lit{maxsat.Not(name(i))}, int(-w)))
		}
		if p.In != nil && p.In[i] {
			clauses = append(clauses, maxsat.HardClause(maxsat.Var(name(i))))
		}
		if p.Out != nil && p.Out[i] {
			clauses = append(clauses, maxsat.HardClause(maxsat.Not(name(i))))
		}
	}
	for _, a := range p.Arcs {
		if a[0] != a[1] {
			clauses = append(clauses, maxsat.HardClause(maxsat.Not(name(int(a[0]))), maxsat.Var(name(int(a[1])))))
		}
	}
	if len(clauses) == 0 {
		return 0
	}
	_, cost := maxsat.New(clauses...).Solve()
	return positive - int64(cost)
}
