package engine

import (
	"slices"
)

// settledBy lists the looks with positive net worth that have outcomes with
// the operation in the scope and outcomes without, each at least 1 in 20. The
// look must bear on the operation: on a fault that it cures, or that something
// which needs it cures. What is only done if another job happens to open its
// place is decided then, and the proof at the end keeps no work waiting.
func (s *situation) settledBy(o int, looks []looked) (maybe float64, by []string) {
	best := int64(0)
	for i := range looks {
		p := looks[i].inScope[o]
		if looks[i].net <= 0 || s.e.looks[looks[i].index].Last || p < 0.05 || p > 0.95 || !s.speaksTo(&looks[i], o) || looks[i].advice.FirstStart && !s.spokenFor(o) {
			continue
		}
		by = append(by, looks[i].advice.ID)
		if looks[i].net > best {
			best, maybe = looks[i].net, p
		}
	}
	return maybe, by
}

// speaksTo tells whether a look can move a fault that an operation cures, or that
// needs the operation to be cured.
func (s *situation) speaksTo(l *looked, o int) bool {
	return slices.ContainsFunc(l.suspects, func(k int) bool {
		return slices.ContainsFunc(s.e.suspects[k].curedBy, func(by int) bool {
			return !s.off[by] && s.net.reaches[by].has(o)
		})
	})
}

// spokenFor tells whether anything speaks for a fault that the operation cures:
// its chance is above its base. The first start looks at everything at once, so
// what nothing speaks for is decided after it has run, not before.
func (s *situation) spokenFor(o int) bool {
	return slices.ContainsFunc(s.e.ops[o].suspects, s.suspected)
}
