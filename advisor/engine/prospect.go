package engine

import (
	"slices"

	"longstand/advisor/scope"
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

// prospect works out what answering some questions is worth, its access forced in.
func (s *situation) prospect(answers, access []int, minutes int) prospect {
	faces, moved := s.faces(answers)
	pr := prospect{suspects: moved, inScope: make([]float64, len(s.e.ops)), net: -s.e.minutesCost(minutes)}
	if len(faces) == 0 && s.allIn(access) {
		return pr // nothing can move, and nothing has to be opened
	}
	p := s.openedAt(access)
	p.Benefit = slices.Clone(p.Benefit)
	mean := 0.0
	for _, o := range worth.Outcomes(s.figures.chance, faces, worth.Limit) {
		s.benefitsIn(&o, p.Benefit)
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

// openedAt is the choice of a scope with some access forced in. Its forcing is its
// own; all else it shares with the choice as it stands.
func (s *situation) openedAt(access []int) scope.Problem {
	p := s.net.problem
	p.In = slices.Clone(p.In)
	for _, o := range access {
		for _, j := range s.net.reach[o] {
			p.In[j] = p.In[j] || !p.Out[j]
		}
	}
	return p
}

// benefitsIn sets benefits to what they are in one outcome of a look.
func (s *situation) benefitsIn(o *worth.Outcome, benefit []int64) {
	copy(benefit, s.net.problem.Benefit)
	for _, m := range o.Changes {
		if node := s.net.node[m.Suspect]; node >= 0 {
			benefit[node] += round(m.Chance*float64(s.net.loss[m.Suspect])) - s.net.benefit[m.Suspect]
		}
	}
}
