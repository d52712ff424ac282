package engine

import (
	"math"
	"slices"

	"longstand/advisor"
)

// doors is what advised looks open, whatever the scope would open by itself.
type doors struct {
	looks []looked // those that open something, in the order found
	by    []string // by operation: the look that opens it, "" where none does
}

// openDoors forces in what advised looks open and chooses the scope again: what
// lies behind such a door no longer pays for it, and a way that it opens costs
// nothing more. That can make other looks worth their minutes, so it goes on
// until no further door opens. A look that opens one stays as it was weighed
// while the door was shut.
func (s *situation) openDoors(holds []advisor.HoldAdvice) {
	s.doors = doors{by: make([]string, len(s.e.ops))}
	for {
		opening := s.opening(holds)
		if len(opening) == 0 {
			return
		}
		rank(opening)
		s.doors.looks = append(s.doors.looks, opening...)
		s.choose()
		s.nameDoors()
	}
}

// opening lists the looks that are advised and open something for themselves.
func (s *situation) opening(holds []advisor.HoldAdvice) (out []looked) {
	for i := range s.e.looks {
		l := &s.e.looks[i]
		access := s.e.opens(l, s.combo)
		if s.allOpen(access) || s.doors.opener(i) != nil {
			continue
		}
		k, ok := s.answering(i)
		if !ok || !frees(l, holds) && len(s.dangersSeen(k.answers)) == 0 && s.atMost(&k, access) <= s.e.minutesCost(l.minutes) {
			continue
		}
		if s.inspect(&k, holds); k.advised {
			out = append(out, k)
		}
	}
	return out
}

// frees tells whether a look lifts a hold that stands.
func frees(l *inspection, holds []advisor.HoldAdvice) bool {
	return slices.ContainsFunc(holds, func(h advisor.HoldAdvice) bool {
		return h.When == advisor.True && slices.Contains(h.LiftedBy, advisor.Settle{Kind: "inspection", ID: l.ID})
	})
}

// atMost bounds what a look can be worth with its access forced in: no scope
// gains more in an outcome than the benefits that rise in it.
func (s *situation) atMost(k *looked, access []int) int64 {
	sh := s.shown(k)
	if len(sh.outcomes) == 0 {
		return 0
	}
	t, now := s.opened(access), s.net.problem.Benefit
	rise := float64(t.value - s.value)
	for _, out := range sh.outcomes {
		t.show(&out, sh.nodes)
		for _, i := range sh.nodes {
			rise += out.Chance * float64(s.price.Num*max(0, t.problem.Benefit[i]-now[i]))
		}
	}
	t.forget(sh.nodes)
	return int64(math.Ceil(rise / float64(s.price.Den)))
}

// force puts into a network what the doors' looks open by some ways.
func (d *doors) force(s *situation, net *network, combo []int) {
	for i := range d.looks {
		for _, a := range s.e.opens(&s.e.looks[d.looks[i].index], combo) {
			for _, j := range net.reach[a] {
				net.problem.In[j] = net.problem.In[j] || !net.problem.Out[j]
			}
		}
	}
}

// nameDoors notes which look opens what, by the ways now taken.
func (s *situation) nameDoors() {
	clear(s.doors.by)
	for i := range s.doors.looks {
		k := &s.doors.looks[i]
		access := s.e.opens(&s.e.looks[k.index], s.combo)
		k.advice.Access = s.ids(access)
		for _, a := range access {
			for _, j := range s.net.reach[a] {
				if s.doors.by[j] == "" && !s.off[j] && !s.done[j] {
					s.doors.by[j] = k.advice.ID
				}
			}
		}
	}
}

// opener is the look as it was weighed if it opens something, or nil.
func (d *doors) opener(look int) *looked {
	for i := range d.looks {
		if d.looks[i].index == look {
			return &d.looks[i]
		}
	}
	return nil
}
