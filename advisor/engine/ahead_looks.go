package engine

import (
	"slices"

	"longstand/advisor"
)

// mayPay tells whether a look can be worth its minutes, whatever is still
// answered. A scope chosen after the look gains, against the scope chosen now,
// at most what its suspects' benefits rise by. A chance that moves between low
// and high and keeps its mean rises by at most (high - low)/4 on average, and
// a suspect whose cure is in every scope gains nothing.
func (a *ahead) mayPay(look int, low, high *figures) bool {
	l := &a.e.looks[look]
	if a.all(l.When.ID) == advisor.False {
		return false
	}
	var most float64
	counted := newSet(len(a.e.suspects))
	count := func(k int) {
		if counted.has(k) || a.settled(k) {
			return
		}
		counted.add(k)
		loss := float64(high.left[k])
		for _, o := range a.cures[k] {
			loss += float64(high.cost[o])
		}
		most += loss * (high.chance[k] - low.chance[k]) / 4
	}
	for i := range l.signs {
		k := l.signs[i].suspect
		if a.doubts[k].here == advisor.False || !a.openTo(&l.signs[i]) {
			continue
		}
		count(k)
		for j := range a.e.suspects {
			if f := a.e.suspects[k].family; f >= 0 && a.e.suspects[j].family == f && a.doubts[j].here != advisor.False {
				count(j)
			}
		}
	}
	return most*float64(a.price.Num)/float64(a.price.Den) > float64(a.e.minutesCost(l.minutes))
}

// settled tells whether all that curing a suspect needs is in every scope.
func (a *ahead) settled(k int) bool {
	for _, o := range a.cures[k] {
		if !a.sure[o] {
			return false
		}
	}
	return true
}

// openTo tells whether a sign is not known and reads an open answer of its look.
func (a *ahead) openTo(s *lookSign) bool {
	for i, id := range s.conditions {
		if !a.all(id).Known() && slices.ContainsFunc(s.questions[i], a.open) {
			return true
		}
	}
	return false
}

// lookFeeds are the questions that change what a look settles, whether it is
// advised, and what it opens.
func (a *ahead) lookFeeds() {
	for _, i := range a.looks {
		l := &a.e.looks[i]
		a.waits(a.now(), l.When.ID, advisor.False, ofRule(l.ID))
		for j := range l.signs {
			if k := l.signs[j].suspect; a.doubts[k].here != advisor.False && a.openTo(&l.signs[j]) {
				a.signFeeds(l.signs[j].Sign, func(f *feed) { f.suspects.add(k) })
			}
		}
	}
	for i := range a.e.looks {
		if l := &a.e.looks[i]; l.Last {
			a.waits(a.now(), l.When.ID, advisor.False, ofRule(l.ID))
		}
		if l := &a.e.looks[i]; a.all(l.When.ID) != advisor.False && a.opensMore(l) {
			a.waits(a.now(), l.When.ID, advisor.False, ofRule(l.ID))
			a.adviceFeeds(l)
		}
	}
}

// opensMore tells whether a look needs something opened that is not surely
// done anyway: then it changes a call whether the look is advised.
func (a *ahead) opensMore(l *inspection) bool {
	for _, o := range a.e.mayOpen(l) {
		if !a.off[o] && !a.done[o] && !a.firm[o] {
			return true
		}
	}
	return false
}

// adviceFeeds are the questions that decide whether a look lifts a hold that
// stands or sees a danger that is not known: it is advised for either.
func (a *ahead) adviceFeeds(l *inspection) {
	for _, h := range a.holdsSeen(l) {
		a.either(h.When.ID, true, ofRule(h.ID))
		if h.Until.Given() {
			a.add(a.views[0].Missing(h.Until.ID, nil), true, ofRule(h.ID))
		}
	}
	for _, k := range a.dangersFacing(l) {
		a.add(a.views[0].Missing(a.e.suspects[k].Danger.Good.ID, nil), true, func(f *feed) { f.suspects.add(k) })
	}
}

// maySee tells whether a look may be advised for a hold or a danger.
func (a *ahead) maySee(l *inspection) bool {
	return a.all(l.When.ID) != advisor.False && (len(a.holdsSeen(l)) > 0 || len(a.dangersFacing(l)) > 0)
}

// holdsSeen lists the holds that stand and read what a look answers.
func (a *ahead) holdsSeen(l *inspection) (out []*advisor.Hold) {
	for i := range a.e.book.Holds {
		h := &a.e.book.Holds[i]
		if a.stands(h) && (h.Until.Given() && a.answersOf(l, h.Until.ID) || a.answersOf(l, h.When.ID)) {
			out = append(out, h)
		}
	}
	return out
}

// dangersFacing lists the dangers not yet known whose soundness reads what a
// look answers.
func (a *ahead) dangersFacing(l *inspection) (out []int) {
	for k := range a.e.suspects {
		d := a.e.suspects[k].Danger
		if d != nil && a.doubts[k].here != advisor.False && a.forces.sound[k] == advisor.Unknown && a.answersOf(l, d.Good.ID) {
			out = append(out, k)
		}
	}
	return out
}

// answersOf tells whether a look has an open answer that a condition reads.
func (a *ahead) answersOf(l *inspection, id advisor.CondID) bool {
	return id != 0 && slices.ContainsFunc(a.e.reads[id], func(q int) bool {
		_, ok := slices.BinarySearch(l.answers, q)
		return ok && a.open(q)
	})
}
