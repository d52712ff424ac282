// Package reckon is the trade's arithmetic from published standards: pure
// functions over plain numbers, nothing else. Each names its units, the range
// in which it holds, and its source, and refuses what lies outside. Where two
// published sources disagree the choice is stated beside it, and leans to the
// one that warns sooner. A figure said to be recalled was not read in its source.
package reckon

import (
	"fmt"
	"strconv"
)

// Direction says how a function moves as one argument grows.
type Direction int8

// The directions of a function in one of its arguments.
const (
	Falling Direction = -1
	Mixed   Direction = 0
	Rising  Direction = 1
)

// Param is one argument of a function: its unit, the range that the function
// accepts, and its direction there. A direction may be level in places. Breaks
// are inner points where the direction's pieces meet; none means one piece.
type Param struct {
	Name, Unit string
	Low, High  float64
	Direction  Direction
	Breaks     []float64
}

// Function is a function that conditions may call. Low and High bound its
// output, in Unit, over everything that it accepts. Call wants one number for
// each parameter and errs outside their ranges, or where the arguments
// contradict one another.
type Function struct {
	Name        string
	Params      []Param
	Low, High   float64
	Unit        string
	Doc, Source string
	Call        func(args []float64) (float64, error)
}

// Find gives the function of that name, or false.
func Find(name string) (Function, bool) {
	for _, f := range Functions {
		if f.Name == name {
			return f, true
		}
	}
	return Function{}, false
}

// Over bounds the function while each argument lies anywhere between low and
// high: the least and greatest value at the corners, or the whole output range
// where a corner cannot answer or a direction is mixed. It errs when an end
// lies outside the accepted range.
func (f Function) Over(low, high []float64) (least, greatest float64, err error) {
	if len(low) != len(f.Params) || len(high) != len(f.Params) {
		return 0, 0, wrongCount(f)
	}
	points := make([][]float64, len(f.Params))
	mixed := false
	for i, p := range f.Params {
		for _, end := range []float64{low[i], high[i]} {
			if err := within(p.Name, end, p.Low, p.High, p.Unit); err != nil {
				return 0, 0, err
			}
		}
		points[i] = p.corners(low[i], high[i])
		mixed = mixed || p.Direction == Mixed && low[i] != high[i]
	}
	if mixed {
		return f.Low, f.High, nil
	}
	return f.overCorners(points)
}

// corners lists the ends of a range and the breaks inside it.
func (p Param) corners(low, high float64) []float64 {
	if low == high {
		return []float64{low}
	}
	points := []float64{low, high}
	for _, b := range p.Breaks {
		if low < b && b < high {
			points = append(points, b)
		}
	}
	return points
}

// overCorners calls the function on every combination of the points.
func (f Function) overCorners(points [][]float64) (least, greatest float64, err error) {
	combinations := 1
	for _, p := range points {
		combinations *= len(p)
	}
	args := make([]float64, len(points))
	for n := range combinations {
		for i, rest := 0, n; i < len(points); i++ {
			args[i], rest = points[i][rest%len(points[i])], rest/len(points[i])
		}
		value, err := f.Call(args)
		switch {
		case err != nil && combinations == 1:
			return 0, 0, err
		case err != nil:
			return f.Low, f.High, nil
		case n == 0:
			least, greatest = value, value
		default:
			least, greatest = min(least, value), max(greatest, value)
		}
	}
	return least, greatest, nil
}

// RangeError tells that a figure lies outside the range in which a formula or
// a table holds.
type RangeError struct {
	Quantity         string
	Value, Low, High float64
	Unit             string
}

// Error words the fault with the figure and the range.
func (e *RangeError) Error() string {
	text := fmt.Sprintf("%s %s lies outside %s to %s", e.Quantity, plain(e.Value), plain(e.Low), plain(e.High))
	if e.Unit != "" {
		text += " " + e.Unit
	}
	return text
}

func wrongCount(f Function) error {
	return fmt.Errorf("%s takes %d figures", f.Name, len(f.Params))
}

// within refuses a value outside low..high, and what is not a number.
func within(quantity string, value, low, high float64, unit string) error {
	if value >= low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Low: low, High: high, Unit: unit}
}

// firstOf gives the first error, so that a formula can guard all its
// arguments in one place.
func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// plain writes a number without an exponent.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// point is one row of a published table of pairs.
type point struct{ x, y float64 }

// between reads a table sorted by x with straight lines between its rows; x
// must lie inside the table.
func between(table []point, x float64) float64 {
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if x <= b.x {
			return a.y + float64((b.y-a.y)*(x-a.x))/(b.x-a.x)
		}
	}
	return table[len(table)-1].y
}
