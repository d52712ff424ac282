package condition

import (
	"math/bits"
	"slices"
)

func first(cases uint64) int { return bits.TrailingZeros64(cases) }

// derived are the specimens that need no author: one on which an atom decides,
// with the answer behind that atom in doubt. The condition is then not known.
func (m *Measure) derived() rows {
	if m.doubts != nil {
		return m.doubts
	}
	m.doubts = rows{}
	for _, pin := range m.pins {
		if !m.doubtful(pin) {
			continue
		}
		for _, s := range m.decidingBothWays(pin) {
			for _, leaf := range m.under(pin.at) {
				m.doubt(m.specimens[s], leaf)
			}
		}
	}
	return m.doubts
}

// decidingBothWays finds a specimen on which a value decides being true, and
// one on which it does being false.
func (m *Measure) decidingBothWays(value kid) (out []int) {
	yes, no := -1, -1
	for from := 0; from < len(m.specimens); from += 64 {
		d := m.load(m.specimens, from) & m.f.deciding(value.at, m.f.roots[0])
		m.f.run(free)
		t, f := m.f.kid(value)
		if yes < 0 && d&t != 0 {
			yes = from + first(d&t)
		}
		if no < 0 && d&f != 0 {
			no = from + first(d&f)
		}
	}
	for _, s := range []int{yes, no} {
		if s >= 0 {
			out = append(out, s)
		}
	}
	return out
}

// doubt keeps a specimen with one leaf's fact in doubt, if that leaves the
// condition open: nothing known of it, or only that it is as here or as in a
// specimen where it lies on the other side.
func (m *Measure) doubt(specimen []evidence, leaf int) {
	for _, e := range m.doubtsOf(leaf, specimen[leaf]) {
		row := slices.Clone(specimen)
		for i := range row {
			if sameAnswer(&m.f.leaves[i], &m.f.leaves[leaf]) {
				row[i] = e
			}
		}
		m.load(rows{row}, 0)
		m.f.run(free)
		if t, f := m.f.kid(m.f.roots[0]); (t|f)&1 == 0 {
			m.doubts = append(m.doubts, row)
		}
	}
}

// sameAnswer tells whether two leaves are in doubt together: what a choices
// question lists is one answer.
func sameAnswer(a, b *leaf) bool {
	return sameFact(a, b) || a.kind == atomFlag && b.kind == atomFlag && a.of == b.of
}

func (m *Measure) doubtsOf(leaf int, e evidence) (out []evidence) {
	l := &m.f.leaves[leaf]
	switch {
	case l.kind == atomKnown, l.kind == atomDone, l.kind == atomConst:
		return nil
	case isNumber(l.kind):
		out = append(out, evidence{number: m.p.widest[l.of]})
	case l.kind == atomSet:
		out = append(out, evidence{set: m.p.facts[l.of].all})
	default:
		return []evidence{{set: 3}}
	}
	yes, no := l.test().of(e)
	for _, other := range m.specimens {
		o := other[leaf]
		if y, n := l.test().of(o); yes && n || no && y {
			out = append(out, evidence{e.set | o.set, interval{min(e.number.lo, o.number.lo), max(e.number.hi, o.number.hi)}})
		}
	}
	return out
}
