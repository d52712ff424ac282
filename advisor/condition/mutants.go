package condition

import "slices"

// Fate is what becomes of a mutant.
type Fate uint8

// A mutant is alive while no specimen tells it from the condition. One that no
// case tells from it is the same condition and counts against nobody. Where
// there are too many cases, or the case that tells them apart takes a reckoned
// number for a fact of its own, it is not decided.
const (
	Alive Fate = iota
	Killed
	Same
	Undecided
)

// Mutant is a small edit of a condition, as a slip of the pen makes it.
type Mutant struct {
	Change string // in words: `laid_up > 10` were `laid_up >= 10`
	Fate   Fate
}

// Mutants judges every small edit of the condition by the specimens added, and
// by what follows from them when one answer is in doubt.
func (m *Measure) Mutants() []Mutant {
	edits := m.edits()
	out := make([]Mutant, len(edits))
	for i := range edits {
		out[i] = Mutant{edits[i].change, m.fate(&edits[i])}
	}
	return out
}

func (m *Measure) fate(e *edit) Fate {
	switch {
	case m.kills(m.specimens, e) >= 0, m.kills(m.derived(), e) >= 0:
		return Killed
	case e.put.kind >= doubtTrue:
		return m.doubtFate(e)
	}
	return m.everywhere(func(r *regions, from int) uint64 {
		return m.differs(e, func(leaf int, t test) (uint64, uint64) {
			yes := r.plane(leaf, t, from)
			return yes, ^yes
		})
	}, m.testsOf(e))
}

// doubtFate: an atom that decides in some case can leave the condition open.
// Where a specimen on which it decides is there and still does not tell, its
// answer cannot be in doubt alone.
func (m *Measure) doubtFate(e *edit) Fate {
	for from := 0; from < len(m.specimens); from += 64 {
		if m.load(m.specimens, from)&m.f.deciding(e.put.at.at, m.f.roots[0]) != 0 {
			return Same
		}
	}
	return m.everywhere(func(*regions, int) uint64 { return m.f.deciding(e.put.at.at, m.f.roots[0]) }, nil)
}

// everywhere looks through all cases for one of a kind: Alive when there is
// one, Same when there is none.
func (m *Measure) everywhere(found func(r *regions, from int) uint64, tests []test) Fate {
	r := m.p.regions(m.f, tests)
	if r.total < 0 {
		return Undecided
	}
	own := m.f.tests()
	for from := 0; from < r.total; from += 64 {
		r.fill(from, m.f.t, m.f.f, own)
		if found(r, from) == 0 {
			continue
		}
		if !r.apart() || r.reckoned() {
			return Undecided
		}
		return Alive
	}
	return Same
}

// reckoned tells whether a number is worked out from answers: which of its
// values an answer can bring about is not known.
func (r *regions) reckoned() bool {
	return slices.ContainsFunc(r.dims, func(d dimension) bool {
		l := &r.f.leaves[d.leaf]
		return isNumber(l.kind) && r.p.numbers[l.of].op != numFact
	})
}

// testsOf are the leaves' tests under an edit; nothing accepts what neither the
// condition nor the edit reads.
func (m *Measure) testsOf(e *edit) []test {
	tests := m.f.tests()
	for i := range tests {
		if m.f.leaves[i].slot == unread {
			tests[i].accepts = 0
		}
	}
	if e.put.kind == putTest {
		tests[e.put.at.at] = e.put.test
	}
	return tests
}

// kills finds a case that tells an edit from the condition, -1 when none does.
func (m *Measure) kills(cases rows, e *edit) int {
	for from := 0; from < len(cases); from += 64 {
		full := m.load(cases, from)
		d := full & m.differs(e, func(leaf int, t test) (uint64, uint64) { return cases.plane(leaf, t, from) })
		if d != 0 {
			return from + first(d)
		}
	}
	return -1
}

// differs gives the cases of the loaded block in which an edit's truth is not
// the condition's.
func (m *Measure) differs(e *edit, plane func(leaf int, t test) (yes, no uint64)) uint64 {
	m.f.run(free)
	t, f := m.f.kid(m.f.roots[0])
	m.f.extra = m.planes(&e.put, plane)
	own := m.f.nodes
	m.f.nodes = e.nodes
	m.f.run(free)
	t2, f2 := m.f.kid(e.root)
	m.f.nodes = own
	return (t ^ t2) | (f ^ f2)
}

// planes are those of what an edit puts in the place of an atom.
func (m *Measure) planes(x *put, plane func(leaf int, t test) (yes, no uint64)) (out [2]uint64) {
	switch x.kind {
	case putTest:
		out[0], out[1] = plane(x.at.at, x.test)
	case putValue:
		out[0], out[1] = m.f.kid(x.at)
	case putTrue:
		out[0] = ^uint64(0)
	case putFalse:
		out[1] = ^uint64(0)
	case doubtTrue:
		_, no := m.f.kid(x.at)
		return [2]uint64{^no, no}
	case doubtFalse:
		yes, _ := m.f.kid(x.at)
		return [2]uint64{yes, ^yes}
	}
	return out
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
