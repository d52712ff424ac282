package calibration

// Score is the Brier score of some forecasts and its parts, each a mean square
// of chances. Brier = Reliability - Resolution + Uncertainty + Within.
type Score struct {
	N           int
	Brier       float64 // 0 is perfect; a forecast of 1 in 2 always scores 1/4
	Reliability float64 // how far each band's share lies from its forecasts; 0 is best
	Resolution  float64 // how far the bands' shares lie apart; more is better
	Uncertainty float64 // of the thing itself: share x (1 - share)
	Within      float64 // what lies within the bands: their variance less twice their covariance
}

// Skill is the part of the uncertainty that the forecasts take away: 1 is
// perfect, 0 is no better than the mean share said of all. It is 0 too when
// nothing is uncertain.
func (s *Score) Skill() float64 {
	if s.Uncertainty == 0 {
		return 0
	}
	return 1 - s.Brier/s.Uncertainty
}

// Brier scores forecasts: the mean square of forecast less what came, 1 or 0.
// G. W. Brier, Monthly Weather Review 78 (1950) 1-3, in the form for one event.
func Brier(outcomes []Outcome) float64 {
	sum := 0.0
	for _, o := range outcomes {
		sum += (o.Forecast - o.came()) * (o.Forecast - o.came())
	}
	return sum / float64(max(len(outcomes), 1))
}

func (o Outcome) came() float64 {
	if o.There {
		return 1
	}
	return 0
}

// Tally is what one band counts.
type Tally struct {
	Band
	Looked, There int
	Mean          float64 // of the forecasts in it
	within        float64 // sum over its forecasts: variance less twice the covariance
}

// Share is the share that was there; 0 of none.
func (t *Tally) Share() float64 { return float64(t.There) / float64(max(t.Looked, 1)) }

// Count puts outcomes into bands; a forecast outside them all counts nowhere.
func Count(bands []Band, outcomes []Outcome) []Tally {
	tallies := make([]Tally, len(bands))
	in := make([][]float64, len(bands))
	for i := range bands {
		tallies[i].Band = bands[i]
	}
	for _, o := range outcomes {
		if i := BandOf(bands, o.Forecast); i >= 0 {
			tallies[i].Looked++
			tallies[i].There += int(o.came())
			in[i] = append(in[i], o.Forecast)
		}
	}
	for i := range tallies {
		tallies[i].Mean = mean(in[i])
	}
	for _, o := range outcomes {
		if i := BandOf(bands, o.Forecast); i >= 0 {
			t := &tallies[i]
			off := o.Forecast - t.Mean
			t.within += off*off - 2*off*(o.came()-t.Share())
		}
	}
	return tallies
}

// Partition gives the score of the outcomes that tallies counted, with its
// parts: A. H. Murphy, Journal of Applied Meteorology 12 (1973) 595-600, and,
// since forecasts in one band differ, the two parts within bands of D. B.
// Stephenson, C. A. S. Coelho and I. T. Jolliffe, Weather and Forecasting 23
// (2008) 752-757, taken together. With them the sum is exact.
func Partition(tallies []Tally) Score {
	var s Score
	there := 0
	for i := range tallies {
		s.N += tallies[i].Looked
		there += tallies[i].There
	}
	if s.N == 0 {
		return s
	}
	n := float64(s.N)
	share := float64(there) / n
	for i := range tallies {
		t := &tallies[i]
		w := float64(t.Looked) / n
		s.Reliability += w * (t.Mean - t.Share()) * (t.Mean - t.Share())
		s.Resolution += w * (t.Share() - share) * (t.Share() - share)
		s.Within += t.within / n
	}
	s.Uncertainty = share * (1 - share)
	s.Brier = s.Reliability - s.Resolution + s.Uncertainty + s.Within
	return s
}
