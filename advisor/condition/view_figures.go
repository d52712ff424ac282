package condition

// maxParams is the most arguments a trade function may take; maxCorners the
// most points at which one call is worked out.
const (
	maxParams  = 8
	maxCorners = 4096
)

// figure works out one number from the facts and the numbers before it.
func (v *View) figure(n *figure) interval {
	switch n.op {
	case numConst:
		return interval{n.c, n.c}
	case numCaseYear:
		return v.caseYear
	case numNeg:
		a := v.figures[n.a]
		return interval{-a.hi, -a.lo}
	case numAdd, numSub, numMul, numDiv:
		return combine(n.op, v.figures[n.a], v.figures[n.b])
	case numCall:
		return v.call(&v.p.trade[n.a], n.args)
	}
	return v.ofReadings(n)
}

// ofReadings is a function over one question's readings. Without readings the
// least, greatest and mean may be anything in the question's range.
func (v *View) ofReadings(n *figure) interval {
	r := v.readings[n.a]
	w := v.p.facts[n.a].wide
	if len(r) == 0 {
		switch n.op {
		case numSpread:
			return interval{0, w.hi - w.lo}
		case numCount:
			return interval{0, anything().hi}
		}
		return w
	}
	least, greatest, sum, count := r[0], r[0], 0.0, 0.0
	for _, x := range r {
		least, greatest = min(least, x), max(greatest, x)
		sum += x
		if n.rel == always || holds(x, n.rel, n.c) {
			count++
		}
	}
	x := count
	switch n.op {
	case numMin:
		x = least
	case numMax:
		x = greatest
	case numMean:
		x = sum / float64(len(r))
	case numSpread:
		x = greatest - least
	}
	if x != x {
		return anything()
	}
	return interval{x, x}
}

func holds(x float64, rel relation, c float64) bool {
	switch rel {
	case less:
		return x < c
	case atMost:
		return x <= c
	case equal:
		return x == c
	case unequal:
		return x != c
	case atLeast:
		return x >= c
	}
	return x > c
}
