package engine

import (
	"slices"
	"strings"
	"unicode"
)

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
