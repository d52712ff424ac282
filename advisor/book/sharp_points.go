package book

import (
	"longstand/advisor"
	"longstand/advisor/condition"
)

// Point is one thing that a condition's specimens do not show, and a case near
// by that would show it; nil when none was found.
type Point struct {
	Kind  condition.OwedKind
	Words string
	Try   *Try
	shown []int // cases considered that show it
}

// Cases are considered in rounds, near ones first: one answer changed from a
// specimen, two changed from the first one, then every combination there is.
const (
	rounds     = 3
	mostCases  = 4096 // in one round
	mostWanted = 40   // things owed for which a later round is run
)

// points finds for everything owed the nearest case that would show it, in the
// same order.
func (l *lens) points() []Point {
	if l.nearby != nil {
		return l.nearby
	}
	l.nearby = make([]Point, len(l.owed))
	for i, o := range l.owed {
		l.nearby[i] = Point{Kind: o.Kind, Words: o.Words}
	}
	for round := range rounds {
		if l.consider(round) && !l.missing() {
			break
		}
	}
	l.asks = l.greedy(l.nearby)
	return l.nearby
}

// missing looks among the cases considered for what has none yet; it tells
// whether another round is worth while.
func (l *lens) missing() bool {
	missing := 0
	for i := range l.nearby {
		point := &l.nearby[i]
		if len(point.shown) > 0 {
			continue
		}
		if point.shown = l.m.Shows(&l.owed[i]); len(point.shown) == 0 {
			missing++
		}
	}
	return missing > 0 && missing <= mostWanted
}

// consider runs one round; it tells whether that brought any case.
func (l *lens) consider(round int) bool {
	before := len(l.cases)
	specimens := l.c.to.Specimens
	switch {
	case round == 0:
		for i := range specimens {
			l.singles(i)
		}
	case round == 1 && len(specimens) > 0:
		l.pairs()
	case round == 2:
		l.combinations()
	}
	return len(l.cases) > before
}

func (l *lens) singles(base int) {
	for _, list := range l.changes(&l.c.to.Specimens[base]) {
		for _, c := range list {
			l.try(base, c)
		}
	}
}

func (l *lens) pairs() {
	lists := l.changes(&l.c.to.Specimens[0])
	room := mostCases
	for i, first := range lists {
		for _, second := range lists[:i] {
			for _, a := range first {
				for _, b := range second {
					if room--; room < 0 {
						return
					}
					l.try(0, a, b)
				}
			}
		}
	}
}

// combinations tries every combination of answers, if they are not too many.
func (l *lens) combinations() {
	base := -1
	s := &advisor.Specimen{}
	if len(l.c.to.Specimens) > 0 {
		base, s = 0, &l.c.to.Specimens[0]
	}
	lists := l.changes(s)
	total := 1
	for _, list := range lists {
		if total *= len(list) + 1; total > mostCases {
			return
		}
	}
	for n := 1; n < total; n++ {
		var changes []Change
		rest := n
		for _, list := range lists {
			if i := rest % (len(list) + 1); i > 0 {
				changes = append(changes, list[i-1])
			}
			rest /= len(list) + 1
		}
		l.try(base, changes...)
	}
}

// try lays a specimen with some changes into the view and considers it.
func (l *lens) try(base int, changes ...Change) {
	t := Try{Changes: changes, base: base, ask: l.ask()}
	if base >= 0 {
		t.at, t.fires = l.c.to.Specimens[base].At, l.c.to.Specimens[base].Want == advisor.True
	}
	unload := l.p.load(t.specimen(l.c))
	if l.m.Consider(l.p.view) >= 0 {
		l.cases = append(l.cases, t)
	}
	unload()
}

// ask is the question about one case, by what the condition is for.
func (l *lens) ask() string {
	switch v := l.it.value.(type) {
	case *advisor.Hold:
		if l.c.to == &v.Until {
			return "is it lifted?"
		}
		return "does it stand?"
	case *advisor.Suspect:
		if v.Danger != nil && l.c.to == &v.Danger.Good {
			return "is it good?"
		}
	case *advisor.Operation:
		if l.c.to == &v.Fitted {
			return "is it fitted?"
		}
	case *advisor.StandingRule, *advisor.Caution:
		return "does it fire?"
	}
	return "is it so?"
}
