package condition

import "math/bits"

// kills tells whether the specimens tell an edit from the condition.
func (m *Measure) kills(e *edit) bool {
	for from := 0; from < len(m.specimens); from += 64 {
		n := m.load(from)
		if e.extra.leaf >= 0 {
			m.f.extra[0], m.f.extra[1] = m.plane(e.extra.leaf, e.extra.test, from, n)
		}
		if m.differs(e)&(^uint64(0)>>(64-n)) != 0 {
			return true
		}
	}
	return false
}

// differs gives the cases of the loaded block in which an edit's truth is not
// the condition's.
func (m *Measure) differs(e *edit) uint64 {
	m.f.run(free)
	t, f := m.f.kid(m.f.roots[0])
	if e.extra.leaf < 0 {
		m.f.extra = m.fixedPlane(e.extra)
	}
	own := m.f.nodes
	m.f.nodes = e.nodes
	m.f.run(free)
	t2, f2 := m.f.kid(e.root)
	m.f.nodes = own
	return (t ^ t2) | (f ^ f2)
}

// fixedPlane is the planes of another value of the condition, or of a truth.
func (m *Measure) fixedPlane(x extra) [2]uint64 {
	if x.value.at >= 0 {
		t, f := m.f.kid(x.value)
		return [2]uint64{t, f}
	}
	if x.fixed {
		return [2]uint64{^uint64(0), 0}
	}
	return [2]uint64{0, ^uint64(0)}
}

// same tells whether no case tells an edit from the condition, and else shows
// one that does. With too many cases, or where the example takes a reckoned
// number for a fact of its own, it is taken for different.
func (m *Measure) same(e *edit) (bool, []string) {
	tests := m.f.tests()
	if e.extra.leaf >= 0 {
		tests[e.extra.leaf] = e.extra.test
	}
	r := m.p.regions(m.f, tests)
	if r.total < 0 || r.total > maxRuled {
		return false, nil
	}
	own := m.f.tests()
	for from := 0; from < r.total; from += 64 {
		r.fill(from, m.f.t, m.f.f, own)
		if x := e.extra; x.leaf >= 0 {
			t := r.plane(x.leaf, x.test, from)
			m.f.extra = [2]uint64{t, ^t}
		}
		if d := m.differs(e); d != 0 {
			return false, r.words((from + bits.TrailingZeros64(d)) % r.total)
		}
	}
	return true, nil
}

// plane works out one test of a leaf's fact over 64 cases.
func (r *regions) plane(leaf int, t test, from int) (yes uint64) {
	for i := range r.dims {
		if !sameFact(&r.f.leaves[r.dims[i].leaf], &r.f.leaves[leaf]) {
			continue
		}
		for s := range 64 {
			ok, _ := t.of(r.dims[i].values[r.standing(from+s, i)])
			yes |= uint64(bit(ok)) << s
		}
	}
	return yes
}
