package worth

import (
	"cmp"
	"slices"
)

// Settled is a sign that a look settles: the open questions it reads, how
// strongly it can speak (the larger of its two ratios, as a multiple of the
// odds, at least 1), and the move it makes.
type Settled struct {
	Who       int // the suspect, or a family as one: moves of one Who never add up
	Questions []int
	Strength  float64
	Move      Move
}

// Faces gathers settled signs that share an open question, directly or through
// others, into faces. On a face each suspect moves by its strongest sign alone.
func Faces(signs []Settled) []Face {
	if len(signs) == 1 {
		return []Face{{ID: signs[0].Move.ID, Moves: []Move{signs[0].Move}}}
	}
	signs = slices.Clone(signs)
	slices.SortStableFunc(signs, func(a, b Settled) int {
		return cmp.Or(cmp.Compare(b.Strength, a.Strength), cmp.Compare(a.Move.ID, b.Move.ID))
	})
	label := groups(signs)
	var faces []Face
	at := map[int]int{}
	taken := map[[2]int]bool{}
	for i, s := range signs {
		f, ok := at[label[i]]
		if !ok {
			f = len(faces)
			at[label[i]], faces = f, append(faces, Face{ID: s.Move.ID})
		}
		if key := [2]int{f, s.Who}; !taken[key] {
			taken[key] = true
			faces[f].Moves = append(faces[f].Moves, s.Move)
			faces[f].ID = min(faces[f].ID, s.Move.ID)
		}
	}
	return faces
}

// groups labels signs so that two that share a question have one label.
func groups(signs []Settled) []int {
	label := make([]int, len(signs))
	owner := map[int]int{}
	for i := range signs {
		label[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if label[i] != i {
			label[i] = root(label[i])
		}
		return label[i]
	}
	for i, s := range signs {
		for _, q := range s.Questions {
			if j, ok := owner[q]; ok {
				label[root(i)] = root(j)
			} else {
				owner[q] = i
			}
		}
	}
	for i := range signs {
		label[i] = root(i)
	}
	return label
}
