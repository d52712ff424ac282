package engine

import (
	"slices"

	"longstand/advisor/scope"
)

// placeOverlaps subtracts, at each operation that several suspects need, what
// their benefits hold too often: it is paid again at most once.
func (r *reading) placeOverlaps(net *network, f *figures, then *requirements) {
	likely := func(k int) bool { return f.chance[k] > 0 }
	for o, suspects := range r.neededFor(then.cures.lists, likely) {
		if len(suspects) < 2 {
			continue
		}
		p := r.together(f, suspects)
		if len(p) < 2 {
			continue
		}
		v := scope.Overlap(f.cost[o], p)
		net.baseline -= v
		net.overlap[o] += v
		net.problem.Benefit[o] -= v
	}
}

// moveOverlaps moves what overlaps at an opening that later ways go through and
// the way taken now does not: it is saved at the door that is open now, but only
// for those whose cure opens that door: a car on the lift for its steering stays
// on the lift for it.
func (r *reading) moveOverlaps(net *network, f *figures, by, then *requirements) {
	var through []int
	for _, d := range r.e.doors[by.at][then.at] {
		through = through[:0]
		for k := range r.e.suspects {
			if f.chance[k] > 0 && then.cures.sets[k].has(d.later) && by.curesNow.sets[k].has(d.now) {
				through = append(through, k)
			}
		}
		p := r.together(f, through)
		if len(p) < 2 {
			continue
		}
		moved := scope.Overlap(f.cost[d.later], p)
		net.overlap[d.later] -= moved
		net.overlap[d.now] += moved
		net.problem.Benefit[d.later] += moved
		net.problem.Benefit[d.now] -= moved
	}
}

// together gathers the chances of some suspects, until the next call. Causes that
// exclude one another add up to one chance.
func (r *reading) together(f *figures, suspects []int) []float64 {
	out := r.room[:0]
	for i, k := range suspects {
		at := len(out)
		if fam := r.e.suspects[k].family; fam >= 0 {
			at = r.placeOf(fam, suspects[:i], at)
		}
		if at == len(out) {
			out = append(out, 0)
		}
		out[at] = min(1, out[at]+f.chance[k])
	}
	r.room = out
	return out
}

// placeOf is where the chance of a family stands among those of the suspects
// before: each family has one place. It is next when none of them is of it.
func (r *reading) placeOf(family int, before []int, next int) int {
	at := 0
	for i, k := range before {
		fam := r.e.suspects[k].family
		if fam == family {
			return at
		}
		if first := fam < 0 || !slices.ContainsFunc(before[:i], func(j int) bool { return r.e.suspects[j].family == fam }); first {
			at++
		}
	}
	return next
}

// neededFor lists, by operation, those of the suspects whose cure needs it, out
// of what each needs.
func (r *reading) neededFor(needs [][]int, counts func(k int) bool) [][]int {
	n, all := make([]int, len(r.e.ops)), 0
	for k, ops := range needs {
		if counts(k) {
			for _, o := range ops {
				n[o]++
			}
			all += len(ops)
		}
	}
	room, out := make([]int, all), make([][]int, len(n))
	for o := range out {
		out[o], room = room[:0:n[o]], room[n[o]:]
	}
	for k, ops := range needs {
		if counts(k) {
			for _, o := range ops {
				out[o] = append(out[o], k)
			}
		}
	}
	return out
}

// door is what a later way goes through, and what the way taken now goes
// through instead: an opening that is saved is saved at the door that is open.
type door struct{ later, now int }

// indexDoors lists the doors of every way now against every way later, each later
// opening once.
func (e *Engine) indexDoors() {
	for _, combo := range e.combos {
		var against [][]door
		for _, later := range e.combos {
			against = append(against, e.doorsOf(combo, later))
		}
		e.doors = append(e.doors, against)
	}
}

func (e *Engine) doorsOf(combo, later []int) (out []door) {
	for i := range combo {
		if combo[i] == later[i] {
			continue
		}
		now := e.routes[i].through[combo[i]]
		for _, o := range e.throughAll(i, later) {
			if len(now) == 0 || slices.Contains(now, o) || slices.Contains(e.throughAll(i, combo), o) {
				continue
			}
			out = slices.DeleteFunc(out, func(d door) bool { return d.later == o })
			out = append(out, door{o, now[0]})
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
