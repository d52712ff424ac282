package book

import (
	"longstand/advisor"
	"longstand/advisor/condition"
)

// Class says how sharply the specimens of a condition must pin it.
type Class int

// Class A is what can hurt or binds the shop: holds, dangers, cautions and
// standing rules. Class B is every other condition: signs, bases, derived
// values, variants, what is fitted.
const (
	ClassA Class = iota
	ClassB
)

// String names the class as the book's summary does.
func (c Class) String() string { return [...]string{"A", "B"}[c] }

// Words says what is in the class.
func (c Class) Words() string {
	return [...]string{"holds, dangers, cautions, standing rules", "signs, bases, derived values and the rest"}[c]
}

// Score counts what the specimens of a book show. They are never turned into a
// rounded share: 1 of 10,000 missing is not all.
type Score struct {
	Of             [2]Sharpness // by class
	Specimens, Bad int          // run, and those that disagree
}

// Sharpness is what the specimens of one class show.
type Sharpness struct {
	Conditions, Bare int // with a condition, and those without any specimen
	condition.Tally
}

// classOf is the class of one condition of an item.
func classOf(it *item, c *pending) Class {
	switch v := it.value.(type) {
	case *advisor.Hold, *advisor.Caution, *advisor.StandingRule:
		return ClassA
	case *advisor.Suspect:
		if v.Danger != nil && c.to == &v.Danger.Good {
			return ClassA
		}
	}
	return ClassB
}

// measure counts what the specimens of a condition show, and demands what its
// class must show.
func (p *prover) measure(it *item, c *pending, m *condition.Measure) {
	l := p.lens(it, c, m)
	s := &p.score.Of[classOf(it, c)]
	s.Conditions++
	if len(c.to.Specimens) == 0 {
		s.Bare++
	}
	s.Add(l.tally)
	p.demand(l)
}

// lens is one condition under its measure.
type lens struct {
	p      *prover
	it     *item
	c      *pending
	m      *condition.Measure
	owed   []condition.Owed
	tally  condition.Tally
	cases  []Try // considered so far, in order of the measure's
	nearby []Point
	asks   []Suggestion
}

// lens measures one condition. A mutant that regions leave undecided is alive
// when a case near the specimens tells it apart.
func (p *prover) lens(it *item, c *pending, m *condition.Measure) *lens {
	l := &lens{p: p, it: it, c: c, m: m}
	l.owed, l.tally = m.Owed()
	if l.tally.Undecided == 0 {
		return l
	}
	for i := range l.points() {
		if o := &l.owed[i]; o.Possible && l.nearby[i].Try != nil {
			o.Possible = false
			l.tally.Undecided--
			l.tally.Slips++
		}
	}
	return l
}

// layerOf is the layer in which one of an item's conditions stands, "" for the
// built-in book.
func (it *item) layerOf(c *pending) string {
	if it.layer == "" && c.node.Span.File != it.at.File && len(it.changed) > 0 {
		return it.changed[len(it.changed)-1]
	}
	return it.layer
}
