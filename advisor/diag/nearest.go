package diag

import (
	"slices"
	"strings"
)

// Nearest gives the candidate that a word most likely meant, or "" when none
// is near enough: at most a third of the word's letters may differ, one at
// least. Of equally near ones the first in alphabetical order is taken.
func Nearest(word string, candidates []string) string {
	best, bestDistance := "", max(1, len([]rune(word))/3)+1
	lower := []rune(strings.ToLower(word))
	for _, c := range candidates {
		d := distance(lower, []rune(strings.ToLower(c)), bestDistance)
		if d < bestDistance || d == bestDistance && best != "" && c < best {
			best, bestDistance = c, d
		}
	}
	return best
}

// DidYouMean is a help line for a word that is none of the candidates: the
// nearest one or, when there are few, all of them.
func DidYouMean(word string, candidates []string) string {
	if near := Nearest(word, candidates); near != "" {
		return "did you mean " + quote(near) + "?"
	}
	if len(candidates) == 0 || len(candidates) > 12 {
		return ""
	}
	return "allowed are " + OneOf(candidates)
}

// OneOf lists words, quoted: "a", "b" and "c".
func OneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = quote(w)
	}
	if len(quoted) < 2 {
		return strings.Join(quoted, "")
	}
	last := len(quoted) - 1
	return strings.Join(quoted[:last], ", ") + " and " + quoted[last]
}

func quote(s string) string { return `"` + s + `"` }

// distance counts the letters to insert, drop, change or swap with the next
// (optimal string alignment); it gives up with limit+1 once above the limit.
func distance(a, b []rune, limit int) int {
	if len(a)-len(b) > limit || len(b)-len(a) > limit {
		return limit + 1
	}
	before, above, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := above[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(above[j]+1, row[j-1]+1, change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		if slices.Min(row) > limit {
			return limit + 1
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}
