package calibration

import (
	"math"
	"slices"
)

// Job is the hours that one operation took, beside its estimate: 1 in 10 takes
// less than Low, 1 in 10 more than High.
type Job struct{ Low, Usual, High, Took float64 }

// Hours says how estimates and hours taken compare.
type Hours struct {
	N                    int
	Below, Within, Above int     // of the estimate's low and high; an end itself is within
	Ratio                float64 // median of taken / usual, over estimates with a usual above 0
	Low, High            float64 // the least and the greatest such ratio
}

// Compare compares jobs with their estimates.
func Compare(jobs []Job) Hours {
	h := Hours{N: len(jobs)}
	var ratios []float64
	for _, j := range jobs {
		switch {
		case j.Took < j.Low:
			h.Below++
		case j.Took > j.High:
			h.Above++
		default:
			h.Within++
		}
		if j.Usual > 0 {
			ratios = append(ratios, j.Took/j.Usual)
		}
	}
	if len(ratios) > 0 {
		h.Ratio, h.Low, h.High = median(ratios), slices.Min(ratios), slices.Max(ratios)
	}
	return h
}

// median is the middle figure, or the geometric mean of the middle two: twice
// and half as long are as far off.
func median(ratios []float64) float64 {
	s := slices.Sorted(slices.Values(ratios))
	if m := len(s) / 2; len(s)%2 == 0 {
		return math.Sqrt(s[m-1] * s[m])
	}
	return s[len(s)/2]
}
