package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// pairs looks at each two rules with one target: they may contradict or repeat
// one another.
func (p *prover) pairs() {
	b := p.r.Book
	each(p, b.Standing, func(s *advisor.StandingRule) diag.Span { return s.At }, func(x, y *advisor.StandingRule) {
		if !slices.ContainsFunc(x.Operations, func(op string) bool { return slices.Contains(y.Operations, op) }) {
			return
		}
		p.compared++
		if x.Declined || y.Declined {
			return // it wins
		}
		if x.Out != y.Out {
			p.opposed(x, y)
		} else if x.Routine == y.Routine {
			p.repeated(x, y)
		}
	})
	each(p, b.Signs, func(s *advisor.Sign) diag.Span { return s.At }, func(x, y *advisor.Sign) {
		if x.Suspect == y.Suspect && x.Levels == nil && y.Levels == nil {
			p.compared++
			p.sameSign(x, y)
			p.clash(x, y)
		}
	})
	each(p, b.Cautions, func(c *advisor.Caution) diag.Span { return c.At }, func(x, y *advisor.Caution) {
		if x.Hazard == y.Hazard && x.Text == y.Text {
			p.twin(y.At, y.ID, x.At, x.ID)
		}
	})
	each(p, b.Holds, func(h *advisor.Hold) diag.Span { return h.At }, p.sameHold)
}

// maxPairs is how many pairs of one kind of rule are looked at: all, in a book
// of 700 of a kind. maxCompared is how many of them are compared exactly.
const (
	maxPairs    = 250_000
	maxCompared = 10_000
)

// each calls f for every two items, the earlier first.
func each[T any](p *prover, list []T, at func(*T) diag.Span, f func(x, y *T)) {
	looked := 0
	for i := range list {
		for j := range list[:i] {
			if looked++; looked > maxPairs || p.compared > maxCompared || len(p.list) > maxFaults {
				p.list.Warnf(at(&list[i]), "not-decided", "there are too many rules: from here on they are not compared with one another")
				return
			}
			f(&list[j], &list[i])
		}
	}
}

// opposed: two standing rules that put one operation in and out of the same
// car. What is forced in and what is forced out would both be dropped.
func (p *prover) opposed(x, y *advisor.StandingRule) {
	i := slices.IndexFunc(x.Operations, func(op string) bool { return slices.Contains(y.Operations, op) })
	v := p.r.Program.Apart(x.When.ID, y.When.ID)
	if v.Answer != advisor.False {
		return
	}
	d := p.list.Errorf(y.At, "in-and-out", "%s and %s put %s in and out of the same car", x.ID, y.ID, x.Operations[i])
	d.Help = instance(v)
	d.Related = []diag.Related{{At: x.At, Message: x.ID}}
}

// clash: two decisive signs that prove and rule out one fault in the same car.
func (p *prover) clash(x, y *advisor.Sign) {
	if !x.Decisive || !y.Decisive {
		return
	}
	for _, xTrue := range []bool{true, false} {
		for _, yTrue := range []bool{true, false} {
			if proof := settles(x, xTrue); proof == 0 || proof != -settles(y, yTrue) {
				continue
			}
			v := p.r.Program.Decide([]advisor.CondID{x.When.ID, y.When.ID}, func(t condition.Truths) uint64 {
				return pick(t, 0, xTrue) & pick(t, 1, yTrue)
			})
			if v.Answer == advisor.False {
				d := p.list.Errorf(y.At, "decisive-clash", "%s and %s prove and rule out %s in the same car", x.ID, y.ID, x.Suspect)
				d.Help = instance(v)
				d.Related = []diag.Related{{At: x.At, Message: x.ID}}
				return
			}
		}
	}
}

// settles: 1 when a decisive sign proves the fault, -1 when it rules it out.
func settles(s *advisor.Sign, shown bool) int {
	none := func(c advisor.Count) bool { return shown && c.N == 0 || !shown && c.N == c.Of }
	switch {
	case none(s.Without) && !none(s.With):
		return 1
	case none(s.With) && !none(s.Without):
		return -1
	}
	return 0
}

func pick(t condition.Truths, i int, truth bool) uint64 {
	if truth {
		return t.True[i]
	}
	return t.False[i]
}
