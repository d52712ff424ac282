package engine

import (
	"slices"

	"longstand/advisor"
)

// requirements are what operations require of one another by one combination of
// ways, and all that each so requires, itself included.
type requirements struct {
	combo       []int
	at          int // its place among the combinations
	sure, maybe [][2]int32
	sureToDo    [][2]int32 // those between operations that are not done
	maybeToDo   [][2]int32
	reach       needed // by operation: from nothing, as what is left will be cured later
	reachNow    needed // by operation: as the car stands: what is done needs nothing any more
	cures       needed // by suspect: every operation that curing it later needs
	curesNow    needed // by suspect: the same now
}

// needed is what each of many needs: in order, and as sets to ask.
type needed struct {
	lists [][]int
	sets  []set
}

func neededBy(sets []set) needed { return needed{lists(sets), sets} }

// requirementsBy works out a combination once for what the car has.
func (r *reading) requirementsBy(f *figures, combo []int) *requirements {
	for _, w := range r.required {
		if slices.Equal(w.combo, combo) {
			return w
		}
	}
	w := &requirements{combo: combo}
	w.at = slices.IndexFunc(r.e.combos, func(c []int) bool { return slices.Equal(c, combo) })
	w.sure, w.maybe = r.arcs(f, combo)
	all := slices.Concat(w.sure, w.maybe)
	w.reach = closures(len(r.e.ops), all)
	w.reachNow = w.reach
	anyDone := slices.Contains(r.done, true)
	if anyDone {
		w.reachNow = closures(len(r.e.ops), slices.DeleteFunc(all, func(a [2]int32) bool { return r.done[a[0]] }))
	}
	w.cures = r.cures(w.reach, f.off)
	w.curesNow = w.cures
	if anyDone {
		w.curesNow = r.cures(w.reachNow, f.off)
	}
	w.sureToDo, w.maybeToDo = r.toDo(w.sure), r.toDo(w.maybe)
	r.required = append(r.required, w)
	return w
}

// arcs lists the requirements that apply, and those that may.
func (r *reading) arcs(f *figures, combo []int) (sure, maybe [][2]int32) {
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

// toDo picks the arcs between operations that are not done.
func (r *reading) toDo(arcs [][2]int32) [][2]int32 {
	if !slices.Contains(r.done, true) {
		return arcs
	}
	var to [][2]int32
	for _, a := range arcs {
		if !r.done[a[1]] && !r.done[a[0]] {
			to = append(to, a)
		}
	}
	return to
}

// closures gives for each node itself and all that it requires.
func closures(n int, arcs [][2]int32) needed {
	sets := newSets(n, n)
	for i := range sets {
		sets[i].add(i)
	}
	for more := true; more; {
		more = false
		for _, a := range arcs {
			if sets[a[0]].join(sets[a[1]]) {
				more = true
			}
		}
	}
	return neededBy(sets)
}

// cures gives for each suspect all that the operations which cure it require.
func (r *reading) cures(reach needed, off []bool) needed {
	sets := newSets(len(r.e.suspects), len(r.e.ops))
	for k := range r.e.suspects {
		for _, o := range r.e.suspects[k].curedBy {
			if !off[o] {
				sets[k].join(reach.sets[o])
			}
		}
	}
	return neededBy(sets)
}
