package condition

import (
	"fmt"
	"math"

	"longstand/advisor"
)

// Owed is something that a condition's specimens do not show yet: an obligation
// of an atom, an edge of a threshold, or a slip of the pen that they would pass
// over.
type Owed struct {
	Kind  OwedKind
	Words string
	// Possible: whether any case at all shows it is not decided.
	Possible bool

	pin   int
	truth bool
	edge  float64
	edit  *edit
}

// OwedKind tells what is owed.
type OwedKind uint8

// The three kinds of what is owed.
const (
	OwedAtom OwedKind = iota
	OwedEdge
	OwedSlip
)

// Tally counts what a condition's specimens should show, and what they do.
// Mutants that are the same condition and those not decided are not among Slips.
type Tally struct {
	Pins, Pinned    int // each atom decides alone, being true and being false
	Edges, Edged    int // numbers one step below, at and above their threshold
	Slips, Noticed  int // mutants, and those killed
	Same, Undecided int
}

// Add puts two tallies together.
func (t *Tally) Add(o Tally) {
	t.Pins, t.Pinned = t.Pins+o.Pins, t.Pinned+o.Pinned
	t.Edges, t.Edged = t.Edges+o.Edges, t.Edged+o.Edged
	t.Slips, t.Noticed = t.Slips+o.Slips, t.Noticed+o.Noticed
	t.Same, t.Undecided = t.Same+o.Same, t.Undecided+o.Undecided
}

// Owed lists what the specimens do not show, with the tally of it all.
func (m *Measure) Owed() (out []Owed, t Tally) {
	for i, pin := range m.Pins() {
		for _, truth := range []bool{true, false} {
			state := pin.False
			if truth {
				state = pin.True
			}
			if count(state, &t.Pins, &t.Pinned) {
				out = append(out, Owed{Kind: OwedAtom, Words: fmt.Sprintf("%s being %v", pin.Atom.Text, truth), pin: i, truth: truth})
			}
		}
		for e := range 3 {
			if count(*pin.edge(e), &t.Edges, &t.Edged) {
				x := math.Round((pin.Atom.Constant+float64(e-1)*pin.Atom.Step)*1e9) / 1e9
				out = append(out, Owed{Kind: OwedEdge, Words: pin.Atom.Text + " at " + plainNumber(x), pin: i, edge: x})
			}
		}
	}
	edits := m.edits()
	for i := range edits {
		switch fate := m.fate(&edits[i]); fate {
		case Killed:
			t.Slips++
			t.Noticed++
		case Same:
			t.Same++
		default:
			if fate == Undecided {
				t.Undecided++
			} else {
				t.Slips++
			}
			out = append(out, Owed{Kind: OwedSlip, Words: edits[i].change, Possible: fate == Undecided, edit: &edits[i]})
		}
	}
	return out, t
}

// count adds an obligation; it tells whether that is open.
func count(state Pinned, all, met *int) bool {
	switch state {
	case PinMet:
		*met++
		*all++
	case PinOpen:
		*all++
		return true
	}
	return false
}

// Consider takes a case that is no specimen, for what it would show as one; it
// gives its place among those considered. Only a case in which the condition is
// known can become a specimen: of others it gives -1.
func (m *Measure) Consider(v *View) int {
	if !v.Truth(m.id).Known() {
		return -1
	}
	m.pool = append(m.pool, m.row(v))
	return len(m.pool) - 1
}

// Shows lists the cases considered that would show what is owed, in order.
func (m *Measure) Shows(o *Owed) (out []int) {
	for from := 0; from < len(m.pool); from += 64 {
		for d := m.shows(o, from); d != 0; d &= d - 1 {
			if s := from + first(d); o.Kind != OwedEdge || m.stands(s, o) {
				out = append(out, s)
			}
		}
	}
	return out
}

// shows gives the cases of one block that would show what is owed, the number
// at an edge left aside.
func (m *Measure) shows(o *Owed, from int) uint64 {
	full := m.load(m.pool, from)
	switch {
	case o.Kind == OwedSlip && o.edit.put.kind >= doubtTrue:
		return full & m.f.deciding(o.edit.put.at.at, m.f.roots[0])
	case o.Kind == OwedSlip:
		return full & m.differs(o.edit, func(leaf int, t test) (uint64, uint64) { return m.pool.plane(leaf, t, from) })
	}
	d := full & m.f.deciding(m.pins[o.pin].at, m.f.roots[0])
	if o.Kind == OwedEdge {
		return d
	}
	m.f.run(free)
	t, f := m.f.kid(m.pins[o.pin])
	if o.truth {
		return d & t
	}
	return d & f
}

// stands tells whether a case considered has the number of an edge.
func (m *Measure) stands(s int, o *Owed) bool {
	x := m.pool[s][m.pins[o.pin].at].number
	return x.lo == x.hi && near(x.lo, o.edge)
}

// TurnsAt lists the numbers at which a question turns this condition: the
// constants that it or one of its readings is compared with there, for a case
// of the given decimal year.
func (p *Program) TurnsAt(id advisor.CondID, q int, caseYear float64) []float64 {
	var own []int32
	for _, s := range p.sourcesUnder(p.conds[id]) {
		if s < int32(len(p.atoms)) {
			own = append(own, s)
		}
	}
	return p.thresholds(q, caseYear, own)
}
