package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/scope"
)

// network is the choice of a scope for one way of each route: the operations
// as nodes, then a node for each suspect that takes several operations to
// cure, then one for each saving.
type network struct {
	problem  scope.Problem
	benefit  []int64 // by suspect: r = round(chance x loss)
	loss     []int64 // by suspect: if left + every operation that curing needs
	overlap  []int64 // by operation
	node     []int   // by suspect: where its benefit sits, -1 when it has none
	reach    [][]int // by operation: itself and all that it requires now
	again    [][]int // the same for curing it later
	savings  []savingNode
	baseline int64 // sum of benefits less overlaps: what leaving all costs
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
}

// draw builds the network of a combination of ways taken now. What is left is
// reckoned to be cured later by the ways in later, whichever are taken now.
func (r *reading) draw(f *figures, combo, later []int) *network {
	n := len(r.e.ops)
	net := &network{overlap: make([]int64, n), benefit: make([]int64, len(r.e.suspects)),
		loss: make([]int64, len(r.e.suspects)), node: make([]int, len(r.e.suspects)), reach: make([][]int, n)}
	p := &net.problem
	p.Benefit, p.Cost = make([]int64, n), append([]int64(nil), f.cost...)
	by := r.waysBy(f, combo)
	net.reach, net.again = by.reach, r.waysBy(f, later).reach
	p.Arcs = r.toDo(p.Arcs, by.sure)
	if f.unsure {
		p.Unsure = r.toDo(p.Unsure, by.maybe)
	} else {
		p.Arcs = r.toDo(p.Arcs, by.maybe)
	}
	r.placeSuspects(net, f)
	r.placeOverlaps(net, f, r.doors(combo, later))
	r.placeSavings(net, f)
	return net
}

// toDo adds the arcs between operations that are not done.
func (r *reading) toDo(to, arcs [][2]int32) [][2]int32 {
	for _, a := range arcs {
		if !r.done[a[1]] && !r.done[a[0]] {
			to = append(to, a)
		}
	}
	return to
}

// ways are the requirements by one combination of ways, and all that each
// operation requires by them, itself included.
type ways struct {
	combo       []int
	off         *bool
	sure, maybe [][2]int32
	reach       [][]int
}

// waysBy works out a combination once for a case.
func (r *reading) waysBy(f *figures, combo []int) *ways {
	var off *bool
	if len(f.off) > 0 {
		off = &f.off[0]
	}
	for i := range r.ways {
		if w := r.ways[i]; w.off == off && slices.Equal(w.combo, combo) {
			return w
		}
	}
	w := &ways{combo: combo, off: off}
	w.sure, w.maybe = r.requirements(f, combo)
	w.reach = closures(len(r.e.ops), slices.Concat(w.sure, w.maybe))
	r.ways = append(r.ways, w)
	return w
}

// requirements lists the arcs that apply, and those that may.
func (r *reading) requirements(f *figures, combo []int) (sure, maybe [][2]int32) {
	for i := range r.e.ops {
		if f.off[i] {
			continue
		}
		add := func(needs []need, given advisor.Truth) {
			for _, n := range needs {
				t := r.all(n.when).And(given)
				if t == advisor.False {
					continue
				}
				for _, j := range r.targets(n, combo) {
					switch arc := [2]int32{int32(i), int32(j)}; {
					case j == i || f.off[j]:
					case t == advisor.True:
						sure = append(sure, arc)
					default:
						maybe = append(maybe, arc)
					}
				}
			}
		}
		add(r.e.ops[i].needs, advisor.True)
		for v, t := range r.variantTruths(i) {
			add(r.e.ops[i].variants[v], t)
		}
	}
	return sure, maybe
}

// targets are the operations that a need names, through the way taken; none
// through a route when no ways are given.
func (r *reading) targets(n need, combo []int) []int {
	if n.route >= 0 && combo == nil {
		return nil
	}
	if n.route >= 0 {
		return r.e.routes[n.route].through[combo[n.route]]
	}
	return []int{n.op}
}

// variantTruths tells of each variant whether it is the one: its own condition
// holds and none before it does.
func (r *reading) variantTruths(o int) []advisor.Truth {
	op := &r.e.ops[o]
	out := make([]advisor.Truth, len(op.Variants))
	earlier := advisor.False
	for v := range op.Variants {
		own := r.all(op.Variants[v].When.ID)
		out[v] = own.And(earlier.Not())
		earlier = earlier.Or(own)
	}
	return out
}

// closures gives for each node itself and all that it requires, in order.
func closures(n int, arcs [][2]int32) [][]int {
	next := make([][]int, n)
	for _, a := range arcs {
		next[a[0]] = append(next[a[0]], int(a[1]))
	}
	out := make([][]int, n)
	seen, todo := newSet(n), make([]int, 0, n)
	for i := range out {
		seen.clear()
		seen.add(i)
		for todo = append(todo[:0], i); len(todo) > 0; {
			j := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			for _, k := range next[j] {
				if !seen.has(k) {
					seen.add(k)
					todo = append(todo, k)
				}
			}
		}
		out[i] = seen.list()
	}
	return out
}

// needed lists every operation that curing a suspect needs now.
func (net *network) needed(s *suspect, off []bool) []int { return union(s.curedBy, net.reach, off) }

// needsLater lists every operation that curing it later would need.
func (net *network) needsLater(s *suspect, off []bool) []int { return union(s.curedBy, net.again, off) }

func union(ops []int, reach [][]int, off []bool) []int {
	all := newSet(len(reach))
	for _, o := range ops {
		if !off[o] {
			all.addAll(reach[o])
		}
	}
	return all.list()
}

// doors maps what a later way goes through to what the way taken now goes
// through: an opening that is saved is saved at the door that is open.
func (r *reading) doors(combo, later []int) map[int]int {
	out := map[int]int{}
	for i := range combo {
		now, then := r.e.routes[i].through[combo[i]], r.e.routes[i].through[later[i]]
		for _, o := range then {
			if len(now) > 0 && !slices.Contains(now, o) {
				out[o] = now[0]
			}
		}
	}
	return out
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
		for _, o := range net.needsLater(s, f.off) {
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

// placeOverlaps subtracts, at each operation that several suspects need, what
// their benefits hold too often: it is paid again at most once. What overlaps
// at an opening that later ways go through and the way taken now does not is
// saved at the door that is open now, but only for those whose cure opens that
// door: a car on the lift for its steering stays on the lift for it.
func (r *reading) placeOverlaps(net *network, f *figures, doors map[int]int) {
	all := r.needing(f, func(k int) []int { return net.needsLater(&r.e.suspects[k], f.off) })
	var throughDoor [][]float64
	if len(doors) > 0 {
		throughDoor = r.needing(f, func(k int) []int {
			now := net.needed(&r.e.suspects[k], f.off)
			return slices.DeleteFunc(net.needsLater(&r.e.suspects[k], f.off), func(o int) bool {
				door, ok := doors[o]
				return !ok || !slices.Contains(now, door)
			})
		})
	}
	for o, p := range all {
		if len(p) < 2 {
			continue
		}
		v := scope.Overlap(f.cost[o], p)
		net.baseline -= v
		if door, ok := doors[o]; ok && len(throughDoor[o]) > 1 {
			moved := scope.Overlap(f.cost[o], throughDoor[o])
			net.overlap[door] += moved
			net.problem.Benefit[door] -= moved
			v -= moved
		}
		net.overlap[o] += v
		net.problem.Benefit[o] -= v
	}
}

// needing gathers, by operation, the chances of the suspects that need it.
// Causes that exclude one another add up to one chance.
func (r *reading) needing(f *figures, needs func(k int) []int) [][]float64 {
	byOp := make([][]float64, len(r.e.ops))
	family := make([]map[int]int, len(r.e.ops))
	for k := range r.e.suspects {
		if f.chance[k] <= 0 {
			continue
		}
		for _, o := range needs(k) {
			fam := r.e.suspects[k].family
			if fam < 0 {
				byOp[o] = append(byOp[o], f.chance[k])
				continue
			}
			if family[o] == nil {
				family[o] = map[int]int{}
			}
			at, ok := family[o][fam]
			if !ok {
				at = len(byOp[o])
				family[o][fam], byOp[o] = at, append(byOp[o], 0)
			}
			byOp[o][at] = min(1, byOp[o][at]+f.chance[k])
		}
	}
	return byOp
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
