package scope

import "math"

// Overlap is what is counted too often when suspects share one later opening:
// if each benefit holds the whole opening times its own chance, together they
// hold it sum(p) times, but it is opened again at most once, with the chance
// that at least one is there. cost x (sum p - (1 - product of (1 - p))), rounded
// half up.
func Overlap(cost int64, p []float64) int64 {
	sum, none := 0.0, 1.0
	for _, x := range p {
		sum += x
		none = float64(none * (1 - x))
	}
	return Round(float64(float64(cost) * (sum - (1 - none))))
}

// Benefit is r = p x loss, rounded half up.
func Benefit(p float64, loss int64) int64 { return Round(float64(p * float64(loss))) }

// Round rounds half up.
func Round(x float64) int64 { return int64(math.Floor(x + 0.5)) }
