package condition

import (
	"math"
	"math/bits"
	"slices"

	"longstand/advisor"
)

// Pinned says how an obligation on a condition's specimens stands.
type Pinned uint8

// An obligation is open until a specimen meets it. Some cannot be met by any
// case; some do not arise (the threshold of what is no number).
const (
	PinOpen Pinned = iota
	PinMet
	PinImpossible
	PinNone
)

// Pin is what specimens show of one atom: that it alone makes the condition
// true or false while it is true, and while it is false (masking MC/DC), and
// for a number what is decided one step below its threshold, at it and one step
// above.
type Pin struct {
	Atom             AtomInfo
	True, False      Pinned
	Below, At, Above Pinned
}

// Measure gathers a condition's specimens and says how sharply they pin it.
type Measure struct {
	p         *Program
	id        advisor.CondID
	f         *formula
	atoms     []AtomInfo
	pins      []kid // values of the formula that are the condition's atoms
	specimens rows
	doubts    rows   // specimens with one answer in doubt; nil until asked for
	pool      rows   // cases under consideration
	mutants   []edit // nil until asked for
}

// rows are cases, by case and leaf.
type rows [][]evidence

// Measure starts a measure of one condition.
func (p *Program) Measure(id advisor.CondID) *Measure {
	m := &Measure{p: p, id: id, f: p.cutWide(id)}
	for _, slot := range p.leaves(id) {
		m.atoms = append(m.atoms, p.info(slot))
		m.pins = append(m.pins, m.f.valueAt(slot, int32(len(p.atoms))))
	}
	return m
}

// valueAt finds the value of a slot, as it stands there.
func (f *formula) valueAt(slot, atoms int32) kid {
	if slot < 2*atoms {
		return kid{f.leafAt(slot &^ 1), slot&1 == 1}
	}
	for i := range f.nodes {
		if f.nodes[i].slot == slot {
			return kid{at: len(f.leaves) + i}
		}
	}
	return kid{at: -1}
}

// Add takes a specimen, loaded into a view. It counts only where the condition
// says what the specimen wants; Add tells whether it does.
func (m *Measure) Add(v *View, want advisor.Truth) bool {
	if v.Truth(m.id) != want {
		return false
	}
	m.specimens, m.doubts = append(m.specimens, m.row(v)), nil
	return true
}

// row is what a view says of every leaf.
func (m *Measure) row(v *View) []evidence {
	row := make([]evidence, len(m.f.leaves))
	for i := range m.f.leaves {
		row[i] = v.evidence(&m.f.leaves[i])
	}
	return row
}

// Pins gives one Pin for each atom, in order of the condition's Atoms.
func (m *Measure) Pins() []Pin {
	pins := make([]Pin, len(m.atoms))
	open := false
	for i := range pins {
		pins[i].Atom = m.atoms[i]
		m.meet(&pins[i], m.pins[i])
		m.unasked(&pins[i], m.pins[i])
		p := &pins[i]
		open = open || slices.Contains([]Pinned{p.True, p.False, p.Below, p.At, p.Above}, PinOpen)
	}
	if open {
		m.rule(pins)
	}
	return pins
}

// unasked strikes what nobody can show of known(x) where the condition reads x
// besides: that it alone decides while x is not known.
func (m *Measure) unasked(pin *Pin, value kid) {
	if value.at >= len(m.f.leaves) || m.f.leaves[value.at].kind != atomKnown {
		return
	}
	not := &pin.False
	if value.not {
		not = &pin.True
	}
	for i := range m.f.leaves {
		l := &m.f.leaves[i]
		if *not == PinOpen && i != value.at && slices.Contains(m.p.readBy(l), m.f.leaves[value.at].of) {
			*not = PinImpossible
		}
	}
}

// meet marks what the specimens meet of one atom's obligations.
func (m *Measure) meet(pin *Pin, value kid) {
	edges := m.edges(pin, value.at)
	for from := 0; from < len(m.specimens); from += 64 {
		d := m.load(m.specimens, from) & m.f.deciding(value.at, m.f.roots[0])
		m.f.run(free)
		t, f := m.f.kid(value)
		if d&t != 0 {
			pin.True = PinMet
		}
		if d&f != 0 {
			pin.False = PinMet
		}
		for ; d != 0 && edges != nil; d &= d - 1 {
			x := m.specimens[from+bits.TrailingZeros64(d)][value.at].number
			for e, c := range edges {
				if x.lo == x.hi && near(x.lo, c) {
					*pin.edge(e) = PinMet
				}
			}
		}
	}
}

// edge is the obligation one step below, at, or one step above a threshold.
func (p *Pin) edge(i int) *Pinned { return [...]*Pinned{&p.Below, &p.At, &p.Above}[i] }

// edges are the three numbers at a threshold, nil when the atom has none. One
// that lies outside the question's range is no obligation.
func (m *Measure) edges(pin *Pin, value int) []float64 {
	pin.Below, pin.At, pin.Above = PinNone, PinNone, PinNone
	if !pin.Atom.Number {
		return nil
	}
	l := &m.f.leaves[value]
	w := m.p.facts[m.p.numbers[l.of].a].wide
	edges := []float64{l.c - pin.Atom.Step, l.c, l.c + pin.Atom.Step}
	for i, x := range edges {
		if x >= w.lo && x <= w.hi {
			*pin.edge(i) = PinOpen
		}
	}
	return edges
}

// near: steps like 0.1 do not add up exactly.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(b)) }

// load puts up to 64 cases into the formula's planes; it gives the bits that
// stand for a case.
func (m *Measure) load(cases rows, from int) uint64 {
	for i := range m.f.leaves {
		m.f.t[i], m.f.f[i] = cases.plane(i, m.f.leaves[i].test(), from)
	}
	return cases.full(from)
}

// full has a bit for each of up to 64 cases.
func (c rows) full(from int) uint64 { return ^uint64(0) >> (64 - min(64, len(c)-from)) }

// plane works out one test over up to 64 cases.
func (c rows) plane(leaf int, t test, from int) (yes, no uint64) {
	for s := range min(64, len(c)-from) {
		y, f := t.of(c[from+s][leaf])
		yes |= uint64(bit(y)) << s
		no |= uint64(bit(f)) << s
	}
	return yes, no
}
