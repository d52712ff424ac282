package condition

import (
	"math"
	"slices"
)

// anyYear holds the year of every case: bounds for ages in verdicts.
var anyYear = interval{1900, 2200}

// widen works out what every number can be when nothing is known, not even the
// year of the case.
func (p *Program) widen() {
	v := p.NewView()
	v.caseYear = anyYear
	v.evaluate()
	p.widest = v.figures
}

// numbers lists the values that stand for a number: around each constant and at
// the ends of what is possible at all. An answer moves by its question's step;
// a reckoned number by half the least gap between constants, at most 1.
func (r *regions) numbers(d *dimension) []float64 {
	cs := r.constants(d)
	n := &r.p.numbers[r.f.leaves[d.leaf].of]
	w, step := anything(), 1.0
	if n.op == numFact {
		w, step = r.p.facts[n.a].wide, stepOf(r.p.facts[n.a].source)
	} else {
		w = r.p.widest[r.f.leaves[d.leaf].of]
		for i := 1; i < len(cs); i++ {
			step = min(step, (cs[i]-cs[i-1])/2)
		}
	}
	var out []float64
	for _, c := range append(slices.Clone(cs), w.lo, w.hi) {
		for _, x := range []float64{c - step, c, c + step} {
			if x >= w.lo && x <= w.hi && !math.IsInf(x, 0) {
				out = append(out, snapped(x, cs))
			}
		}
	}
	return out
}

// constants lists what a number is compared with, in order.
func (r *regions) constants(d *dimension) []float64 {
	var cs []float64
	for _, i := range d.leaves {
		for _, t := range r.testsOf(i) {
			cs = append(cs, t.c)
		}
	}
	slices.Sort(cs)
	return slices.Compact(cs)
}

// snapped takes a number next to a constant for the constant: steps of 0.1 do
// not add up exactly.
func snapped(x float64, cs []float64) float64 {
	for _, c := range cs {
		if near(x, c) {
			return c
		}
	}
	return x
}
