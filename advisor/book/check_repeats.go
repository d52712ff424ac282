package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// rule is a rule that may add nothing to another one.
type rule struct {
	id string
	at diag.Span
}

// repeated: a standing rule that acts only where another does the same.
func (p *prover) repeated(x, y *advisor.StandingRule) {
	if p.never(x.When.ID) || p.never(y.When.ID) {
		return // told already
	}
	ids := [2]advisor.CondID{x.When.ID, y.When.ID}
	p.overlap(subset(x.Operations, y.Operations), subset(y.Operations, x.Operations), rule{x.ID, x.At}, rule{y.ID, y.At}, func(i, j int) bool {
		return p.r.Program.Implies(ids[i], ids[j]).Answer == advisor.True
	})
}

// overlap tells of two rules that are the same, or of which one adds nothing.
// xInY and yInX say whether the one does no more than the other, within whether
// it acts only where the other does.
func (p *prover) overlap(xInY, yInX bool, x, y rule, within func(i, j int) bool) {
	xInY = xInY && within(0, 1)
	yInX = yInX && within(1, 0)
	switch {
	case xInY && yInX:
		p.twin(y.at, y.id, x.at, x.id)
	case xInY:
		p.shadow(x, y)
	case yInX:
		p.shadow(y, x)
	}
}

// never tells whether a condition is true of no car, once worked out.
func (p *prover) never(id advisor.CondID) bool {
	answer, known := p.nevers[id]
	if !known {
		answer = p.r.Program.Never(id).Answer == advisor.True
		p.nevers[id] = answer
	}
	return answer
}

func (p *prover) twin(at diag.Span, id string, first diag.Span, other string) {
	d := p.list.Warnf(at, "duplicate-rule", "%s says what %s says already", id, other)
	d.Help = "leave one of them out"
	d.Related = []diag.Related{{At: first, Message: other}}
}

func (p *prover) shadow(x, y rule) {
	if p.told[x.at] {
		return // one rule that does the same is enough
	}
	p.told[x.at] = true
	d := p.list.Warnf(x.at, "shadowed", "%s adds nothing: wherever it acts, %s does the same", x.id, y.id)
	d.Help = "leave it out, or narrow " + y.id
	d.Related = []diag.Related{{At: y.at, Message: y.id}}
}

// sameSign: two signs of a suspect that the same cars show. Only the stronger
// counts in a group, and without one they are counted twice.
func (p *prover) sameSign(x, y *advisor.Sign) {
	if p.r.Program.Implies(x.When.ID, y.When.ID).Answer == advisor.True && p.r.Program.Implies(y.When.ID, x.When.ID).Answer == advisor.True {
		p.twin(y.At, y.ID, x.At, x.ID)
	}
}

// sameHold: a hold that stands only where another stands and stops no more.
func (p *prover) sameHold(x, y *advisor.Hold) {
	xInY, yInX := subset(x.Stops, stopping(y)), subset(y.Stops, stopping(x))
	if !xInY && !yInX || !p.akin(x, y) {
		return
	}
	p.compared++
	ids := []advisor.CondID{x.When.ID, x.Until.ID, y.When.ID, y.Until.ID}
	stands := func(t condition.Truths, i int) uint64 { return t.True[i] & t.False[i+1] }
	p.overlap(xInY, yInX, rule{x.ID, x.At}, rule{y.ID, y.At}, func(i, j int) bool {
		return p.r.Program.Decide(ids, func(t condition.Truths) uint64 {
			return stands(t, 2*i) & (t.False[2*j] | t.True[2*j+1])
		}).Answer == advisor.True
	})
}

// akin tells whether two holds read a common question: others tell nothing of
// one another, unless one never stands, and that is told already.
func (p *prover) akin(x, y *advisor.Hold) bool {
	if p.stands(x) != advisor.False || p.stands(y) != advisor.False {
		return false
	}
	reads := func(h *advisor.Hold) []int {
		return append(p.r.Program.Reads(h.When.ID), p.r.Program.Reads(h.Until.ID)...)
	}
	of := reads(x)
	return slices.ContainsFunc(reads(y), func(q int) bool { return slices.Contains(of, q) })
}

// stands tells whether a hold never stands, once worked out.
func (p *prover) stands(h *advisor.Hold) advisor.Truth {
	answer, known := p.standing[h.ID]
	if !known {
		answer = p.r.Program.Implies(h.When.ID, h.Until.ID).Answer
		p.standing[h.ID] = answer
	}
	return answer
}

func subset(of, all []string) bool {
	return !slices.ContainsFunc(of, func(x string) bool { return !slices.Contains(all, x) })
}
