package book

import (
	"slices"
	"strconv"
	"strings"

	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// demand reports where specimens fall short of a condition's class. In the
// built-in book class A falls short as an error and class B as a warning; a
// house rule is warned, unless it loosens a hold. Below class A, and in house
// rules, a condition of one atom may go without: it cannot be mistaken.
func (p *prover) demand(l *lens) {
	class := classOf(l.it, l.c)
	house := l.it.layerOf(l.c) != ""
	if l.loosens() {
		l.demandOfLoosened()
		return
	}
	severity := diag.Warning
	if class == ClassA && !house {
		severity = diag.Error
	}
	one := len(l.m.Pins()) < 2
	if len(l.c.to.Specimens) == 0 {
		if !one || !house && p.held && class == ClassA {
			l.noSpecimen(severity)
		}
		return
	}
	if !one {
		l.notPinned(severity)
	}
	if !house && !p.held {
		return
	}
	l.openEdge(severity)
	if class == ClassA || 100*l.tally.Noticed < 95*l.tally.Slips {
		l.slipUnnoticed(severity)
	}
}

func (l *lens) noSpecimen(severity diag.Severity) {
	d := l.p.list.Warnf(l.c.node.Span, "no-specimen", "the condition of %s has no specimen", l.it.id)
	d.Severity = severity
	d.Help = "give answers on which it is true and answers on which it is false"
}

func (l *lens) notPinned(severity diag.Severity) {
	open := l.words(condition.OwedAtom)
	if len(open) == 0 {
		return
	}
	d := l.p.list.Warnf(l.c.node.Span, "not-pinned", "the specimens of %s do not show what %s decides", l.it.id, strings.Join(open, ", or "))
	d.Severity = severity
	d.Help = "add answers that change nothing else: take one away from those on which it is true"
}

func (l *lens) openEdge(severity diag.Severity) {
	open := l.words(condition.OwedEdge)
	if len(open) == 0 {
		return
	}
	d := l.p.list.Warnf(l.c.node.Span, "open-edge", "the specimens of %s do not show %s", l.it.id, strings.Join(open, ", or "))
	d.Severity = severity
	d.Help = l.wanted(condition.OwedEdge)
}

func (l *lens) slipUnnoticed(severity diag.Severity) {
	open := l.words(condition.OwedSlip)
	if len(open) == 0 || !l.more() {
		return
	}
	d := l.p.list.Warnf(l.c.node.Span, "slip-unnoticed", "the specimens of %s would not notice if %s", l.it.id, some(open))
	d.Severity = severity
	d.Help = l.wanted(condition.OwedSlip)
}

// more tells whether slips want a case that nothing else owed asks for.
func (l *lens) more() bool {
	asked := map[*Try]bool{}
	for i, point := range l.points() {
		if point.Kind != condition.OwedSlip && !l.owed[i].Possible {
			asked[point.Try] = true
		}
	}
	delete(asked, nil)
	return slices.ContainsFunc(l.nearby, func(point Point) bool { return point.Kind == condition.OwedSlip && !asked[point.Try] })
}

// some names the first of a list and counts the rest.
func some(list []string) string {
	if len(list) == 1 {
		return list[0]
	}
	return list[0] + ", nor " + several(len(list)-1, "other slip")
}

func several(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// words are those of what is owed for sure, of one kind.
func (l *lens) words(kind condition.OwedKind) (out []string) {
	for _, o := range l.owed {
		if o.Kind == kind && !o.Possible {
			out = append(out, o.Words)
		}
	}
	return out
}

// wanted asks for the specimen that would show the first that is owed of a kind.
func (l *lens) wanted(kind condition.OwedKind) string {
	for i, point := range l.points() {
		if !l.owed[i].Possible && point.Kind == kind && point.Try != nil {
			return "answer and write it down: " + point.Try.Asked()
		}
	}
	return ""
}
