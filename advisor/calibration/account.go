package calibration

// Suspicion is one suspect of one closed case: its frozen chance, and what came
// of it. What was not looked at, or could not be told, is not settled.
type Suspicion struct {
	Forecast       float64
	Settled, There bool
	LookedInVain   bool // looked at, and nobody could say
}

// Row is what an account says of one band of forecasts.
type Row struct {
	Tally
	All      int     // forecasts in the band, settled or not
	Sum      float64 // of all of them: how many the forecast meant
	From, To float64 // the share that was there, of those settled: 19 in 20 between
}

// Verdict tells whether the band's mean forecast lies below the bounds of the
// share (-1: there more often than forecast), within (0) or above (1).
func (r *Row) Verdict() int {
	switch {
	case r.Looked == 0:
		return 0
	case r.Mean < r.From:
		return -1
	case r.Mean > r.To:
		return 1
	}
	return 0
}

// Account is forecasts held against what was found.
type Account struct {
	Rows                  []Row
	Settled, There        int
	Vain, Unlooked        int     // looked at in vain; not looked at
	MeanSettled, MeanRest float64 // mean forecasts of those settled and of the others
	Score                 Score
	Corrected             float64 // share among all that is to be reckoned with, by bands
	Meant                 float64 // mean forecast of the same
	Covered               int     // how many of all those two speak of
}

// Sure is the level of the bounds in an account: 19 in 20.
const Sure = 0.95

// Reckon holds forecasts against what was found.
func Reckon(all []Suspicion) Account {
	var a Account
	var settled []Outcome
	var sums [2]float64
	for _, s := range all {
		if s.Settled {
			settled = append(settled, Outcome{s.Forecast, s.There})
			sums[0] += s.Forecast
			continue
		}
		sums[1] += s.Forecast
		if s.LookedInVain {
			a.Vain++
		} else {
			a.Unlooked++
		}
	}
	a.Settled = len(settled)
	a.MeanSettled, a.MeanRest = sums[0]/float64(max(a.Settled, 1)), sums[1]/float64(max(len(all)-a.Settled, 1))
	tallies := Count(Bands, settled)
	a.Score = Partition(tallies)
	strata := make([]Stratum, len(tallies))
	for i := range tallies {
		r := Row{Tally: tallies[i]}
		for _, s := range all {
			if r.Holds(s.Forecast) {
				r.All++
				r.Sum += s.Forecast
			}
		}
		r.From, r.To = Interval(r.There, r.Looked, Sure)
		a.There += r.There
		if r.Looked > 0 {
			a.Meant += r.Sum
		}
		strata[i] = Stratum{r.All, r.Looked, r.There}
		a.Rows = append(a.Rows, r)
	}
	a.Corrected, a.Covered = Corrected(strata)
	a.Meant /= float64(max(a.Covered, 1))
	return a
}
