package engine

import (
	"slices"

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

// showing is what some answers can show: the outcomes, the suspects that they
// move, and the nodes of the network whose benefits those change, in order.
type showing struct {
	outcomes []worth.Outcome // none when nothing can move
	suspects []int
	nodes    []int32
}

// showing lays out what the answers to some questions can show.
func (s *situation) showing(answers []int) showing {
	faces, moved := s.faces(answers)
	if len(faces) == 0 {
		return showing{}
	}
	out := showing{outcomes: worth.Outcomes(s.figures.chance, faces, worth.Limit), suspects: moved}
	for _, o := range out.outcomes {
		for _, m := range o.Changes {
			if node := int32(s.net.node[m.Suspect]); node >= 0 && !slices.Contains(out.nodes, node) {
				out.nodes = append(out.nodes, node)
			}
		}
	}
	slices.Sort(out.nodes)
	return out
}

// shown is what the look at some place can show, laid out once for a case.
func (s *situation) shown(k *looked) *showing {
	if s.shows == nil {
		s.shows = make([]*showing, len(s.e.looks))
	}
	if s.shows[k.index] == nil {
		sh := s.showing(k.answers)
		s.shows[k.index] = &sh
	}
	return s.shows[k.index]
}

// prospect works out what the answers to some questions are worth by what they
// can show, their access forced in.
func (s *situation) prospect(sh *showing, access []int, minutes int) prospect {
	pr := prospect{suspects: sh.suspects, inScope: make([]float64, len(s.e.ops)), net: -s.e.minutesCost(minutes)}
	if len(sh.outcomes) == 0 && s.allIn(access) {
		return pr // nothing can move, and nothing has to be opened
	}
	t := s.opened(access)
	mean := 0.0
	for _, o := range sh.each() {
		t.show(&o, sh.nodes)
		c := t.again(s.price, sh.nodes)
		mean += float64(o.Chance * float64(c.Value))
		for i := range pr.inScope {
			if c.Member[i] {
				pr.inScope[i] += o.Chance
			}
		}
	}
	t.forget(sh.nodes)
	t.again(s.price, sh.nodes)
	pr.worth = round((mean - float64(s.value)) / float64(s.price.Den))
	pr.net = pr.worth - s.e.minutesCost(minutes)
	return pr
}

// each gives the outcomes; where nothing can move, the case as it is.
func (sh *showing) each() []worth.Outcome {
	if len(sh.outcomes) == 0 {
		return []worth.Outcome{{Chance: 1}}
	}
	return sh.outcomes
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
