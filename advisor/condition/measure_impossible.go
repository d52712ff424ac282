package condition

import "math/bits"

// maxRuled is the most cases tried to find that an obligation is impossible.
const maxRuled = 1 << 16

// feasible is what some case can show of one atom.
type feasible struct {
	yes, no bool
	edges   [3]bool
	dim     int    // of a number, -1 otherwise
	at      [3]int // its values that stand for the edges
}

// rule marks the obligations that no case at all can meet: atoms that share a
// fact may never decide alone. With too many cases nothing is ruled out.
func (m *Measure) rule(pins []Pin) {
	r := m.p.regions(m.f, nil)
	if r.total < 0 || r.total > maxRuled {
		return
	}
	can := make([]feasible, len(pins))
	for i := range pins {
		can[i] = m.edgesIn(r, &pins[i], m.pins[i].at)
	}
	tests := m.f.tests()
	for from := 0; from < r.total; from += 64 {
		r.fill(from, m.f.t, m.f.f, tests)
		for i, value := range m.pins {
			d := m.f.deciding(value.at, m.f.roots[0])
			m.f.run(free)
			t, f := m.f.kid(value)
			can[i].yes = can[i].yes || d&t != 0
			can[i].no = can[i].no || d&f != 0
			can[i].look(r, from, d)
		}
	}
	for i := range pins {
		pins[i].strike(&can[i])
	}
}

// edgesIn finds the values of a dimension that stand for an atom's edges.
func (m *Measure) edgesIn(r *regions, pin *Pin, value int) feasible {
	f := feasible{dim: -1}
	if !pin.Atom.Number {
		return f
	}
	for i := range r.dims {
		if sameFact(&m.f.leaves[r.dims[i].leaf], &m.f.leaves[value]) {
			f.dim = i
		}
	}
	for e, x := range []float64{pin.Atom.Constant - pin.Atom.Step, pin.Atom.Constant, pin.Atom.Constant + pin.Atom.Step} {
		x = snapped(x, r.constants(&r.dims[f.dim]))
		f.at[e] = r.alike(&r.dims[f.dim], evidence{number: interval{x, x}})
	}
	return f
}

// look notes which edges occur among the deciding cases.
func (f *feasible) look(r *regions, from int, deciding uint64) {
	if f.dim < 0 || f.edges == [3]bool{true, true, true} {
		return
	}
	for ; deciding != 0; deciding &= deciding - 1 {
		stands := r.standing((from+bits.TrailingZeros64(deciding))%r.total, f.dim)
		for e := range f.edges {
			f.edges[e] = f.edges[e] || f.at[e] == stands
		}
	}
}

// strike turns open obligations that cannot be met into impossible ones.
func (p *Pin) strike(can *feasible) {
	strike := func(o *Pinned, possible bool) {
		if *o == PinOpen && !possible {
			*o = PinImpossible
		}
	}
	strike(&p.True, can.yes)
	strike(&p.False, can.no)
	for e := range can.edges {
		strike(p.edge(e), can.edges[e])
	}
}
