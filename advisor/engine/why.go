package engine

import (
	"slices"

	"longstand/advisor"
)

// subject is what a why asks about.
type subject struct {
	kind string
	ops  []int
	hold []int
	look []int
}

// subjectOf finds what an id names: an operation, a suspect (the work that cures
// it), an inspection, a hold, or a question (everything it can change). only
// narrows the answers tried to those of some questions.
func (e *Engine) subjectOf(id string) (about *subject, only []int) {
	if o, ok := e.operation[id]; ok {
		return &subject{kind: "operation", ops: []int{o}}, nil
	}
	if k, ok := e.suspect[id]; ok {
		return &subject{kind: "suspect", ops: e.suspects[k].curedBy}, nil
	}
	if i, ok := e.look[id]; ok {
		return &subject{kind: "inspection", look: []int{i}}, nil
	}
	for i := range e.book.Holds {
		if e.book.Holds[i].ID == id {
			return &subject{kind: "hold", hold: []int{i}}, nil
		}
	}
	if q, ok := e.question[id]; ok {
		about := &subject{kind: "question"} // every operation as well
		for i := range e.book.Holds {
			about.hold = append(about.hold, i)
		}
		return about, []int{q}
	}
	return nil, nil
}

// Why tells what would change the call on an operation, on the work that cures a
// suspect, whether an inspection is called for, whether a hold stands, or what
// the answers to a question would change; and the sources of an id in full. An
// id that the book does not have gives an empty Kind. Do and do while open count
// as one call.
func (e *Engine) Why(c *advisor.Case, id string) advisor.Why {
	w := advisor.Why{ID: id}
	about, only := e.subjectOf(id)
	if about == nil {
		return w
	}
	w.Kind, w.Sources = about.kind, e.book.Sources
	e.introduce(c, about, &w)
	w.Turns, w.Tried = e.turns(c, about, only)
	return w
}

// introduce fills in what the book says of an id, whether or not the advice does.
func (e *Engine) introduce(c *advisor.Case, about *subject, w *advisor.Why) {
	switch about.kind {
	case "operation":
		o := &e.ops[e.operation[w.ID]]
		w.Name, w.Because = o.Name, o.Because
	case "suspect":
		k := &e.suspects[e.suspect[w.ID]]
		w.Name, w.Because = k.Name, k.Because
	case "inspection":
		l := &e.looks[e.look[w.ID]]
		w.Name, w.Because, w.Minutes = l.Name, l.Because, l.minutes
	case "hold":
		h := &e.book.Holds[about.hold[0]]
		w.Name, w.Because = h.Name, h.Because
	case "question":
		q := &e.book.Questions[e.question[w.ID]]
		w.Name, w.Because, w.Minutes, w.Now = q.Ask, q.Help, q.Minutes, present(c, q)
	}
}

// verdict is one state of one thing that a why asks about.
type verdict struct{ id, says string }

// verdicts tells how everything that a why asks about stands in a situation.
func (s *situation) verdicts(about *subject) []verdict {
	var out []verdict
	holds := s.holds()
	s.openDoors(holds)
	if len(about.hold) > 0 {
		for _, h := range about.hold {
			id := s.e.book.Holds[h].ID
			out = append(out, verdict{id, holdSays(holds, id)})
		}
	}
	for _, i := range about.look {
		out = append(out, verdict{s.e.looks[i].ID, s.wanted(i, holds)})
	}
	if about.kind == "question" {
		for o, c := range s.calls(s.inspections(holds)) {
			out = append(out, verdict{s.e.ops[o].ID, string(whenever(c.call))})
		}
		return out
	}
	if len(about.ops) > 0 {
		needed := s.neededByForce()
		for _, o := range about.ops {
			out = append(out, verdict{s.e.ops[o].ID, string(s.callAlone(o, needed))})
		}
	}
	return out
}

// whenever takes do and do while open as one call.
func whenever(c advisor.Call) advisor.Call {
	if c == advisor.DoOpen {
		return advisor.Do
	}
	return c
}

// What a why says of holds and looks.
const (
	standing  = "stands"
	unsure    = "stands until it is known whether it applies"
	lifted    = "lifted, or does not apply"
	calledFor = "called for"
	notCalled = "not called for"
	noAnswer  = "nothing left for it to answer"
)

// holdSays tells how a hold stands among those that do.
func holdSays(holds []advisor.HoldAdvice, id string) string {
	i := slices.IndexFunc(holds, func(h advisor.HoldAdvice) bool { return h.ID == id })
	switch {
	case i < 0:
		return lifted
	case holds[i].When == advisor.True:
		return standing
	}
	return unsure
}

// wanted tells whether an inspection is called for.
func (s *situation) wanted(i int, holds []advisor.HoldAdvice) string {
	if s.doors.opener(i) != nil {
		return calledFor
	}
	k, ok := s.answering(i)
	if !ok {
		return noAnswer
	}
	if s.inspect(&k, holds); k.advised {
		return calledFor
	}
	return notCalled
}

// changed lists what differs between two lists of the same things.
func changed(was, now []verdict) []advisor.Change {
	var out []advisor.Change
	for i := range was {
		if was[i].says != now[i].says {
			out = append(out, advisor.Change{ID: was[i].id, From: was[i].says, To: now[i].says})
		}
	}
	return out
}
