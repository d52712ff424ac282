package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/belief"
	"longstand/advisor/worth"
)

// conditionsOf lists the conditions of a sign: its own, or those of its levels.
func conditionsOf(sign *advisor.Sign) []advisor.CondID {
	if len(sign.Levels) == 0 {
		return []advisor.CondID{sign.When.ID}
	}
	var out []advisor.CondID
	for i := range sign.Levels {
		out = append(out, sign.Levels[i].When.ID)
	}
	return out
}

// openSigns lists, once for a case, every undecided sign of a suspect that can
// still move the choice, with the questions it reads and the move it would make.
func (s *situation) openSigns() []worth.Settled {
	if s.signs != nil {
		return s.signs
	}
	s.signs = []worth.Settled{}
	for k := range s.e.suspects {
		if s.doubts[k].here == advisor.False || s.net.node[k] < 0 {
			continue
		}
		d := &s.doubts[k]
		for i, sign := range s.e.suspects[k].signs {
			if d.levels[i] >= 0 || len(sign.Levels) == 0 && d.evidence[i].Truth.Known() {
				continue
			}
			if missing := s.signMissing(sign); len(missing) > 0 {
				if m, ok := s.move(k, i, sign, missing); ok {
					s.signs = append(s.signs, m)
				}
			}
		}
	}
	return s.signs
}

// signMissing lists the questions that a sign still reads.
func (s *situation) signMissing(sign *advisor.Sign) []int {
	out := newSet(len(s.e.book.Questions))
	for _, id := range conditionsOf(sign) {
		out.addAll(s.missing(id))
	}
	return out.list()
}

// move is how a suspect moves when a sign is settled by what is seen.
func (s *situation) move(k, i int, sign *advisor.Sign, missing []int) (worth.Settled, bool) {
	out := worth.Settled{Who: k, Questions: missing, Move: worth.Move{ID: sign.ID, Suspect: k}}
	if f := s.e.suspects[k].family; f >= 0 {
		out.Who = -1 - f
		for j := range s.e.suspects {
			if j != k && s.e.suspects[j].family == f && s.doubts[j].here != advisor.False {
				out.Move.Rivals = append(out.Move.Rivals, j)
			}
		}
	}
	if len(sign.Levels) > 0 {
		out.Move.Ways = s.levelWays(sign)
	} else {
		now := s.doubts[k].chance
		ways, ok := worth.Between(now, s.chanceIf(k, i, advisor.True), s.chanceIf(k, i, advisor.False))
		if !ok {
			return out, false
		}
		out.Move.Ways = ways
	}
	for _, w := range out.Move.Ways {
		out.Strength = max(out.Strength, w.With/w.Without, w.Without/w.With)
	}
	return out, out.Strength > 1
}

// levelWays shares out the levels still possible.
func (s *situation) levelWays(sign *advisor.Sign) []worth.Way {
	var ways []worth.Way
	var with, without float64
	for i := range sign.Levels {
		if l := &sign.Levels[i]; s.all(l.When.ID) != advisor.False { // the last level may always be possible
			w := worth.Way{With: share(l.With, false), Without: share(l.Without, false)}
			ways = append(ways, w)
			with, without = with+w.With, without+w.Without
		}
	}
	for i := range ways {
		ways[i].With, ways[i].Without = ways[i].With/with, ways[i].Without/without
	}
	return ways
}

// chanceIf is a suspect's chance, families included, if a sign were seen to be
// so or not so.
func (s *situation) chanceIf(k, i int, t advisor.Truth) float64 {
	d := &s.doubts[k]
	s.tried = append(s.tried[:0], d.evidence...)
	evidence := s.tried
	evidence[i].Truth, evidence[i].How = t, advisor.Seen
	alone, _, _ := belief.Update(d.base, evidence, s.e.book.Settings.Trust)
	f := s.e.suspects[k].family
	if f < 0 {
		return alone
	}
	var bases, ratios []float64
	at := 0
	for j := range s.e.suspects {
		if s.e.suspects[j].family != f || s.doubts[j].here == advisor.False {
			continue
		}
		ratio := s.doubts[j].ratio
		if j == k {
			at = len(bases)
			ratio, _ = belief.Ratio(make([]belief.Line, len(evidence)), evidence, &s.e.book.Settings.Trust)
		}
		bases, ratios = append(bases, s.doubts[j].base), append(ratios, ratio)
	}
	p, _ := belief.ExactlyOne(bases, ratios)
	return p[at]
}

// faces lays out what the signs that a look settles can say. A sign is settled
// when every open question that it still reads is answered. What moves one of a
// family moves its rivals too.
func (s *situation) faces(answers []int) (faces []worth.Face, moved []int) {
	var signs []worth.Settled
	for _, m := range s.openSigns() {
		if within(m.Questions, answers) {
			signs = append(signs, m)
		}
	}
	if len(signs) == 0 {
		return nil, nil
	}
	faces = worth.Faces(signs)
	seen := newSet(len(s.e.suspects))
	for _, f := range faces {
		for _, m := range f.Moves {
			seen.add(m.Suspect)
			for _, rival := range m.Rivals {
				seen.add(rival)
			}
		}
	}
	return faces, seen.list()
}

// within tells whether every one of some questions is among the answers, in order.
func within(questions, answers []int) bool {
	for _, q := range questions {
		if _, ok := slices.BinarySearch(answers, q); !ok {
			return false
		}
	}
	return true
}
