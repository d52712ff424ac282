package book

import (
	"longstand/advisor"
	"longstand/advisor/diag"
)

// counts looks at the figures of one item: signs that are turned round or say
// nothing, savings that save nothing, upgrades that cost less than their base.
func (p *prover) counts(it *item) {
	switch v := it.value.(type) {
	case *advisor.Sign:
		p.turned(it, v)
	case *advisor.Operation:
		for i := range v.Savings {
			if s := &v.Savings[i]; s.Hours.Mean() >= v.Hours.Mean() && v.Hours.Mean() > 0 {
				p.list.Warnf(s.At, "saves-nothing", "%s takes no fewer hours with %s", v.ID, s.With).Help = "the hours of a saving are the hours then, not the hours saved"
			}
		}
		p.upgrade(it, v)
	}
}

// turned: a sign is written so that showing it speaks for its suspect.
func (p *prover) turned(it *item, s *advisor.Sign) {
	if s.Levels != nil {
		for _, l := range s.Levels {
			if l.With.Of == 0 || l.Without.Of == 0 || l.With.Raw() != l.Without.Raw() {
				return
			}
		}
		p.list.Warnf(it.node.Field("levels").KeySpan, "says-nothing", "no level of %s tells cars with %s from cars without", s.ID, s.Suspect)
		return
	}
	with, without := it.node.Field("with"), it.node.Field("without")
	if with == nil || without == nil || s.With.Of == 0 || s.Without.Of == 0 {
		return
	}
	switch {
	case s.With.Raw() < s.Without.Raw():
		d := p.list.Warnf(with.Value.Span, "turned-round", "%s is turned round: fewer cars with %s show it than cars without", s.ID, s.Suspect)
		d.Help = "exchange with and without, or write the condition and the name the other way round"
		d.Related = []diag.Related{{At: without.Value.Span, Message: "cars without it"}}
	case s.With.Raw() == s.Without.Raw():
		d := p.list.Warnf(with.Value.Span, "says-nothing", "%s says nothing: as many cars without %s show it as cars with it", s.ID, s.Suspect)
		d.Help = "a sign counts when bad cars show it more often than sound ones"
	}
}

// upgrade: what contains other work and goes beyond it costs no less.
func (p *prover) upgrade(it *item, o *advisor.Operation) {
	i, ok := p.operations[o.Upgrade]
	if o.Upgrade == "" || !ok {
		return
	}
	base := &p.r.Book.Operations[i]
	rate := float64(p.r.Book.Settings.Rate) / float64(pow10(p.r.Book.Settings.MinorDigits))
	cost := func(o *advisor.Operation) float64 { return o.Hours.Mean()*rate + o.Parts.Mean() }
	if cost(o) < cost(base) {
		d := p.list.Warnf(it.node.Field("upgrade_of").Value.Span, "not-increasing", "%s costs less than %s, which it contains", o.ID, base.ID)
		d.Help = "an upgrade counts the whole work, what it contains included"
		d.Related = []diag.Related{{At: base.At, Message: base.ID}}
	}
}

func pow10(digits int) int {
	x := 1
	for range digits {
		x *= 10
	}
	return x
}
