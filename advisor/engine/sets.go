package engine

import "math/bits"

// set is a set of small numbers: operations, questions.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s set) has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }
func (s set) clear()         { clear(s) }

func (s set) addAll(list []int) {
	for _, i := range list {
		s.add(i)
	}
}

// list gives the numbers in order.
func (s set) list() []int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	out := make([]int, 0, n)
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
