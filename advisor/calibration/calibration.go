// Package calibration holds frozen forecasts against what was found: how often
// what was given a chance came true, and how far the hours taken lie from the
// hours estimated. It is pure arithmetic from published formulas; it knows no
// case and no book.
//
// interval.go bounds a share that was counted; score.go is the Brier score and
// its parts; strata.go corrects for what was not looked at; hours.go is about
// estimates.
package calibration

import "math"

// Outcome is a forecast chance (0 to 1) and what came of it.
type Outcome struct {
	Forecast float64
	There    bool
}

// Band is a range of forecast chances, Low included and High not, but for a
// High of 1.
type Band struct{ Low, High float64 }

// Bands are the ranges in which forecasts are counted. They are fixed, so that
// no account can pick the cuts that flatter it, and closer where most
// forecasts lie.
var Bands = []Band{{0, 0.02}, {0.02, 0.05}, {0.05, 0.1}, {0.1, 0.2}, {0.2, 0.35}, {0.35, 0.5}, {0.5, 0.7}, {0.7, 0.9}, {0.9, 1}}

// Holds tells whether a forecast lies in the band.
func (b Band) Holds(p float64) bool { return b.Low <= p && (p < b.High || b.High == 1 && p == 1) }

// BandOf gives the place of a forecast among bands, -1 when none holds it.
func BandOf(bands []Band, p float64) int {
	for i := range bands {
		if bands[i].Holds(p) {
			return i
		}
	}
	return -1
}

// mean is 0 of nothing.
func mean(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / math.Max(float64(len(xs)), 1)
}
