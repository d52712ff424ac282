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
func (r *reading) placeOverlaps(net *network, f *figures, doors map[int]int) {
	all := r.needing(f, func(k int) []int { return net.needsLater(&r.e.suspects[k], f.off) })
	var throughDoor [][]float64
	if len(doors) > 0 {
		throughDoor = r.needing(f, func(k int) []int {
			now := net.needsNow(&r.e.suspects[k], f.off)
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
