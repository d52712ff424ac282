package condition

import (
	"math"

	"longstand/advisor"
)

// interval is every value still possible for a number.
type interval struct{ lo, hi float64 }

func anything() interval { return interval{math.Inf(-1), math.Inf(1)} }

// wide is all that a question of numbers can be answered with: its range when
// it has one.
func wide(q *advisor.Question) interval {
	if q.Low == 0 && q.High == 0 || !(q.Low <= q.High) {
		return anything()
	}
	return interval{q.Low, q.High}
}

// within draws told bounds in where they are open, and takes what makes no
// sense (a low above the high, not a number) for nothing told.
func (w interval) within(lo, hi float64) interval {
	if math.IsInf(lo, -1) {
		lo = w.lo
	}
	if math.IsInf(hi, 1) {
		hi = w.hi
	}
	if !(lo <= hi) {
		return w
	}
	return interval{lo, hi}
}

// combine is interval arithmetic. Float64 operations keep order, so the result
// holds whatever the same operation gives on any values within; a divisor that
// can be 0 leaves everything possible.
func combine(op numberOp, a, b interval) interval {
	var r interval
	switch op {
	case numAdd:
		r = interval{a.lo + b.lo, a.hi + b.hi}
	case numSub:
		r = interval{a.lo - b.hi, a.hi - b.lo}
	case numMul:
		r = corners(times(a.lo, b.lo), times(a.lo, b.hi), times(a.hi, b.lo), times(a.hi, b.hi))
	case numDiv:
		if b.lo <= 0 && b.hi >= 0 {
			return anything()
		}
		r = corners(over(a.lo, b.lo), over(a.lo, b.hi), over(a.hi, b.lo), over(a.hi, b.hi))
	}
	if r.lo != r.lo || r.hi != r.hi {
		return anything()
	}
	return r
}

// times takes 0 times anything for 0: the end of a range that is open is not
// itself a value.
func times(x, y float64) float64 {
	if x == 0 || y == 0 {
		return 0
	}
	return x * y
}

func over(x, y float64) float64 {
	if math.IsInf(y, 0) {
		return 0
	}
	return x / y
}

func corners(a, b, c, d float64) interval {
	return interval{min(a, b, c, d), max(a, b, c, d)}
}

// decide compares an interval with a constant.
func decide(v interval, rel relation, c float64) advisor.Truth {
	switch rel {
	case less:
		return advisor.Truth(bit(v.hi < c) | bit(v.lo >= c)<<1)
	case atMost:
		return advisor.Truth(bit(v.hi <= c) | bit(v.lo > c)<<1)
	case more:
		return decide(v, atMost, c).Not()
	case atLeast:
		return decide(v, less, c).Not()
	case unequal:
		return decide(v, equal, c).Not()
	}
	return advisor.Truth(bit(v.lo == c && v.hi == c) | bit(c < v.lo || c > v.hi)<<1)
}

// bit is 1 for true; the compiler makes it one instruction without a branch.
func bit(b bool) uint8 {
	if b {
		return 1
	}
	return 0
}
