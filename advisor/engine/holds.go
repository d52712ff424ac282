package engine

import (
	"slices"

	"longstand/advisor"
)

// stands tells whether a hold stands: its condition is not known to be false
// from seen, measured or paper, and what lifts it is not known from seen or
// measured. Unknown is never "fine".
func (r *reading) stands(h *advisor.Hold) bool {
	return r.upTo(1, h.When.ID) != advisor.False && !(h.Until.Given() && r.upTo(0, h.Until.ID) == advisor.True)
}

// holds lists the holds that stand.
func (s *situation) holds() []advisor.HoldAdvice {
	var out []advisor.HoldAdvice
	for i := range s.e.book.Holds {
		h := &s.e.book.Holds[i]
		if !s.stands(h) {
			continue
		}
		a := advisor.HoldAdvice{ID: h.ID, Name: h.Name, Stops: allStopped(h.Stops), When: s.all(h.When.ID),
			Because: h.Because, Sources: h.Sources, Until: h.Until.Text}
		if a.When == advisor.False {
			a.When = advisor.Unknown // only hearsay says that it is not so
		}
		a.LiftedBy, a.Missing = s.lifts(h)
		out = append(out, a)
	}
	return out
}

// allStopped adds what each stop stops in turn, in the order of Acts.
func allStopped(stops []string) []string {
	var out []string
	for _, act := range advisor.Acts {
		stopped := slices.Contains(stops, act)
		for _, s := range stops {
			stopped = stopped || slices.Contains(advisor.ActStops[s], act)
		}
		if stopped {
			out = append(out, act)
		}
	}
	return out
}

// lifts lists what can lift a hold: the inspections and questions that answer
// what its condition still reads, and the work whose doing it waits for.
func (s *situation) lifts(h *advisor.Hold) (by []advisor.Settle, missing []string) {
	open := newSet(len(s.e.book.Questions))
	if h.Until.Given() {
		open.addAll(s.views[0].Missing(h.Until.ID, nil))
	}
	if s.all(h.When.ID) == advisor.Unknown {
		open.addAll(s.missing(h.When.ID))
	}
	for i := range s.e.looks {
		l := &s.e.looks[i]
		if s.all(l.When.ID) != advisor.False && slices.ContainsFunc(l.answers, open.has) {
			by = append(by, advisor.Settle{Kind: "inspection", ID: l.ID})
		}
	}
	if h.Until.Given() {
		for _, o := range s.e.program.Done(h.Until.ID) {
			if !s.off[o] && !s.done[o] {
				by = append(by, advisor.Settle{Kind: "operation", ID: s.e.ops[o].ID})
			}
		}
	}
	for _, q := range open.list() {
		missing = append(missing, s.e.book.Questions[q].ID)
		if s.e.book.Questions[q].Station != "inspection" {
			by = append(by, advisor.Settle{Kind: "question", ID: s.e.book.Questions[q].ID})
		}
	}
	return by, missing
}

// cautions picks those of some cautions that apply to this case. Not known
// counts as applying.
func (s *situation) cautions(list []int) []advisor.CautionAdvice {
	var out []advisor.CautionAdvice
	for _, i := range list {
		c := &s.e.book.Cautions[i]
		if s.all(c.When.ID) == advisor.False {
			continue
		}
		if out == nil {
			out = make([]advisor.CautionAdvice, 0, len(list))
		}
		out = append(out, advisor.CautionAdvice{ID: c.ID, Hazard: c.Hazard, Text: c.Text, Defers: c.Defers, Sources: c.Sources})
	}
	return out
}
