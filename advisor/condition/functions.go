package condition

import (
	"math"

	"longstand/advisor/reckon"
)

// function is a trade function as conditions may call it.
type function struct {
	name      string
	params    []param
	low, high float64 // every result lies between them
	call      func(args []float64) (float64, error)
}

// param is one argument of a function: the values it takes, and which way the
// result moves with it between break points (1 rising, -1 falling, 0 neither).
type param struct {
	name      string
	low, high float64
	direction int8
	breaks    []float64
}

// trade are the functions that every book may call.
var trade = tradeFunctions()

func tradeFunctions() []function {
	var out []function
	for _, f := range reckon.Functions {
		g := function{name: f.Name, low: f.Low, high: f.High, call: f.Call}
		for _, p := range f.Params {
			g.params = append(g.params, param{p.Name, p.Low, p.High, int8(p.Direction), p.Breaks})
		}
		out = append(out, g)
	}
	return out
}

// points is how many values of an argument must be tried: the two ends, and
// each break point within with its neighbours on both sides.
func (p *param) points(x interval) int {
	n := 2
	for _, b := range p.breaks {
		if b >= x.lo && b <= x.hi {
			n += 3
		}
	}
	return n
}

// point is the i-th value to try.
func (p *param) point(x interval, i int) float64 {
	switch i {
	case 0:
		return x.lo
	case 1:
		return x.hi
	}
	i -= 2
	for _, b := range p.breaks {
		if b < x.lo || b > x.hi {
			continue
		}
		if i < 3 {
			side := math.Nextafter(b, math.Inf(i-1))
			if i == 1 {
				side = b
			}
			return max(x.lo, min(side, x.hi))
		}
		i -= 3
	}
	return x.hi
}

// call works out a trade function over the ranges of its arguments: at the
// ends of each, and on both sides of every break point between, since between
// those the function moves one way. Where a direction is stated and no break
// lies within, one end serves for the least and the other for the greatest. A
// range beyond what the function takes, an argument without a direction, or an
// error of the function leave its whole stated output possible.
func (v *View) call(f *function, args []int32) interval {
	whole := interval{f.low, f.high}
	points := 1
	exact := true
	for i, a := range args {
		x := v.figures[a]
		p := &f.params[i]
		if !(x.lo >= p.low && x.hi <= p.high) {
			return whole
		}
		if x.lo == x.hi {
			continue
		}
		exact = false
		if p.direction == 0 {
			return whole
		}
		if points *= p.points(x); points > maxCorners {
			return whole
		}
	}
	r := interval{math.Inf(1), math.Inf(-1)}
	if exact {
		points = 1
	}
	for n := range points {
		rest := n
		for i, a := range args {
			x := v.figures[a]
			count := 1
			if x.lo != x.hi {
				count = f.params[i].points(x)
			}
			v.args[i] = f.params[i].point(x, rest%count)
			rest /= count
		}
		y, err := f.call(v.args[:len(args)])
		if err != nil || math.IsNaN(y) {
			return whole
		}
		r.lo, r.hi = min(r.lo, y), max(r.hi, y)
	}
	return r
}
