package book

import (
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// anomalies are conditions that say nothing and rules that contradict one
// another, decided over every case that the conditions can tell apart. Where
// there are too many cases nothing is said.
func (p *prover) anomalies() {
	for _, it := range p.r.items {
		if it.kind.name == "derived" {
			continue // an expression may be a name for what is always so
		}
		for _, c := range it.conds {
			if c.node != nil {
				p.idle(it, c)
			}
		}
	}
	standing := p.r.Book.Standing
	for i := range standing {
		for j := range standing[:i] {
			p.opposed(&standing[j], &standing[i])
		}
	}
}

// idle: a condition that is never true, or true of every car.
func (p *prover) idle(it *item, c *pending) {
	if p.r.Program.Never(c.to.ID).Answer == advisor.True {
		p.list.Errorf(c.node.Span, "never-true", "the condition of %s is true of no car", it.id).Help = "two of its parts exclude one another"
	} else if p.r.Program.Always(c.to.ID).Answer == advisor.True {
		p.list.Warnf(c.node.Span, "always-true", "the condition of %s is true of every car", it.id).Help = "leave it out"
	}
}

// opposed: two standing rules that put one operation in and out of the same
// car. What is forced in and what is forced out would both be dropped.
func (p *prover) opposed(x, y *advisor.StandingRule) {
	if x.Out == y.Out {
		return
	}
	shared := ""
	for _, op := range x.Operations {
		for _, other := range y.Operations {
			if op == other {
				shared = op
			}
		}
	}
	if shared == "" {
		return
	}
	v := p.r.Program.Apart(x.When.ID, y.When.ID)
	if v.Answer != advisor.False {
		return
	}
	d := p.list.Errorf(y.At, "in-and-out", "%s and %s put %s in and out of the same car", x.ID, y.ID, shared)
	d.Help = "for instance: " + strings.Join(v.Example, ", ")
	d.Related = []diag.Related{{At: x.At, Message: x.ID}}
}
