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
	Example []string // the case against it, as a specimen says it
}

// Never tells whether a condition is true in no case; the example is one in
// which it is true.
func (p *Program) Never(id advisor.CondID) Verdict {
	return p.verdict(p.cut(id), func(t []uint64) uint64 { return t[0] })
}

// Always tells whether a condition is true in every case.
func (p *Program) Always(id advisor.CondID) Verdict {
	return p.verdict(p.cut(id), func(t []uint64) uint64 { return ^t[0] })
}

// Implies tells whether b is true wherever a is.
func (p *Program) Implies(a, b advisor.CondID) Verdict {
	return p.verdict(p.cut(a, b), func(t []uint64) uint64 { return t[0] &^ t[1] })
}

// Apart tells whether a and b are never true together; the example is a case in
// which both are.
func (p *Program) Apart(a, b advisor.CondID) Verdict {
	return p.verdict(p.cut(a, b), func(t []uint64) uint64 { return t[0] & t[1] })
}

// Cover tells whether in every case at least one of some conditions is true.
func (p *Program) Cover(ids ...advisor.CondID) Verdict {
	return p.verdict(p.cut(ids...), func(t []uint64) uint64 {
		none := ^uint64(0)
		for _, x := range t {
			none &^= x
		}
		return none
	})
}

// verdict looks for a case against: one whose bit is set by the function of the
// roots' truths.
func (p *Program) verdict(f *formula, against func([]uint64) uint64) Verdict {
	r := p.regions(f, nil)
	if r.total < 0 {
		return Verdict{Answer: advisor.Unknown}
	}
	tests := f.tests()
	roots := make([]uint64, len(f.roots))
	for from := 0; from < r.total; from += 64 {
		r.fill(from, f.t, f.f, tests)
		f.run(free)
		for i, k := range f.roots {
			roots[i], _ = f.kid(k)
		}
		if bad := against(roots); bad != 0 {
			answer := advisor.False
			if !r.exact {
				answer = advisor.Unknown
			}
			return Verdict{answer, r.words((from + bits.TrailingZeros64(bad)) % r.total)}
		}
	}
	return Verdict{Answer: advisor.True}
}
