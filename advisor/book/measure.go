package book

import (
	"fmt"
	"strings"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// measure demands that the specimens of a condition of more than one atom show
// each atom to decide the outcome by itself, being true and being false.
func (p *prover) measure(it *item, c *pending, m *condition.Measure) {
	pins := m.Pins()
	if len(pins) < 2 {
		return
	}
	p.score.Conditions++
	severity := severityOf(it, c)
	if len(c.to.Specimens) == 0 {
		for range pins {
			p.score.Pins += 2
		}
		d := p.list.Warnf(c.node.Span, "no-specimen", "the condition of %s has no specimen", it.id)
		d.Severity = severity
		d.Help = "give answers on which it is true and answers on which it is false"
		return
	}
	var open, edges []string
	for _, pin := range pins {
		open = p.count(open, pin.True, pin.Atom.Text+" being true", &p.score.Pinned, &p.score.Pins)
		open = p.count(open, pin.False, pin.Atom.Text+" being false", &p.score.Pinned, &p.score.Pins)
		for i, e := range []condition.Pinned{pin.Below, pin.At, pin.Above} {
			x := pin.Atom.Constant + float64(i-1)*pin.Atom.Step
			edges = p.count(edges, e, fmt.Sprintf("%s at %s", pin.Atom.Text, plain(round(x))), &p.score.Edged, &p.score.Edges)
		}
	}
	if len(open) > 0 {
		d := p.list.Warnf(c.node.Span, "not-pinned", "the specimens of %s do not show what %s decides", it.id, strings.Join(open, ", or "))
		d.Severity = severity
		d.Help = "add answers that change nothing else: take one away from those on which it is true"
	}
}

// count adds one obligation to a score, and its words to those still open.
func (p *prover) count(open []string, pin condition.Pinned, words string, met, all *int) []string {
	switch pin {
	case condition.PinMet:
		*met++
		*all++
	case condition.PinOpen:
		// known(x) being false goes with every other atom of x being unknown, so
		// it cannot be seen to decide alone.
		if strings.Contains(words, "known(") {
			return open
		}
		*all++
		return append(open, words)
	}
	return open
}

func round(x float64) float64 {
	if near := float64(int64(x*1e6+0.5)) / 1e6; near-x < 1e-9 && x-near < 1e-9 {
		return near
	}
	return x
}

// severityOf: what can hurt or binds the shop must be pinned. A house rule that
// is not is a warning, unless it loosens a hold.
func severityOf(it *item, c *pending) diag.Severity {
	strict := false
	switch v := it.value.(type) {
	case *advisor.Hold, *advisor.Caution, *advisor.StandingRule:
		strict = true
	case *advisor.Suspect:
		strict = v.Danger != nil && c.to == &v.Danger.Good
	}
	if it.layer != "" {
		return diag.Warning
	}
	if len(it.changed) > 0 && it.kind.name != "hold" {
		return diag.Warning
	}
	if strict {
		return diag.Error
	}
	return diag.Warning
}
