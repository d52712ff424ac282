package engine

import (
	"slices"

	"longstand/advisor/scope"
)

// placeOverlaps subtracts, at each operation that several suspects need, what
// their benefits hold too often: it is paid again at most once. What overlaps
// at an opening that later ways go through and the way taken now does not is
// saved at the door that is open now, but only for those whose cure opens that
// door: a car on the lift for its steering stays on the lift for it.
func (r *reading) placeOverlaps(net *network, f *figures, then *requirements, doors map[int]int) {
	all := r.neededLater(f, then)
	var throughDoor [][]float64
	if len(doors) > 0 {
		throughDoor = r.needing(f, func(k int) []int {
			var out []int
			for _, o := range net.needsLater[k] {
				if door, ok := doors[o]; ok && slices.Contains(net.needsNow[k], door) {
					out = append(out, o)
				}
			}
			return out
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

// neededLater gathers, by operation, the chances of the suspects whose cure needs
// it by the ways taken later, once for all ways that may be taken now.
func (r *reading) neededLater(f *figures, then *requirements) [][]float64 {
	if _, ok := f.needed[then]; !ok {
		if f.needed == nil {
			f.needed = map[*requirements][][]float64{}
		}
		f.needed[then] = r.needing(f, func(k int) []int { return then.cures[k] })
	}
	return f.needed[then]
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

// doors maps what a later way goes through to what the way taken now goes
// through: an opening that is saved is saved at the door that is open.
func (r *reading) doors(combo, later []int) map[int]int {
	out := map[int]int{}
	for i := range combo {
		if combo[i] == later[i] {
			continue
		}
		now := r.e.routes[i].through[combo[i]]
		for _, o := range r.e.throughAll(i, later) {
			if len(now) > 0 && !slices.Contains(now, o) && !slices.Contains(r.e.throughAll(i, combo), o) {
				out[o] = now[0]
			}
		}
	}
	return out
}

// throughAll lists what a way of a route goes through, and what the ways of the
// routes that those operations need in turn go through.
func (e *Engine) throughAll(route int, combo []int) []int {
	out := slices.Clone(e.routes[route].through[combo[route]])
	for i := 0; i < len(out); i++ {
		for _, n := range e.ops[out[i]].needs {
			if n.route < 0 {
				continue
			}
			for _, o := range e.routes[n.route].through[combo[n.route]] {
				if !slices.Contains(out, o) {
					out = append(out, o)
				}
			}
		}
	}
	return out
}
