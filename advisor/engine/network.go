package engine

import (
	"slices"

	"longstand/advisor/scope"
)

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
	reaches    []set   // the same, to ask
	needsNow   []set   // by suspect: every operation that curing it needs now
	needsLater [][]int // and that curing it later would need
	later      *requirements
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

	joined []joint    // see arcs
	drawn  []*network // what no way taken now changes, by ways taken later: see leftTo
}

// draw builds the network of a combination of ways taken now. What is left is
// reckoned to be cured later by the ways in later, whichever are taken now.
func (r *reading) draw(f *figures, combo, later []int) *network {
	net := &network{}
	r.drawIn(net, f, combo, later)
	return net
}

// drawIn draws it in the room of another network.
func (r *reading) drawIn(net *network, f *figures, combo, later []int) {
	by, then := r.requirementsBy(f, combo), r.requirementsBy(f, later)
	left := r.leftTo(f, then)
	overlap, benefit, cost := net.overlap, net.problem.Benefit, net.problem.Cost
	*net = *left
	net.reach, net.reaches, net.needsNow = by.reachNow.lists, by.reachNow.sets, by.curesNow.sets
	net.overlap = append(overlap[:0], left.overlap...)
	p := &net.problem
	p.Benefit, p.Cost = append(benefit[:0], p.Benefit...), append(cost[:0], p.Cost...)
	p.Arcs = f.arcs(by, left.problem.Arcs)
	if f.unsure {
		p.Unsure = by.maybeToDo
	}
	r.moveOverlaps(net, f, by, then)
}

// arcs joins what operations require by some ways with what the other nodes
// require. Networks that have them in common share them.
func (f *figures) arcs(by *requirements, nodes [][2]int32) [][2]int32 {
	for i := range f.joined {
		if j := &f.joined[i]; j.by == by && slices.Equal(j.all[j.own:], nodes) {
			return j.all
		}
	}
	j := joint{by: by, all: by.sureToDo}
	if !f.unsure {
		j.all = slices.Concat(j.all, by.maybeToDo)
	}
	j.own = len(j.all)
	j.all = slices.Concat(j.all, nodes)
	f.joined = append(f.joined, j)
	return j.all
}

// joint is the arcs of a network; the first of them are those of operations.
type joint struct {
	by  *requirements
	own int
	all [][2]int32
}

// leftTo is the part of a network that hangs on the ways taken later alone:
// losses and benefits, what overlaps, what is saved; drawn once for all ways
// that may be taken now.
func (r *reading) leftTo(f *figures, then *requirements) *network {
	for _, net := range f.drawn {
		if net.later == then {
			return net
		}
	}
	n, k := len(r.e.ops), len(r.e.suspects)
	net := &network{later: then, overlap: make([]int64, n), benefit: make([]int64, k), loss: make([]int64, k), node: make([]int, k),
		needsLater: then.cures.lists}
	p := &net.problem
	p.Benefit, p.Cost = make([]int64, n, 2*n), append(make([]int64, 0, 2*n), f.cost...)
	r.placeSuspects(net, f)
	r.placeOverlaps(net, f, then)
	r.placeSavings(net, f)
	f.drawn = append(f.drawn, net)
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
	for _, s := range r.savings() {
		if f.off[s.op] || f.off[s.with] || r.done[s.op] {
			continue
		}
		s.saves = min(s.saves, f.cost[s.op]-1)
		if s.saves <= 0 {
			continue
		}
		net.savings = append(net.savings, s)
		node := int32(len(p.Benefit))
		p.Benefit, p.Cost = append(p.Benefit, 0), append(p.Cost, -s.saves)
		p.Arcs = append(p.Arcs, [2]int32{node, int32(s.op)})
		if !r.done[s.with] {
			p.Arcs = append(p.Arcs, [2]int32{node, int32(s.with)})
		}
	}
}

// savings reckons, once for a case, what each operation saves beside another.
func (r *reading) savings() []savingNode {
	if r.saved != nil {
		return r.saved
	}
	r.saved = []savingNode{}
	factor := r.hoursFactor(asNow)
	for i := range r.e.ops {
		own := factor
		if r.e.ops[i].NoFactor {
			own = 1
		}
		for _, s := range r.e.ops[i].savings {
			b := r.bill(i, factor, asNow)
			r.saved = append(r.saved, savingNode{i, s.with, round(r.money(b.hours.Mean()-s.hours.Mean(), own, 0))})
		}
	}
	return r.saved
}
