package engine

import "math/bits"

// set is a set of small numbers: operations, questions.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

// newSets makes sets of numbers below n.
func newSets(sets, n int) []set {
	words := (n + 63) / 64
	all, out := make(set, sets*words), make([]set, sets)
	for i := range out {
		out[i] = all[i*words : (i+1)*words]
	}
	return out
}

func (s set) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s set) has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }
func (s set) clear()         { clear(s) }

func (s set) addAll(list []int) {
	for _, i := range list {
		s.add(i)
	}
}

// join adds what another set holds, and tells whether that was more.
func (s set) join(o set) (more bool) {
	for i, w := range o {
		more = more || w&^s[i] != 0
		s[i] |= w
	}
	return more
}

func (s set) count() (n int) {
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// list gives the numbers in order.
func (s set) list() []int { return s.appendTo(make([]int, 0, s.count())) }

// lists gives the numbers of several sets.
func lists(sets []set) [][]int {
	n := 0
	for _, s := range sets {
		n += s.count()
	}
	all, out := make([]int, 0, n), make([][]int, len(sets))
	for i, s := range sets {
		from := len(all)
		all = s.appendTo(all)
		out[i] = all[from:len(all):len(all)]
	}
	return out
}

func (s set) appendTo(out []int) []int {
	for i, w := range s {
		for ; w != 0; w &= w - 1 {
			out = append(out, i*64+bits.TrailingZeros64(w))
		}
	}
	return out
}

// ids names operations that the car has.
func (s *situation) ids(ops []int) []string {
	var out []string
	for _, o := range ops {
		if !s.off[o] {
			out = append(out, s.e.ops[o].ID)
		}
	}
	return out
}

func (s *situation) undone(ops []int) []string {
	var out []string
	for _, o := range ops {
		if !s.off[o] && !s.done[o] {
			out = append(out, s.e.ops[o].ID)
		}
	}
	return out
}
