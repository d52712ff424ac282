package book

import (
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// stopping lists the acts that a hold stops, with what those stop in turn.
func stopping(h *advisor.Hold) []string {
	all := slices.Clone(h.Stops)
	for _, act := range h.Stops {
		all = append(all, advisor.ActStops[act]...)
	}
	return all
}

// holds looks for holds that never stand, that nothing can lift, and that not
// having asked lifts.
func (p *prover) holds() {
	b := p.r.Book
	dead := map[string]bool{}
	for i := range b.Holds {
		h := &b.Holds[i]
		if h.When.Given() && p.r.Program.Implies(h.When.ID, h.Until.ID).Answer == advisor.True && !p.never(h.When.ID) {
			p.list.Warnf(h.At, "never-stands", "%s is lifted wherever it would stand", h.ID).Help = "its until is true of every car of its when"
		}
		p.unasked(h.When, h.ID, advisor.True, advisor.False, "%s does not stand where %s was not asked")
		p.unasked(h.Until, h.ID, advisor.False, advisor.True, "%s is lifted where %s was not asked")
		if !p.misspelt && !p.liftable(h, stopping(h)) {
			dead[h.ID] = true
			if !p.never(h.Until.ID) {
				d := p.list.Errorf(h.Until.At, "never-lifted", "nothing can lift %s: what would is found out only by an act that it stops", h.ID)
				d.Help = "add another way, as done() of the work that puts it right, or stop fewer acts"
			}
		}
	}
	if !p.misspelt && len(b.Holds) <= maxHolds {
		p.waiting(dead)
	}
}

// maxHolds is how many holds are looked through for waiting on one another.
const maxHolds = 1000

// liftable tells whether a hold's until can be known true while some acts are
// stopped: what no inspection can find out without them stays unknown.
func (p *prover) liftable(h *advisor.Hold, stopped []string) bool {
	barred := func(i *advisor.Inspection) bool {
		return slices.ContainsFunc(i.Acts, func(act string) bool { return slices.Contains(stopped, act) })
	}
	closed := func(q int) bool {
		question := &p.r.Book.Questions[q]
		if question.Station != "inspection" {
			return false
		}
		for i := range p.r.Book.Inspections {
			if l := &p.r.Book.Inspections[i]; slices.Contains(l.Answers, question.ID) && !barred(l) {
				return false
			}
		}
		return true
	}
	return p.r.Program.NeverWithout(h.Until.ID, closed).Answer != advisor.True
}

// waiting finds holds that wait for one another: all stand, those that can be
// lifted are, and so on until no more can.
func (p *prover) waiting(dead map[string]bool) {
	var left []*advisor.Hold
	for i := range p.r.Book.Holds {
		if h := &p.r.Book.Holds[i]; !dead[h.ID] {
			left = append(left, h)
		}
	}
	for lifted := true; lifted; {
		var stopped []string
		for _, h := range left {
			stopped = append(stopped, stopping(h)...)
		}
		before := len(left)
		left = slices.DeleteFunc(left, func(h *advisor.Hold) bool { return p.liftable(h, stopped) })
		lifted = len(left) < before
	}
	if len(left) < 2 {
		return
	}
	names := make([]string, len(left))
	for i, h := range left {
		names[i] = h.ID
	}
	d := p.list.Errorf(left[0].At, "cycle", "holds wait for one another: %s", strings.Join(names, ", "))
	d.Help = "each is lifted only by an act that another stops: let one be lifted by done() of some work"
	for _, h := range left[1:] {
		d.Related = append(d.Related, diag.Related{At: h.At, Message: h.ID})
	}
}

// unasked: what is not known must never read as fine, so a condition that makes
// safe may not turn on a question's not having been asked.
func (p *prover) unasked(c advisor.Condition, id string, from, to advisor.Truth, format string) {
	var names []string
	var example []string
	for _, q := range p.r.Program.KnownOf(c.ID) {
		v := p.r.Program.Forgotten(c.ID, q, from, to)
		if v.Answer == advisor.True || v.Example == nil {
			continue
		}
		names = append(names, p.r.Book.Questions[q].ID)
		if example == nil || len(v.Example) < len(example) {
			example = v.Example
		}
	}
	if names == nil {
		return
	}
	example = slices.DeleteFunc(example, func(word string) bool {
		return strings.HasPrefix(word, "known(") || strings.HasPrefix(word, "not known(")
	})
	d := p.list.Warnf(c.At, "unasked-is-fine", format, id, strings.Join(names, " or "))
	d.Help = "known() makes it so, though not with " + strings.Join(example, ", ")
}

// dangers: a car found bad is stopped by some hold until the work is done.
func (p *prover) dangers() {
	b := p.r.Book
	reads := make([][]int, len(b.Holds))
	for i := range b.Holds {
		h := &b.Holds[i]
		reads[i] = append(p.r.Program.Reads(h.When.ID), p.r.Program.Reads(h.Until.ID)...)
	}
	for i := range b.Suspects {
		s := &b.Suspects[i]
		if s.Danger == nil || s.Danger.Good.Text == "" {
			continue
		}
		p.unasked(s.Danger.Good, s.ID, advisor.False, advisor.True, "the danger of %s counts as looked at where %s was not asked")
		p.unasked(s.When, s.ID, advisor.True, advisor.False, "the danger of %s is not there where %s was not asked")
		p.passes(s, reads)
	}
}

// passes: a case in which a danger is known bad and none of the holds that read
// what it reads stands.
func (p *prover) passes(s *advisor.Suspect, held [][]int) {
	reads := p.r.Program.Reads(s.Danger.Good.ID)
	ids := []advisor.CondID{s.Danger.Good.ID, s.When.ID}
	fitted := len(s.CuredBy)
	for _, op := range s.CuredBy {
		i, ok := p.operations[op]
		if !ok {
			return
		}
		ids = append(ids, p.r.Book.Operations[i].Fitted.ID)
	}
	for i := range p.r.Book.Holds {
		h := &p.r.Book.Holds[i]
		if slices.ContainsFunc(held[i], func(q int) bool { return slices.Contains(reads, q) }) || p.waitsFor(h, s) {
			ids = append(ids, h.When.ID, h.Until.ID)
		}
	}
	if len(ids) == 2+fitted {
		return // told as danger-without-hold
	}
	v := p.r.Program.Undone(ids, func(t condition.Truths) uint64 {
		there := uint64(0)
		for i := range fitted {
			there |= t.True[2+i]
		}
		bad := t.False[0] & t.True[1] & there
		for i := 2 + fitted; i < len(ids); i += 2 {
			bad &= t.False[i] | t.True[i+1]
		}
		return bad
	})
	if v.Answer == advisor.False {
		d := p.list.Warnf(s.Danger.At, "danger-passes", "no hold stops a car whose %s is found bad", s.ID)
		d.Help = instance(v)
	}
}

// waitsFor tells whether a hold waits for work that cures a suspect.
func (p *prover) waitsFor(h *advisor.Hold, s *advisor.Suspect) bool {
	return slices.ContainsFunc(p.r.Program.Done(h.Until.ID), func(op int) bool {
		return slices.Contains(s.CuredBy, p.r.Book.Operations[op].ID)
	})
}
