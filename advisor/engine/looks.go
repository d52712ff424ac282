package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/belief"
	"longstand/advisor/worth"
)

// prospect is what one inspection (or open question) can bring.
type prospect struct {
	worth    int64     // in minor units, before the minutes
	net      int64     // less the minutes
	inScope  []float64 // by operation: chance of the outcomes with it in the scope
	suspects []int     // those that can move
}

// open tells whether a question's answer could still say more.
func (s *situation) open(q int) bool { return !exact(&s.e.book.Questions[q], s.values[q]) }

// look works out what answering some questions is worth, its access forced in.
func (s *situation) look(answers, access []int, minutes int) prospect {
	faces, moved := s.faces(answers)
	pr := prospect{suspects: moved, inScope: make([]float64, len(s.e.ops)), net: -s.e.minutesCost(minutes)}
	if len(faces) == 0 && s.allIn(access) {
		return pr // nothing can move, and nothing has to be opened
	}
	p := s.net.problem // a copy: benefits and forcing change, the rest is shared
	p.Benefit, p.In = slices.Clone(p.Benefit), slices.Clone(p.In)
	for _, o := range access {
		for _, j := range s.net.reach[o] {
			p.In[j] = p.In[j] || !p.Out[j]
		}
	}
	mean := 0.0
	for _, o := range worth.Outcomes(s.figures.chance, faces, worth.Limit) {
		copy(p.Benefit, s.net.problem.Benefit)
		for _, m := range o.Changes {
			s.shift(p.Benefit, m.Suspect, m.Chance)
		}
		c := s.solver.Best(&p, s.price)
		mean += float64(o.Chance * float64(c.Value))
		for i := range pr.inScope {
			if c.Member[i] {
				pr.inScope[i] += o.Chance
			}
		}
	}
	pr.worth = round((mean - float64(s.value)) / float64(s.price.Den))
	pr.net = pr.worth - s.e.minutesCost(minutes)
	return pr
}

// allIn tells whether operations are in the scope already.
func (s *situation) allIn(ops []int) bool {
	for _, o := range ops {
		if !s.member[o] {
			return false
		}
	}
	return true
}

// shift sets a suspect's benefit to what it is at another chance.
func (s *situation) shift(benefit []int64, k int, chance float64) {
	if node := s.net.node[k]; node >= 0 {
		benefit[node] += round(chance*float64(s.net.loss[k])) - s.net.benefit[k]
	}
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

// faces lays out what the signs that a look settles can say. A sign is settled
// when every open question that it still reads is answered.
func (s *situation) faces(answers []int) (faces []worth.Face, moved []int) {
	var signs []worth.Settled
	for _, m := range s.openSigns() {
		if all(m.Questions, answers) {
			signs = append(signs, m)
		}
	}
	if len(signs) == 0 {
		return nil, nil
	}
	faces = worth.Faces(signs)
	seen := map[int]bool{}
	for _, f := range faces {
		for _, m := range f.Moves {
			seen[m.Suspect] = true
		}
	}
	return faces, sorted(seen)
}

// all tells whether every one of some questions is among the answers, in order.
func all(questions, answers []int) bool {
	for _, q := range questions {
		if _, ok := slices.BinarySearch(answers, q); !ok {
			return false
		}
	}
	return true
}

// signMissing lists the questions that a sign still reads.
func (s *situation) signMissing(sign *advisor.Sign) []int {
	if len(sign.Levels) == 0 {
		return s.missing(sign.When.ID)
	}
	set := map[int]bool{}
	for i := range sign.Levels {
		mark(set, s.missing(sign.Levels[i].When.ID))
	}
	return sorted(set)
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
	evidence := slices.Clone(d.evidence)
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
