package engine

import (
	"math/bits"
	"slices"
	"strings"
	"unicode"
)

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

func mark(set map[int]bool, list []int) {
	for _, i := range list {
		set[i] = true
	}
}

func sorted(set map[int]bool) []int {
	out := make([]int, 0, len(set))
	for i := range set {
		out = append(out, i)
	}
	slices.Sort(out)
	return out
}

// name lists the ids of marked operations in the book's order.
func (e *Engine) names(marked []bool) []string {
	var out []string
	for i, in := range marked {
		if in {
			out = append(out, e.ops[i].ID)
		}
	}
	return out
}

// sentence makes words into a sentence: a capital first, a full stop last.
func sentence(words string) string {
	words = strings.TrimSpace(words)
	if words == "" {
		return ""
	}
	r := []rune(words)
	r[0] = unicode.ToUpper(r[0])
	if last := r[len(r)-1]; last != '.' && last != '?' && last != '!' {
		r = append(r, '.')
	}
	return string(r)
}
