package interview

import (
	"slices"

	"longstand/advisor"
)

// worthAsking lists the suspects of which the workshop can say something: those
// whose cure is done, then those that were looked at, then those whose place
// was opened; with all, the others too.
func worthAsking(b *advisor.Book, a *advisor.Advice, all bool) []toClose {
	done := map[string]bool{}
	for i := range a.Case.Done {
		done[a.Case.Done[i].Operation] = true
	}
	var cured, looked, opened, others []toClose
	for i := range b.Suspects {
		s := &b.Suspects[i]
		t := toClose{id: s.ID, suspect: s}
		list := &others
		switch {
		case t.because("done: ", curesDone(b, s, done)):
			list = &cured
		case t.because("looked at: ", looksAt(b, a, s.ID, done)):
			list = &looked
		case t.because("opened: ", openedFor(b, s, done)):
			list = &opened
		case !all || a.Suspect(s.ID) == nil:
			continue // of what is not on the car nothing is asked
		default:
			t.reasons = []string{"everything was wanted"}
		}
		*list = append(*list, t)
	}
	return slices.Concat(cured, looked, opened, others)
}

// because notes reasons; false when there are none.
func (t *toClose) because(what string, names []string) bool {
	for _, n := range names {
		t.reasons = append(t.reasons, what+n)
	}
	return len(names) > 0
}

// curesDone names the operations done that help to cure a suspect.
func curesDone(b *advisor.Book, s *advisor.Suspect, done map[string]bool) (names []string) {
	for _, id := range s.CuredBy {
		if op := b.Operation(id); done[id] && op != nil {
			names = append(names, op.Name)
		}
	}
	return names
}

// looksAt names what was seen of a suspect beyond the walk-round: signs that an
// inspection has settled, and work done to look.
func looksAt(b *advisor.Book, a *advisor.Advice, id string, done map[string]bool) (names []string) {
	for i := range b.Operations {
		if op := &b.Operations[i]; done[op.ID] && slices.Contains(op.Looks, id) {
			names = append(names, op.Name)
		}
	}
	s := a.Suspect(id)
	if s == nil {
		return names
	}
	for i := range s.Ledger {
		l := &s.Ledger[i]
		if l.Truth != advisor.Unknown && l.How <= advisor.Measured && slices.ContainsFunc(l.Questions, func(q string) bool { return inspected(b, a.Case, q) }) {
			names = append(names, l.Name)
		}
	}
	return names
}

// inspected tells whether a case answers what only an inspection can.
func inspected(b *advisor.Book, c *advisor.Case, question string) bool {
	q := b.Question(question)
	return q != nil && q.Station == "inspection" &&
		slices.ContainsFunc(c.Answers, func(a advisor.Answer) bool { return a.Question == question && a.Value.State == advisor.Told })
}

// openedFor names the access done without which no cure of a suspect gets at
// its place. It is opened when, for some cure, all of that was done.
func openedFor(b *advisor.Book, s *advisor.Suspect, done map[string]bool) []string {
	for _, id := range s.CuredBy {
		op := b.Operation(id)
		if op == nil {
			continue
		}
		var names []string
		shut := false
		for _, need := range op.Needs {
			doors := throughTo(b, &need, done)
			shut = shut || doors == nil
			names = append(names, doors...)
		}
		if !shut && len(names) > 0 {
			return names
		}
	}
	return nil
}

// throughTo names the access done that a need asks for: empty when it asks for
// none, or only on some cars, nil when it was not done.
func throughTo(b *advisor.Book, need *advisor.Need, done map[string]bool) []string {
	for i := range b.Routes {
		if b.Routes[i].ID != need.Op {
			continue
		}
		for _, w := range b.Routes[i].Ways {
			if names := allDone(b, w.Through, done); names != nil {
				return names
			}
		}
		return nil
	}
	if op := b.Operation(need.Op); op == nil || !op.Access || need.When.Given() {
		return []string{}
	}
	return allDone(b, []string{need.Op}, done)
}

// allDone names operations, or gives nil when one of them is not done.
func allDone(b *advisor.Book, ids []string, done map[string]bool) (names []string) {
	for _, id := range ids {
		op := b.Operation(id)
		if !done[id] || op == nil {
			return nil
		}
		names = append(names, op.Name)
	}
	return names
}
