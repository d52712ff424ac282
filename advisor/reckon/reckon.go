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
// Codes are the only numbers that it takes, rising from Low to High, where it
// stands for one of a list (a class, a country); none means every number.
type Param struct {
	Name, Unit string
	Low, High  float64
	Direction  Direction
	Breaks     []float64
	Codes      []float64
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

// notListed tells of a number that stands for nothing.
func notListed(what string, number float64) error {
	return fmt.Errorf("there is no %s %s", what, plain(number))
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
