// Package scope chooses what to open and what to do: the closed set of
// operations whose benefits best pay their costs, by exact minimum cut in whole
// numbers. A shared opening is paid once, by all that lies behind it.
//
// It knows nothing of cars or rules: nodes are numbered, and i may require j.
package scope

import (
	"errors"
	"fmt"

	"longstand/advisor"
)

// Price is what one unit of avoided later cost is worth, as an exact ratio.
type Price = advisor.Price

// Limit bounds the sums of benefits and of costs of a Problem, each taken
// without sign; below it no weight and no sum of weights leaves 62 bits.
const Limit = 1 << 30

// Problem is one choice to make. The weight of node i at a price is
// Num*Benefit[i] - Den*Cost[i]; a benefit may be negative (an overlap on a
// shared opening) and so may a cost (a saving, a node that requires the two
// operations that it joins).
type Problem struct {
	Benefit, Cost []int64
	Arcs          [][2]int32 // i requires j
	// In and Out force nodes in and out; nil for none. In brings what it
	// requires, Out takes along what requires it, and In wins a clash.
	In, Out []bool
	// Unsure are requirements that may not apply. Only TwoCuts reads them.
	Unsure [][2]int32
}

// Check tells what is wrong with the problem: lengths that differ, an arc to
// nowhere, or sums beyond Limit. Every other function takes it as checked.
func (p *Problem) Check() error {
	n := len(p.Benefit)
	if len(p.Cost) != n || (p.In != nil && len(p.In) != n) || (p.Out != nil && len(p.Out) != n) {
		return errors.New("scope: benefits, costs and forcings differ in number")
	}
	for _, arcs := range [2][][2]int32{p.Arcs, p.Unsure} {
		for _, a := range arcs {
			if a[0] < 0 || a[1] < 0 || int(a[0]) >= n || int(a[1]) >= n {
				return fmt.Errorf("scope: node %d requires node %d, but there are %d nodes", a[0], a[1], n)
			}
		}
	}
	if !within(p.Benefit) {
		return fmt.Errorf("scope: the benefits together exceed %d minor units", Limit)
	}
	if !within(p.Cost) {
		return fmt.Errorf("scope: the costs together exceed %d minor units", Limit)
	}
	return nil
}

// within adds up without sign, and stops before the sum itself could overflow.
func within(amounts []int64) bool {
	var sum int64
	for _, x := range amounts {
		if x <= -Limit || x >= Limit {
			return false
		}
		if sum += max(x, -x); sum >= Limit {
			return false
		}
	}
	return true
}

// CheckPrice tells whether a price can be computed with.
func CheckPrice(price Price) error {
	if price.Num < 0 || price.Den < 1 || price.Num >= 2*Limit || price.Den >= 2*Limit {
		return fmt.Errorf("scope: %d/%d is not a price", price.Num, price.Den)
	}
	return nil
}

// Less orders two prices.
func Less(a, b Price) bool { return a.Num*b.Den < b.Num*a.Den }

// ratio is num/den in lowest terms.
func ratio(num, den int64) Price {
	a, b := num, den
	for b != 0 {
		a, b = b, a%b
	}
	if a > 1 {
		num, den = num/a, den/a
	}
	return Price{Num: num, Den: den}
}

// Money turns a value in the scale of a price (see Closure) into minor units,
// rounded half away from zero.
func Money(value int64, price Price) int64 {
	if value < 0 {
		return -Money(-value, price)
	}
	return (value + price.Den/2) / price.Den
}

func forced(set []bool, i int) bool { return set != nil && set[i] }
