package engine

import "longstand/advisor/scope"

// network is the choice of a scope for one way of each route: the operations
// as nodes, then a node for each suspect that takes several operations to
// cure, then one for each saving.
type network struct {
	problem    scope.Problem
	benefit    []int64 // by suspect: r = round(chance x loss)
	loss       []int64 // by suspect: if left + every operation that curing needs
	overlap    []int64 // by operation
	node       []int   // by suspect: where its benefit sits, -1 when it has none
	reach      [][]int // by operation: itself and all that it requires now
	reachLater [][]int // the same for curing it later
	needsNow   [][]int // by suspect: every operation that curing it needs now
	needsLater [][]int // and that curing it later would need
	savings    []savingNode
	baseline   int64 // sum of benefits less overlaps: what leaving all costs
}

type savingNode struct {
	op, with int
	saves    int64
}

// figures are the numbers that a network is drawn from.
type figures struct {
	chance []float64 // by suspect; 0 when it does not apply
	left   []int64   // by suspect
	cost   []int64   // by operation
	off    []bool    // by operation: not fitted
	unsure bool      // keep requirements that are not known apart

	needed map[*requirements][][]float64 // by ways taken later: see neededLater
}

// draw builds the network of a combination of ways taken now. What is left is
// reckoned to be cured later by the ways in later, whichever are taken now.
func (r *reading) draw(f *figures, combo, later []int) *network {
	n := len(r.e.ops)
	net := &network{overlap: make([]int64, n), benefit: make([]int64, len(r.e.suspects)),
		loss: make([]int64, len(r.e.suspects)), node: make([]int, len(r.e.suspects)), reach: make([][]int, n)}
	p := &net.problem
	p.Benefit, p.Cost = make([]int64, n, 2*n), append(make([]int64, 0, 2*n), f.cost...)
	by := r.requirementsBy(f, combo)
	p.Arcs = make([][2]int32, 0, len(by.sure)+len(by.maybe)+2*n)
	then := r.requirementsBy(f, later)
	net.reach, net.needsNow, net.reachLater, net.needsLater = by.reachNow, by.curesNow, then.reach, then.cures
	p.Arcs = r.toDo(p.Arcs, by.sure)
	if f.unsure {
		p.Unsure = r.toDo(p.Unsure, by.maybe)
	} else {
		p.Arcs = r.toDo(p.Arcs, by.maybe)
	}
	r.placeSuspects(net, f)
	r.placeOverlaps(net, f, then, r.doors(combo, later))
	r.placeSavings(net, f)
	return net
}

// placeSuspects sets each suspect's loss and benefit, folded into its
// operation where one cures it, else as a node that requires them all.
func (r *reading) placeSuspects(net *network, f *figures) {
	p := &net.problem
	for k := range r.e.suspects {
		s := &r.e.suspects[k]
		net.node[k] = -1
		if f.chance[k] <= 0 {
			continue
		}
		net.loss[k] = f.left[k]
		for _, o := range net.needsLater[k] {
			net.loss[k] += f.cost[o]
		}
		net.benefit[k] = scope.Benefit(f.chance[k], net.loss[k])
		net.baseline += net.benefit[k]
		var open []int
		for _, o := range s.curedBy {
			if !f.off[o] && !r.done[o] {
				open = append(open, o)
			}
		}
		switch {
		case len(open) == 1:
			net.node[k] = open[0]
			p.Benefit[open[0]] += net.benefit[k]
		case len(open) > 1 && net.benefit[k] > 0:
			net.node[k] = len(p.Benefit)
			p.Benefit, p.Cost = append(p.Benefit, net.benefit[k]), append(p.Cost, 0)
			for _, o := range open {
				p.Arcs = append(p.Arcs, [2]int32{int32(net.node[k]), int32(o)})
			}
		}
	}
}

// placeSavings adds a node for each operation that is cheaper when another is done.
func (r *reading) placeSavings(net *network, f *figures) {
	p := &net.problem
	factor := r.hoursFactor(asNow)
	for i := range r.e.ops {
		for _, s := range r.e.ops[i].savings {
			if f.off[i] || f.off[s.with] || r.done[i] {
				continue
			}
			own := factor
			if r.e.ops[i].NoFactor {
				own = 1
			}
			b := r.bill(i, factor, asNow)
			saves := min(round(r.money(b.hours.Mean()-s.hours.Mean(), own, 0)), f.cost[i]-1)
			if saves <= 0 {
				continue
			}
			net.savings = append(net.savings, savingNode{i, s.with, saves})
			node := int32(len(p.Benefit))
			p.Benefit, p.Cost = append(p.Benefit, 0), append(p.Cost, -saves)
			p.Arcs = append(p.Arcs, [2]int32{node, int32(i)})
			if !r.done[s.with] {
				p.Arcs = append(p.Arcs, [2]int32{node, int32(s.with)})
			}
		}
	}
}
