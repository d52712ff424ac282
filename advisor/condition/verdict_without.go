package condition

import (
	"slices"

	"longstand/advisor"
)

// Forgotten tells whether a condition that is one thing in some case is never
// the other thing in the same case with one question not asked. Only known(q)
// can turn it: what is merely not known leaves a condition unknown.
func (p *Program) Forgotten(id advisor.CondID, q int, from, to advisor.Truth) Verdict {
	f := p.cut(id)
	known := -1
	var reads []int
	for i := range f.leaves {
		l := &f.leaves[i]
		switch {
		case l.kind == atomKnown && int(l.of) == q:
			known = i
		case slices.Contains(p.reads.of(int(l.slot/2)), int32(q)):
			reads = append(reads, i)
		}
	}
	if known < 0 {
		return Verdict{Answer: advisor.True}
	}
	return p.search(f, func() uint64 {
		before := f.truths().is(from) & f.t[known]
		undo := f.blank(append(reads, known))
		f.f[known] = ^uint64(0)
		after := f.truths().is(to)
		undo()
		return before & after
	})
}

// is gives the cases in which the first root is true, or false.
func (t Truths) is(want advisor.Truth) uint64 {
	if want == advisor.True {
		return t.True[0]
	}
	return t.False[0]
}

// KnownOf lists the questions that a condition asks known() of, in order.
func (p *Program) KnownOf(id advisor.CondID) []int {
	var out []int
	for _, s := range p.sourcesUnder(p.conds[id]) {
		if s < int32(len(p.atoms)) && p.atoms[s].kind == atomKnown {
			out = append(out, int(p.atoms[s].of))
		}
	}
	slices.Sort(out)
	return out
}

// NeverWithout tells whether a condition is true in no case in which nothing is
// known of some questions.
func (p *Program) NeverWithout(id advisor.CondID, closed func(q int) bool) Verdict {
	f := p.cut(id)
	var shut []int
	for i := range f.leaves {
		if slices.ContainsFunc(p.reads.of(int(f.leaves[i].slot/2)), func(q int32) bool { return closed(int(q)) }) {
			shut = append(shut, i)
		}
	}
	return p.search(f, func() uint64 {
		undo := f.blank(shut)
		t := f.truths().True[0]
		undo()
		return t
	})
}

// Reached tells whether a case after others in an ordered list is ever taken:
// whether it can be known true, by some of the answers, while none of those
// before it is. With too many cases it is said to be.
func (p *Program) Reached(id advisor.CondID, before ...advisor.CondID) bool {
	f := p.cut(append([]advisor.CondID{id}, before...)...)
	r := p.regions(f, nil)
	if r.total < 0 || len(r.dims) > 20 || r.total<<len(r.dims) > maxRegions {
		return true
	}
	tests := f.tests()
	for hidden := range 1 << len(r.dims) {
		for from := 0; from < r.total; from += 64 {
			r.fill(from, f.t, f.f, tests)
			for i := range r.dims {
				if hidden>>i&1 == 1 {
					f.blank(r.dims[i].leaves)
				}
			}
			t := f.truths()
			taken := uint64(0)
			for _, x := range t.True[1:] {
				taken |= x
			}
			if t.True[0]&^taken != 0 {
				return true
			}
		}
	}
	return false
}

// Undone is Decide over the cases in which no work is recorded as done.
func (p *Program) Undone(ids []advisor.CondID, against func(Truths) uint64) Verdict {
	f := p.cut(ids...)
	return p.search(f, func() uint64 {
		for i := range f.leaves {
			if f.leaves[i].kind == atomDone {
				f.t[i], f.f[i] = 0, ^uint64(0)
			}
		}
		return against(f.truths())
	})
}

// Alike groups the options of a question that none of some conditions tells
// apart: of a choice, groups of at least two; of several at once, each option
// that none reads.
func (p *Program) Alike(q int, ids []advisor.CondID) [][]int {
	masks := p.masks(q, ids)
	several := p.facts[q].kind == advisor.Choices
	var groups [][]int
	for i := range p.facts[q].source.Options {
		same := func(j int) bool {
			return !slices.ContainsFunc(masks, func(m uint64) bool { return m>>i&1 != m>>j&1 })
		}
		g := slices.IndexFunc(groups, func(g []int) bool { return !several && same(g[0]) })
		switch {
		case g >= 0:
			groups[g] = append(groups[g], i)
		case !several || !slices.Contains(masks, 1<<i):
			groups = append(groups, []int{i})
		}
	}
	return slices.DeleteFunc(groups, func(g []int) bool { return !several && len(g) < 2 })
}

// masks are the sets of options that conditions test a question for.
func (p *Program) masks(q int, ids []advisor.CondID) []uint64 {
	var out []uint64
	for _, a := range p.atomsOf.of(q) {
		if k := p.atoms[a].kind; k != atomSet && k != atomFlag {
			continue
		}
		for _, id := range ids {
			if slices.Contains(p.sourcesUnder(p.conds[id]), a) {
				out = append(out, p.atoms[a].mask)
				break
			}
		}
	}
	return out
}
