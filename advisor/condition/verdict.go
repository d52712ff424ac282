package condition

import (
	"math/bits"

	"longstand/advisor"
)

// Verdict is an exact decision on conditions over every case they can tell
// apart. Unknown without an example means too many cases; unknown with one, that
// the example may not be possible, because it takes a reckoned number (or
// known()) for a fact of its own.
type Verdict struct {
	Answer  advisor.Truth
	Example []string // the case against it, as a specimen says it; nothing in it can be left out
}

// Truths are what conditions say in 64 cases at a time: bit s of True[i] means
// that the i-th is surely true in case s, of False[i] that it is surely false.
type Truths struct{ True, False []uint64 }

// Never tells whether a condition is true in no case; the example is one in
// which it is true.
func (p *Program) Never(id advisor.CondID) Verdict {
	return p.Decide([]advisor.CondID{id}, func(t Truths) uint64 { return t.True[0] })
}

// Always tells whether a condition is true in every case.
func (p *Program) Always(id advisor.CondID) Verdict {
	return p.Decide([]advisor.CondID{id}, func(t Truths) uint64 { return t.False[0] })
}

// Implies tells whether one of some conditions is true wherever a is.
func (p *Program) Implies(a advisor.CondID, some ...advisor.CondID) Verdict {
	return p.Decide(append([]advisor.CondID{a}, some...), func(t Truths) uint64 { return t.True[0] & all(t.False[1:]) })
}

// Apart tells whether a and b are never true together; the example is a case in
// which both are.
func (p *Program) Apart(a, b advisor.CondID) Verdict {
	return p.Decide([]advisor.CondID{a, b}, func(t Truths) uint64 { return all(t.True) })
}

// Cover tells whether in every case at least one of some conditions is true.
func (p *Program) Cover(ids ...advisor.CondID) Verdict {
	return p.Decide(ids, func(t Truths) uint64 { return all(t.False) })
}

func all(planes []uint64) uint64 {
	bits := ^uint64(0)
	for _, x := range planes {
		bits &= x
	}
	return bits
}

// Decide tells whether no case speaks against what is claimed of some
// conditions. against gives the bits of those that do; it must not take a bit
// back when more is known.
func (p *Program) Decide(ids []advisor.CondID, against func(Truths) uint64) Verdict {
	f := p.cut(ids...)
	return p.search(f, func() uint64 { return against(f.truths()) })
}

// truths works out the roots over the leaves' planes.
func (f *formula) truths() Truths {
	f.run(free)
	t := Truths{make([]uint64, len(f.roots)), make([]uint64, len(f.roots))}
	for i, k := range f.roots {
		t.True[i], t.False[i] = f.kid(k)
	}
	return t
}

// search looks for a case whose bit against sets, given the leaves' planes.
func (p *Program) search(f *formula, against func() uint64) Verdict {
	r := p.regions(f, nil)
	if r.total < 0 {
		return Verdict{Answer: advisor.Unknown}
	}
	tests := f.tests()
	for from := 0; from < r.total; from += 64 {
		r.fill(from, f.t, f.f, tests)
		if bad := against(); bad != 0 {
			return r.smallest((from+bits.TrailingZeros64(bad))%r.total, against)
		}
	}
	return Verdict{Answer: advisor.True}
}

// smallest takes out of a case against all that it can do without: what is left
// is against whatever the rest may be.
func (r *regions) smallest(number int, against func() uint64) Verdict {
	r.fill(number, r.f.t, r.f.f, r.f.tests())
	small := *r
	small.dims = nil
	var words []string
	keep := make([]bool, len(r.dims))
	for i := len(r.dims) - 1; i >= 0; i-- {
		if r.f.leaves[r.dims[i].leaf].kind == atomConst {
			continue
		}
		undo := r.f.blank(r.dims[i].leaves)
		if keep[i] = against()&1 == 0; keep[i] {
			undo()
		}
	}
	for i, d := range r.dims {
		if !keep[i] {
			continue
		}
		l, e := &r.f.leaves[d.leaf], d.values[r.standing(number, i)]
		words = append(words, r.p.evidenceText(l, e))
		if l.kind != atomKnown || e.set != 2 { // what is known may be anything
			small.dims = append(small.dims, d)
		}
	}
	if small.apart() {
		return Verdict{advisor.False, words}
	}
	return Verdict{advisor.Unknown, words}
}

// blank makes some leaves unknown in every case; the function returned takes
// that back.
func (f *formula) blank(leaves []int) (undo func()) {
	kept := make([][2]uint64, len(leaves))
	for i, l := range leaves {
		kept[i] = [2]uint64{f.t[l], f.f[l]}
		f.t[l], f.f[l] = 0, 0
	}
	return func() {
		for i, l := range leaves {
			f.t[l], f.f[l] = kept[i][0], kept[i][1]
		}
	}
}
