package condition

import "slices"

// Thresholds lists the constants that a question's number, or one of its
// readings, is compared with anywhere in the book, in order. A comparison of a
// number that rests on this question alone through + - * / counts by the answer
// at which it turns, as far as caseYear decides that.
func (p *Program) Thresholds(q int) []float64 { return p.ThresholdsAt(q, 0) }

// ThresholdsAt is Thresholds for a case of the given decimal year: comparisons
// with the age of something turn at another year in another case.
func (p *Program) ThresholdsAt(q int, caseYear float64) []float64 {
	return p.thresholds(q, caseYear, p.atomsOf.of(q))
}

// thresholds is ThresholdsAt for some atoms.
func (p *Program) thresholds(q int, caseYear float64, atoms []int32) []float64 {
	var out []float64
	lines := liner{p: p, q: int32(q), memo: map[int32]line{}}
	for _, i := range atoms {
		a := &p.atoms[i]
		if a.kind < atomLess || a.kind > atomEqual || !slices.Contains(p.reads.of(int(i)), int32(q)) {
			continue
		}
		n := &p.numbers[a.of]
		switch n.op {
		case numMin, numMax, numMean:
			out = append(out, a.c)
			continue
		case numCount:
			out = append(out, n.c)
			continue
		}
		l := lines.of(a.of)
		switch {
		case l.bent || l.slope == 0:
		case l.year != 0 && caseYear == 0:
		default:
			out = append(out, (a.c-l.year*caseYear-l.plus)/l.slope)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// line is slope x + year (year of the case) + plus, unless it is bent.
type line struct {
	slope, year, plus float64
	bent              bool
}

func (l line) fixed() bool { return l.slope == 0 && l.year == 0 }

func (l line) with(o line, k float64) line {
	return line{l.slope + k*o.slope, l.year + k*o.year, l.plus + k*o.plus, l.bent || o.bent}
}

func (l line) times(o line) line {
	if !o.fixed() {
		l, o = o, l
	}
	return line{l.slope * o.plus, l.year * o.plus, l.plus * o.plus, l.bent || o.bent || !o.fixed()}
}

// liner writes numbers as lines in one question, each number once.
type liner struct {
	p    *Program
	q    int32
	memo map[int32]line
}

func (r *liner) of(n int32) line {
	l, ok := r.memo[n]
	if !ok {
		l = r.make(&r.p.numbers[n])
		r.memo[n] = l
	}
	return l
}

func (r *liner) make(f *figure) line {
	switch f.op {
	case numConst:
		return line{plus: f.c}
	case numCaseYear:
		return line{year: 1}
	case numFact:
		return line{slope: 1, bent: f.a != r.q}
	case numNeg:
		return line{}.with(r.of(f.a), -1)
	case numAdd:
		return r.of(f.a).with(r.of(f.b), 1)
	case numSub:
		return r.of(f.a).with(r.of(f.b), -1)
	case numMul:
		return r.of(f.a).times(r.of(f.b))
	case numDiv:
		if b := r.of(f.b); b.fixed() && b.plus != 0 {
			return r.of(f.a).times(line{plus: 1 / b.plus, bent: b.bent})
		}
	}
	return line{bent: true}
}

// stepIn is by how much a number can move: the step of the one question that it
// rests on, where it moves with that one for one, as an age does, or is one of
// its readings. Of other reckoned numbers nothing is known: 0.
func (p *Program) stepIn(number int32) float64 {
	n := &p.numbers[number]
	switch n.op {
	case numFact, numMin, numMax, numMean, numSpread:
		return stepOf(p.facts[n.a].source)
	}
	for q := range p.facts {
		lines := liner{p: p, q: int32(q), memo: map[int32]line{}}
		if l := lines.of(number); !l.bent && (l.slope == 1 || l.slope == -1) {
			return stepOf(p.facts[q].source)
		}
	}
	return 0
}
