package engine

import (
	"slices"

	"longstand/advisor"
)

// Advise gives the advice on a case: one record with every reason.
func (e *Engine) Advise(c *advisor.Case) *advisor.Advice {
	ahead := e.feedsBeside(c)
	a, s := e.brief(c)
	a.Ladder = s.ladder()
	a.Open = s.openQuestions(<-ahead)
	return a
}

// Brief is Advise without the ladder and the open questions, for weighing many
// cases.
func (e *Engine) Brief(c *advisor.Case) *advisor.Advice {
	a, _ := e.brief(c)
	return a
}

// Quiet tells whether none of some standing rules and holds, by their places in
// the book, can touch a case: each rule's condition is known to be false, and
// each hold's is from what was seen, measured or read on paper. The advice is
// then the same as without them.
func (e *Engine) Quiet(c *advisor.Case, standing, holds []int) bool {
	r := e.read(c, false)
	for _, i := range standing {
		if r.all(e.book.Standing[i].When.ID) != advisor.False {
			return false
		}
	}
	for _, i := range holds {
		if r.upTo(1, e.book.Holds[i].When.ID) != advisor.False {
			return false
		}
	}
	return true
}

func (e *Engine) brief(c *advisor.Case) (*advisor.Advice, *situation) {
	s := e.weigh(c)
	a := &advisor.Advice{Case: c, Settings: &e.book.Settings, Care: s.care, CareBecause: s.why, HoursFactor: s.factor,
		Conflicts: s.conflicts}
	a.Notes = slices.Concat(s.past, s.forces.notes, s.notes)
	a.Holds = s.holds()
	s.openDoors(a.Holds)
	s.weighMargins()
	looks := s.inspections(a.Holds)
	calls := s.calls(looks)
	a.Inspections = make([]advisor.InspectionAdvice, 0, len(looks))
	a.Operations = make([]advisor.OperationAdvice, 0, len(s.e.ops))
	for i := range looks {
		a.Inspections = append(a.Inspections, looks[i].advice)
	}
	for o := range s.e.ops {
		a.Operations = append(a.Operations, s.operation(o, &calls[o]))
	}
	s.overrule(a)
	a.Suspects = s.suspectsAdvice()
	for i := range a.Suspects {
		if k := &a.Suspects[i]; k.Conflict {
			a.Conflicts = append(a.Conflicts, s.decisiveConflict(k))
		}
	}
	a.Standing = s.standingAdvice()
	a.Derived = s.derived()
	a.Routes = s.routeAdvice(a)
	a.Total = s.total(a, looks)
	a.HouseRules = e.houseRules(a)
	return a, s
}

// overrule sets the foreman's own calls; the engine's call stays on the record.
func (s *situation) overrule(a *advisor.Advice) {
	for i := range s.c.Overruled {
		over := &s.c.Overruled[i]
		if o, ok := s.e.operation[over.Operation]; ok {
			op := &a.Operations[o]
			op.Was, op.Call, op.Overruled = op.Call, advisor.Call(over.Call), over
		}
	}
}

// derived gives the derived values as they came out.
func (s *situation) derived() []advisor.DerivedValue {
	view := s.views[advisor.Stages-1]
	var out []advisor.DerivedValue
	for i := range s.e.book.Derived {
		d := &s.e.book.Derived[i]
		v := advisor.DerivedValue{ID: d.ID, Name: d.Name, Unit: d.Unit, IsNumber: s.e.program.DerivedIsNumber(i),
			Because: d.Because, Sources: d.Sources}
		if v.IsNumber {
			v.Low, v.High = view.Number(i)
		} else {
			v.Truth = view.DerivedTruth(i)
		}
		known := v.Truth.Known() || v.IsNumber && v.Low == v.High
		v.Shown = known && d.Shown.Text != "" && s.all(d.Shown.ID) == advisor.True
		out = append(out, v)
	}
	return out
}

// standingAdvice lists the standing rules that act, and those that would apply
// if something not yet known were so.
func (s *situation) standingAdvice() []advisor.StandingAdvice {
	var out []advisor.StandingAdvice
	for i := range s.e.book.Standing {
		r := &s.e.book.Standing[i]
		t := s.all(r.When.ID)
		ops := s.ids(s.e.standing[i])
		if t == advisor.False || len(ops) == 0 {
			continue
		}
		a := advisor.StandingAdvice{ID: r.ID, Operations: ops, Out: r.Out, Routine: r.Routine, Truth: t, Because: r.Because, Sources: r.Sources}
		for _, q := range s.missing(r.When.ID) {
			a.Missing = append(a.Missing, s.e.book.Questions[q].ID)
		}
		out = append(out, a)
	}
	return out
}
