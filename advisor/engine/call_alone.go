package engine

import (
	"slices"

	"longstand/advisor"
)

// callAlone is the call on one operation, without what the page says of it: the
// same as calls gives, worked out from no more looks than bear on it. Do while
// open counts as do.
func (s *situation) callAlone(o int, needed []string) advisor.Call {
	call := s.ownCall(o, needed[o])
	if call != advisor.Do || s.forced(o, needed[o]) {
		return call
	}
	for _, j := range s.net.reach[o] { // see behindDoors
		if j != o && s.ownCall(j, needed[j]) == advisor.LookFirst {
			return advisor.LookFirst
		}
	}
	return call
}

// forced tells whether a call stands whatever the scope.
func (s *situation) forced(o int, needed string) bool {
	return s.call(o, needed, nil).forced != ""
}

// ownCall is the call on an operation by itself, whatever it needs.
func (s *situation) ownCall(o int, needed string) advisor.Call {
	c := s.call(o, needed, nil)
	c.call = whenever(c.call)
	if c.call == advisor.NotFitted || c.forced != "" || c.call == advisor.Leave && c.by != "" {
		return c.call
	}
	if c.call != advisor.LookFirst && s.toSettle(o) {
		return advisor.LookFirst
	}
	return c.call
}

// toSettle tells whether some look settles an operation.
func (s *situation) toSettle(o int) bool {
	region := s.region(o)
	for i := range s.e.looks {
		l := &s.e.looks[i]
		k, ok := s.answering(i)
		if !ok || !s.bears(&k, l, region) || !s.canTip(o, &k, l) {
			continue
		}
		s.weighLook(&k, l)
		k.advice.ID, k.advice.FirstStart = l.ID, l.FirstStart
		if _, by := s.settledBy(o, []looked{k}); len(by) > 0 {
			return true
		}
	}
	return false
}

// bears tells whether what a look opens or can settle lies in a region.
func (s *situation) bears(k *looked, l *inspection, region []bool) bool {
	for _, o := range s.e.opens(l, s.combo) {
		for _, j := range s.net.reach[o] {
			if region[j] {
				return true
			}
		}
	}
	touches := func(k int) bool { return s.net.node[k] >= 0 && region[s.net.node[k]] }
	for _, m := range s.openSigns() {
		if within(m.Questions, k.answers) && (touches(m.Move.Suspect) || slices.ContainsFunc(m.Move.Rivals, touches)) {
			return true
		}
	}
	return false
}

// canTip tells whether a look can have outcomes with an operation in the scope
// and outcomes without. The scope grows with every benefit, so it is enough to
// ask at the highest, and at the lowest, that each benefit has in any outcome.
func (s *situation) canTip(o int, k *looked, l *inspection) bool {
	sh := s.shown(k)
	if len(sh.outcomes) == 0 {
		return false
	}
	t := s.opened(s.e.opens(l, s.combo))
	low, high := slices.Clone(t.problem.Benefit), slices.Clone(t.problem.Benefit)
	for _, out := range sh.outcomes {
		t.show(&out, sh.nodes)
		for _, i := range sh.nodes {
			low[i], high[i] = min(low[i], t.problem.Benefit[i]), max(high[i], t.problem.Benefit[i])
		}
	}
	in := func(benefit []int64) bool {
		copy(t.problem.Benefit, benefit)
		return t.again(s.price, sh.nodes).Member[o]
	}
	tips := in(high) && !in(low)
	t.forget(sh.nodes)
	t.again(s.price, sh.nodes)
	return tips
}
