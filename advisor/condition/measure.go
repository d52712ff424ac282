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
	pins      []kid        // values of the formula that are the condition's atoms
	specimens [][]evidence // by specimen, by leaf
}

// Measure starts a measure of one condition.
func (p *Program) Measure(id advisor.CondID) *Measure {
	m := &Measure{p: p, id: id, f: p.cut(id)}
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
	row := make([]evidence, len(m.f.leaves))
	for i := range m.f.leaves {
		row[i] = v.evidence(&m.f.leaves[i])
	}
	m.specimens = append(m.specimens, row)
	return true
}

// Pins gives one Pin for each atom, in order of the condition's Atoms.
func (m *Measure) Pins() []Pin {
	pins := make([]Pin, len(m.atoms))
	open := false
	for i := range pins {
		pins[i].Atom = m.atoms[i]
		m.meet(&pins[i], m.pins[i])
		p := &pins[i]
		open = open || slices.Contains([]Pinned{p.True, p.False, p.Below, p.At, p.Above}, PinOpen)
	}
	if open {
		m.rule(pins)
	}
	return pins
}

// meet marks what the specimens meet of one atom's obligations.
func (m *Measure) meet(pin *Pin, value kid) {
	edges := m.edges(pin, value.at)
	for from := 0; from < len(m.specimens); from += 64 {
		n := m.load(from)
		d := m.f.deciding(value.at, m.f.roots[0]) & (^uint64(0) >> (64 - n))
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

// load puts up to 64 specimens into the formula's planes.
func (m *Measure) load(from int) int {
	n := min(64, len(m.specimens)-from)
	for i := range m.f.leaves {
		m.f.t[i], m.f.f[i] = m.plane(i, m.f.leaves[i].test(), from, n)
	}
	return n
}

// plane works out one test over specimens.
func (m *Measure) plane(leaf int, t test, from, n int) (yes, no uint64) {
	for s := range n {
		y, f := t.of(m.specimens[from+s][leaf])
		yes |= uint64(bit(y)) << s
		no |= uint64(bit(f)) << s
	}
	return yes, no
}
