package reckon

import (
	"fmt"
	"math"
)

// Figure is an uncertain amount: its mean and standard deviation, in one unit.
type Figure struct{ Mean, Deviation float64 }

// oneInTen is the number of deviations past which a normal amount lies one
// time in ten.
const oneInTen = 1.2815515655446004

// ThreeFigures gives the figure of a job from the amounts that one job in ten
// undercuts, that is usual, and that one in ten exceeds: weights .3, .4, .3.
// It errs unless 0 <= l <= u <= h.
//
// Source: Swanson's rule (Hurst, Brown and Swanson 2000).
func ThreeFigures(low, usual, high float64) (Figure, error) {
	if err := ordered(low, usual, high); err != nil {
		return Figure{}, err
	}
	mean := float64(.3*low) + float64(.4*usual) + float64(.3*high)
	off := func(x float64) float64 { return (x - mean) * (x - mean) }
	variance := float64(.3*off(low)) + float64(.4*off(usual)) + float64(.3*off(high))
	return Figure{Mean: mean, Deviation: math.Sqrt(variance)}, nil
}

func ordered(low, usual, high float64) error {
	if 0 <= low && low <= usual && usual <= high && !math.IsInf(high, 1) {
		return nil
	}
	return fmt.Errorf("figures %s, %s, %s do not rise from zero", plain(low), plain(usual), plain(high))
}

// Maybe gives the figure of work that is needed with a chance (0 to 1): mean
// p m, variance p(s^2 + m^2) - p^2 m^2.
//
// Source: mixture of nothing and the figure (law of total variance).
func Maybe(chance float64, f Figure) (Figure, error) {
	if err := within("chance", chance, 0, 1, ""); err != nil {
		return Figure{}, err
	}
	mean := chance * f.Mean
	square := float64(f.Deviation*f.Deviation) + float64(f.Mean*f.Mean)
	variance := float64(chance*square) - float64(mean*mean)
	return Figure{Mean: mean, Deviation: math.Sqrt(max(0, variance))}, nil
}

// Independent adds figures that vary each on their own: deviations add as
// squares.
//
// Source: variance of a sum.
func Independent(figures ...Figure) Figure {
	var mean, variance float64
	for _, f := range figures {
		mean += f.Mean
		variance += float64(f.Deviation * f.Deviation)
	}
	return Figure{Mean: mean, Deviation: math.Sqrt(variance)}
}

// Dependent adds figures that vary all together: deviations add.
//
// Source: variance of a sum at correlation 1.
func Dependent(figures ...Figure) Figure {
	var sum Figure
	for _, f := range figures {
		sum.Mean += f.Mean
		sum.Deviation += f.Deviation
	}
	return sum
}

// OneInTen gives the amounts that are undercut, and exceeded, one time in ten
// if the figure is about normal; never below zero.
//
// Source: quantiles of the normal distribution.
func (f Figure) OneInTen() (low, high float64) {
	reach := float64(oneInTen * f.Deviation)
	return max(0, f.Mean-reach), f.Mean + reach
}
