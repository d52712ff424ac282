package calibration

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestAccountOfHundredCars: the 100 cars of TestCorrected as forecasts: those
// with the sign at 7 in 10, the others at 1 in 6.
func TestAccountOfHundredCars(t *testing.T) {
	var all []Suspicion
	add := func(n int, s Suspicion) {
		for range n {
			all = append(all, s)
		}
	}
	add(27, Suspicion{Forecast: .75, Settled: true, There: true})
	add(9, Suspicion{Forecast: .75, Settled: true})
	add(4, Suspicion{Forecast: .75})
	add(1, Suspicion{Forecast: .125, Settled: true, There: true})
	add(5, Suspicion{Forecast: .125, Settled: true})
	add(2, Suspicion{Forecast: .125, LookedInVain: true})
	add(52, Suspicion{Forecast: .125})
	add(10, Suspicion{Forecast: .01})
	a := Reckon(all)
	assert.Equal(t, []int{42, 28, 2, 66, 100}, []int{a.Settled, a.There, a.Vain, a.Unlooked, a.Covered})
	assert.InDelta(t, 2.0/5, a.Corrected, fine, "of all, not 2 in 3 as of those looked at")
	assert.InDelta(t, (40*.75+60*.125)/100, a.Meant, fine)
	assert.InDelta(t, (36*.75+6*.125)/42, a.MeanSettled, fine)
	assert.InDelta(t, (4*.75+54*.125+10*.01)/68, a.MeanRest, fine)
	high := a.Rows[BandOf(Bands, .75)]
	assert.Equal(t, []int{40, 36, 27}, []int{high.All, high.Looked, high.There})
	assert.Equal(t, 0, high.Verdict())
	assert.Equal(t, 10, a.Rows[0].All)
	assert.Equal(t, 0, a.Rows[0].Verdict(), "where nobody looked nothing is said")
	assert.Equal(t, 42, a.Score.N)
}

func TestVerdict(t *testing.T) {
	row := func(forecast float64, n, there int) *Row {
		var all []Suspicion
		for i := range n {
			all = append(all, Suspicion{Forecast: forecast, Settled: true, There: i < there})
		}
		a := Reckon(all)
		return &a.Rows[BandOf(Bands, forecast)]
	}
	assert.Equal(t, -1, row(.1, 20, 12).Verdict(), "there far more often than forecast")
	assert.Equal(t, 1, row(.8, 20, 4).Verdict())
	assert.Equal(t, 0, row(.8, 2, 0).Verdict(), "two cars are too few to tell")
}
