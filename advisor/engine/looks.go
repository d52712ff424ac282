package engine

import (
	"slices"

	"longstand/advisor"
)

// looked is an inspection of the book as it stands in a case.
type looked struct {
	prospect
	index   int
	advice  advisor.InspectionAdvice
	answers []int // open questions that it answers
	advised bool
	lifts   int // the earliest act that it can free, in the order of Acts; behind all when none
}

// inspections works out every look that can still answer something, once the
// doors are open.
func (s *situation) inspections(holds []advisor.HoldAdvice) []looked {
	out := make([]looked, 0, len(s.e.looks))
	for i := range s.e.looks {
		if k := s.doors.opener(i); k != nil {
			out = append(out, *k)
		} else if k, ok := s.answering(i); ok {
			s.inspect(&k, holds)
			out = append(out, k)
		}
	}
	rank(out)
	return out
}

// inspect values a look and tells of it.
func (s *situation) inspect(k *looked, holds []advisor.HoldAdvice) {
	l := &s.e.looks[k.index]
	s.weighLook(k, l)
	s.describe(k, l, holds)
}

// weighLook values a look. No place is opened for a look alone where nothing
// speaks for a fault that it is after: what is found there by chance does not pay
// for the door.
func (s *situation) weighLook(k *looked, l *inspection) {
	access := s.e.opens(l, s.combo)
	k.prospect = s.prospect(s.shown(k), access, l.minutes)
	if !s.allOpen(access) && !slices.ContainsFunc(k.suspects, s.suspected) {
		k.net = min(k.net, 0)
	}
}

// suspected tells whether anything speaks for a fault: its chance is above its base.
func (s *situation) suspected(k int) bool {
	d := &s.doubts[k]
	return d.here != advisor.False && d.chance > d.base
}

// answering is a look with the open questions that it answers, if there are any.
func (s *situation) answering(i int) (looked, bool) {
	k := looked{index: i}
	if s.all(s.e.looks[i].When.ID) == advisor.False {
		return k, false
	}
	for _, q := range s.e.looks[i].answers {
		if s.open(q) {
			k.answers = append(k.answers, q)
		}
	}
	return k, len(k.answers) > 0
}

// describe fills in what a page says of a look, and whether it is advised:
// because it lifts a hold, looks at a danger, or is worth more than it costs.
func (s *situation) describe(k *looked, l *inspection, holds []advisor.HoldAdvice) {
	a := &k.advice
	*a = advisor.InspectionAdvice{ID: l.ID, Name: l.Name, Where: l.Where, Net: k.net, Worth: k.worth,
		Cost: s.e.minutesCost(l.minutes), Minutes: l.minutes, Tools: l.Tools, Lacks: s.e.lacks(l.Tools), Breaks: l.Breaks, FirstStart: l.FirstStart,
		Bundle: l.Bundle, Reason: l.Because, Sources: l.Sources, Cautions: s.cautions(l.cautions)}
	access := s.e.opens(l, s.combo)
	a.Access = s.ids(access)
	a.WhenOpen = len(access) > 0 && s.allOpen(access)
	for _, q := range k.answers {
		a.Answers = append(a.Answers, s.e.book.Questions[q].ID)
	}
	for _, h := range holds {
		if slices.Contains(h.LiftedBy, advisor.Settle{Kind: "inspection", ID: l.ID}) && h.When == advisor.True {
			a.Lifts = append(a.Lifts, h.ID)
		}
		for _, act := range l.Acts {
			if slices.Contains(h.Stops, act) && !slices.Contains(a.Blocked, h.ID) && !slices.Contains(a.Lifts, h.ID) {
				a.Blocked = append(a.Blocked, h.ID)
			}
		}
	}
	k.lifts = earliest(a.Lifts, holds)
	a.Dangers = s.dangersSeen(k.answers)
	a.Before = append(slices.Clone(l.After), s.undone(l.needs)...)
	for o, p := range k.inScope {
		if k.net > 0 && !l.Last && p >= 0.05 && p <= 0.95 {
			a.Settles = append(a.Settles, s.e.ops[o].ID)
		}
	}
	a.Advised = len(a.Lifts) > 0 || len(a.Dangers) > 0 || k.net > 0
	if l.Last {
		a.Advised = len(a.Blocked) == 0
	}
	k.advised = a.Advised
}

// allOpen tells whether all of some access is in the scope or done.
func (s *situation) allOpen(access []int) bool {
	return !slices.ContainsFunc(access, func(o int) bool { return !s.member[o] && !s.done[o] })
}

// earliest is the first act, in the order of waking a car, that some holds stop.
func earliest(lifted []string, holds []advisor.HoldAdvice) int {
	first := len(advisor.Acts)
	for i := range holds {
		if len(holds[i].Stops) > 0 && slices.Contains(lifted, holds[i].ID) {
			first = min(first, slices.Index(advisor.Acts, holds[i].Stops[0]))
		}
	}
	return first
}

// dangersSeen lists the dangers not yet looked at whose soundness reads one of the questions.
func (s *situation) dangersSeen(questions []int) []string {
	var out []string
	for _, d := range s.dangersUnseen() {
		if slices.ContainsFunc(d.missing, func(q int) bool { _, ok := slices.BinarySearch(questions, q); return ok }) {
			out = append(out, s.e.suspects[d.suspect].ID)
		}
	}
	return out
}

// unseen is a danger not yet looked at, and the questions that it waits for.
type unseen struct {
	suspect int
	missing []int
}

// dangersUnseen lists, once for a case, the dangers not yet looked at.
func (s *situation) dangersUnseen() []unseen {
	if s.unseen != nil {
		return s.unseen
	}
	s.unseen = []unseen{}
	for i := range s.e.suspects {
		d := s.e.suspects[i].Danger
		if d != nil && s.forces.sound[i] == advisor.Unknown && s.doubts[i].here != advisor.False {
			s.unseen = append(s.unseen, unseen{i, s.views[0].Missing(d.Good.ID, nil)})
		}
	}
	return s.unseen
}

// lacks lists the tools of a look that the shop does not have. A shop that says
// nothing of its tools has them all.
func (e *Engine) lacks(tools []string) (out []string) {
	s := &e.book.Settings
	if len(s.Tools) == 0 {
		return nil
	}
	for _, t := range tools {
		if !slices.Contains(s.Tools, t) && !slices.Contains(s.HandTools, t) {
			out = append(out, t)
		}
	}
	return out
}
