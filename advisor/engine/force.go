package engine

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// force is why an operation is in or out whatever its price.
type force struct {
	in, out  bool
	why      string // one of the words of OperationAdvice.Forced
	by       string // id of the rule, suspect or decision
	because  string
	routine  bool
	sources  []string
	possibly bool // may still be forced, in or out, when more is known
	outMaybe bool
}

// forces gathers what is forced, the danger of each suspect, and what clashes.
type forces struct {
	ops   []force
	sound []advisor.Truth // by suspect: danger known sound, known bad, or unknown
	notes []string
}

// forcing works out what is forced in and out. Safety is never priced: a
// danger found bad forces its operations in, and wins against any standing rule.
func (r *reading) forcing(c *advisor.Case, d []doubt, off []bool) *forces {
	f := &forces{ops: make([]force, len(r.e.ops)), sound: make([]advisor.Truth, len(d))}
	r.standing(f, off)
	r.dangers(f, d, off)
	r.decisions(f, c, off)
	for i := range f.ops {
		if r.done[i] {
			f.ops[i] = force{out: true, why: "done", because: "It is recorded as done."}
		}
	}
	return f
}

// standing applies the standing rules. Two that say in and out of one
// operation are reported, and neither acts.
func (r *reading) standing(f *forces, off []bool) {
	for i := range r.e.book.Standing {
		s := &r.e.book.Standing[i]
		t := r.all(s.When.ID)
		for _, o := range r.e.standing[i] {
			if off[o] || t == advisor.False {
				continue
			}
			was := &f.ops[o]
			switch {
			case t == advisor.Unknown && s.Out:
				was.outMaybe = true
			case t == advisor.Unknown:
				was.possibly = true
			case s.Declined: // see decisions
			case was.in && s.Out || was.out && !s.Out:
				f.notes = append(f.notes, fmt.Sprintf("%s and %s disagree on %s: neither is followed",
					was.by, s.ID, r.e.ops[o].ID))
				*was = force{possibly: true, outMaybe: true}
			case !was.in && !was.out || was.routine && !s.Routine:
				*was = force{in: !s.Out, out: s.Out, why: "standing rule", by: s.ID, because: s.Because,
					routine: s.Routine, sources: s.Sources, possibly: was.possibly, outMaybe: was.outMaybe}
			}
		}
	}
}

// dangers forces in the cures of what was found bad, and the operations that
// look at what is not yet known.
func (r *reading) dangers(f *forces, d []doubt, off []bool) {
	for k := range r.e.suspects {
		s := &r.e.suspects[k]
		if s.Danger == nil || d[k].here == advisor.False {
			f.sound[k] = advisor.True
			continue
		}
		f.sound[k] = r.sound(s.Danger.Good.ID)
		for _, o := range s.curedBy {
			if off[o] {
				continue
			}
			if f.sound[k] == advisor.False && d[k].here == advisor.True {
				f.ops[o] = force{in: true, why: "danger", by: s.ID, because: found(s),
					sources: append(slices.Clone(s.Danger.Sources), s.Sources...)}
			} else if f.sound[k] != advisor.True && !f.ops[o].in {
				f.ops[o].possibly = true
			}
		}
	}
	for o := range r.e.ops {
		for _, k := range r.e.ops[o].looks {
			if f.sound[k] == advisor.Unknown && !off[o] && f.ops[o].why != "danger" {
				s := &r.e.suspects[k]
				f.ops[o] = force{in: true, why: "to look", by: s.ID, because: s.Danger.Because, sources: s.Danger.Sources, outMaybe: true}
			}
		}
	}
}

// found words a danger that was not found sound.
func found(s *suspect) string {
	if s.Danger.Because == "" || s.Danger.Because == s.Because {
		return s.Because
	}
	return advisor.Sentence(s.Because) + " Counts as sound: " + s.Danger.Because
}

// decisions applies what the owner accepted and declined. Whoever declines a
// danger takes the car away with its hold standing.
func (r *reading) decisions(f *forces, c *advisor.Case, off []bool) {
	for i := range r.e.book.Standing {
		s := &r.e.book.Standing[i]
		if !s.Declined || r.all(s.When.ID) != advisor.True {
			continue
		}
		for _, o := range r.e.operationsOf(s.Operations) {
			if !off[o] {
				f.ops[o] = force{out: true, why: "declined", by: s.ID, because: r.refusal(f, o, s.Because), sources: s.Sources}
			}
		}
	}
	for _, d := range c.Accepted {
		if o, ok := r.e.operation[d.Operation]; ok && !off[o] {
			f.ops[o] = force{in: true, why: "accepted", by: d.By, because: "The owner accepted it."}
		}
	}
	for _, d := range c.Declined {
		if o, ok := r.e.operation[d.Operation]; ok {
			f.ops[o] = force{out: true, why: "declined", by: d.By, because: r.refusal(f, o, "The owner declined it.")}
		}
	}
}

// refusal words why an operation is declined, and what stays where it makes safe.
func (r *reading) refusal(f *forces, o int, because string) string {
	if slices.ContainsFunc(r.e.ops[o].suspects, func(k int) bool { return r.e.suspects[k].Danger != nil && f.sound[k] != advisor.True }) {
		return strings.TrimSuffix(because, ".") + ": its hold stays, and the car leaves on a trailer."
	}
	return because
}

// settle turns forcing into a network's In and Out. What is forced in needs
// what it needs: if that is put out, a danger wins, otherwise both are
// reported and neither is forced.
func (r *reading) settle(f *forces, net *network, off []bool) (notes []string) {
	p := &net.problem
	p.In, p.Out = make([]bool, len(p.Benefit)), make([]bool, len(p.Benefit))
	for o := range f.ops {
		p.Out[o] = f.ops[o].out || off[o]
	}
	for o := range f.ops {
		if !f.ops[o].in {
			continue
		}
		clear := true
		for _, j := range net.reach[o] {
			if j == o || !p.Out[j] || r.done[j] || off[j] {
				continue
			}
			if f.ops[o].why == "danger" {
				p.Out[j] = false
				notes = append(notes, fmt.Sprintf("%s is needed to make %s safe, so it is not left out", r.e.ops[j].ID, f.ops[o].by))
				continue
			}
			clear = false
			p.Out[j] = f.ops[j].why == "declined"
			notes = append(notes, fmt.Sprintf("%s (%s) needs %s, which is put out (%s): neither is forced",
				r.e.ops[o].ID, f.ops[o].why, r.e.ops[j].ID, f.ops[j].why))
		}
		p.In[o] = clear
	}
	return notes
}
