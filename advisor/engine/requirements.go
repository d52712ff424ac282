package engine

import (
	"slices"

	"longstand/advisor"
)

// requirements are what operations require of one another by one combination of
// ways, and all that each so requires, itself included.
type requirements struct {
	combo       []int
	sure, maybe [][2]int32
	reach       [][]int // from nothing, as what is left will be cured later
	reachNow    [][]int // as the car stands: what is done needs nothing any more
	cures       [][]int // by suspect: every operation that curing it later needs
	curesNow    [][]int // by suspect: the same now
}

// requirementsBy works out a combination once for what the car has.
func (r *reading) requirementsBy(f *figures, combo []int) *requirements {
	for _, w := range r.required {
		if slices.Equal(w.combo, combo) {
			return w
		}
	}
	w := &requirements{combo: combo}
	w.sure, w.maybe = r.arcs(f, combo)
	all := slices.Concat(w.sure, w.maybe)
	w.reach = closures(len(r.e.ops), all)
	w.reachNow = w.reach
	if undone := slices.DeleteFunc(all, func(a [2]int32) bool { return r.done[a[0]] }); len(undone) < len(all) {
		w.reachNow = closures(len(r.e.ops), undone)
	}
	for k := range r.e.suspects {
		w.cures = append(w.cures, union(r.e.suspects[k].curedBy, w.reach, f.off))
		w.curesNow = append(w.curesNow, union(r.e.suspects[k].curedBy, w.reachNow, f.off))
	}
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

// toDo adds the arcs between operations that are not done.
func (r *reading) toDo(to, arcs [][2]int32) [][2]int32 {
	for _, a := range arcs {
		if !r.done[a[1]] && !r.done[a[0]] {
			to = append(to, a)
		}
	}
	return to
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

func union(ops []int, reach [][]int, off []bool) []int {
	all := newSet(len(reach))
	for _, o := range ops {
		if !off[o] {
			all.addAll(reach[o])
		}
	}
	return all.list()
}
