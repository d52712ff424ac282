package condition

import (
	"math"
	"slices"
	"strconv"

	"longstand/advisor"
)

// maxRegions is the most assignments that are tried; beyond it the answer is
// "not decided".
const maxRegions = 1_000_000

// regions are the cases that some conditions can tell apart. Conditions only
// compare facts with constants, so of each fact a few values stand for all:
// a choice's options that no atom tells apart count once, a number stands one
// step below, at and one step above each constant.
type regions struct {
	p     *Program
	f     *formula
	tests []test // by leaf
	dims  []dimension
	total int // all combinations, -1 beyond maxRegions
}

// dimension is one fact that conditions read, and the leaves that read it.
type dimension struct {
	leaf   int // one of them
	leaves []int
	values []evidence
}

// regions lays out the cases for a formula. A mutant's tests may differ from
// the leaves' own; then both are told apart. Nil: the leaves' own.
func (p *Program) regions(f *formula, tests []test) *regions {
	r := &regions{p: p, f: f, tests: tests, total: 1}
	for i := range f.leaves {
		if f.leaves[i].slot == unread && (tests == nil || tests[i].accepts == 0) {
			continue
		}
		d := slices.IndexFunc(r.dims, func(d dimension) bool { return sameFact(&f.leaves[d.leaf], &f.leaves[i]) })
		if d < 0 {
			d = len(r.dims)
			r.dims = append(r.dims, dimension{leaf: i})
		}
		r.dims[d].leaves = append(r.dims[d].leaves, i)
	}
	for i := range r.dims {
		r.spread(&r.dims[i])
		r.total *= len(r.dims[i].values)
		if r.total > maxRegions {
			r.total = -1
			break
		}
	}
	return r
}

func isNumber(k atomKind) bool { return k >= atomLess && k <= atomEqual }

// sameFact tells whether two leaves read one fact, so that they move together.
func sameFact(a, b *leaf) bool {
	if isNumber(a.kind) || isNumber(b.kind) {
		return isNumber(a.kind) && isNumber(b.kind) && a.of == b.of
	}
	return a.kind == b.kind && a.of == b.of && (a.kind != atomFlag || a.mask == b.mask)
}

// apart tells whether the dimensions are free of one another: no question is
// read by two of them, and every number is an answer itself, or the only age.
func (r *regions) apart() bool {
	seen := map[int32]atomKind{}
	aged := false
	for _, d := range r.dims {
		l := &r.f.leaves[d.leaf]
		if isNumber(l.kind) && r.p.numbers[l.of].op != numFact {
			if aged || !r.p.age(l.of, r.p.reads.of(int(l.slot/2))) {
				return false
			}
			aged = true
		}
		for _, q := range r.p.readBy(l) {
			if k, again := seen[q]; again && (k != atomFlag || l.kind != atomFlag) {
				return false
			}
			seen[q] = l.kind
		}
	}
	return true
}

// age tells whether a number goes straight up or down with one answer and with
// the year of the case: then it can be whatever lies within its bounds.
func (p *Program) age(number int32, questions []int32) bool {
	if len(questions) != 1 {
		return false
	}
	lines := liner{p: p, q: questions[0], memo: map[int32]line{}}
	l := lines.of(number)
	return !l.bent && l.slope != 0 && l.year != 0
}

// readBy lists the questions that a leaf reads.
func (p *Program) readBy(l *leaf) []int32 {
	if l.slot == unread {
		return []int32{l.of}
	}
	return p.reads.of(int(l.slot / 2))
}

// spread picks the values that stand for a fact, one of each that the tests
// tell apart.
func (r *regions) spread(d *dimension) {
	l := &r.f.leaves[d.leaf]
	var all []evidence
	switch {
	case l.kind == atomSet:
		for i, m := 0, r.p.facts[l.of].all; m>>i != 0; i++ {
			all = append(all, evidence{set: 1 << i})
		}
	case isNumber(l.kind):
		for _, x := range r.numbers(d) {
			all = append(all, evidence{number: interval{x, x}})
		}
	case l.kind == atomConst:
		all = []evidence{{set: 2}}
	default:
		all = []evidence{{set: 1}, {set: 2}}
	}
	for _, e := range all {
		if r.alike(d, e) < 0 {
			d.values = append(d.values, e)
		}
	}
}

// alike finds the value of a dimension that no test tells from another, -1 when
// there is none.
func (r *regions) alike(d *dimension, e evidence) int {
	return slices.IndexFunc(d.values, func(v evidence) bool {
		for _, i := range d.leaves {
			for _, t := range r.testsOf(i) {
				a, _ := t.of(v)
				if b, _ := t.of(e); a != b {
					return false
				}
			}
		}
		return true
	})
}

// standing is which value of a dimension a case has.
func (r *regions) standing(number, dim int) int {
	for i := range dim {
		number /= len(r.dims[i].values)
	}
	return number % len(r.dims[dim].values)
}

// testsOf is a leaf's own test, and the changed one when there is one.
func (r *regions) testsOf(leaf int) []test {
	own := r.f.leaves[leaf].test()
	if r.tests == nil || r.tests[leaf] == own {
		return []test{own}
	}
	return []test{own, r.tests[leaf]}
}

// fill puts the 64 cases from some number on into the formula's planes; cases
// beyond the last repeat earlier ones.
func (r *regions) fill(from int, t, f []uint64, tests []test) {
	clear(t[:len(r.f.leaves)])
	for s := range 64 {
		rest := from + s
		for i := range r.dims {
			d := &r.dims[i]
			e := d.values[rest%len(d.values)]
			rest /= len(d.values)
			for _, l := range d.leaves {
				yes, _ := tests[l].of(e)
				t[l] |= uint64(bit(yes)) << s
			}
		}
	}
	for l := range r.f.leaves {
		f[l] = ^t[l]
	}
}

// words tells one case in the way of a specimen.
func (r *regions) words(number int) []string {
	var out []string
	for i := range r.dims {
		d := &r.dims[i]
		e := d.values[number%len(d.values)]
		number /= len(d.values)
		out = append(out, r.p.evidenceText(&r.f.leaves[d.leaf], e))
	}
	return out
}

func (p *Program) evidenceText(l *leaf, e evidence) string {
	switch {
	case l.kind == atomSet && p.facts[l.of].kind == advisor.YesNoKind:
		return p.facts[l.of].id + " = " + strconv.FormatBool(e.set == 2)
	case l.kind == atomSet:
		return p.setText(&atom{kind: atomSet, of: l.of, mask: e.set}, false)
	case isNumber(l.kind):
		return p.numberText(l.of, 0) + " = " + plainNumber(math.Round(e.number.lo*1e9)/1e9)
	}
	return p.atomText(&l.atom, e.set == 1)
}
