package calibration

import "math"

// Interval bounds the share behind k of n, each end so that what was counted,
// or more of it, would come up in (1-level)/2 of all counts: the exact interval
// of C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413. It is 0 to
// 1 when n is 0. Its cover is the level at least, so it is rather too wide.
func Interval(k, n int, level float64) (low, high float64) {
	low, high = 0, 1
	tail := (1 - level) / 2
	if k > 0 {
		low = crossing(func(p float64) bool { return AtLeast(k, n, p) >= tail })
	}
	if k < n {
		high = crossing(func(p float64) bool { return AtLeast(k+1, n, p) > 1-tail })
	}
	return low, high
}

// crossing finds, to the last bit that matters, the least p at which what is
// false at 0 and true at 1 turns true.
func crossing(is func(p float64) bool) float64 {
	low, high := 0.0, 1.0
	for high-low > 1e-13 {
		if mid := (low + high) / 2; is(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return (low + high) / 2
}

// AtLeast is the chance of k or more of n when each comes up with chance p:
// the binomial's upper tail, summed from the larger term down.
func AtLeast(k, n int, p float64) float64 {
	switch {
	case k <= 0:
		return 1
	case k > n || p <= 0:
		return 0
	case p >= 1:
		return 1
	}
	if float64(k) < p*float64(n) { // the other tail is the shorter sum
		return 1 - tail(n-k+1, n, 1-p)
	}
	return tail(k, n, p)
}

// tail sums the terms from k to n; k is not below the mean, so they fall.
func tail(k, n int, p float64) float64 {
	term := math.Exp(logChoose(n, k) + float64(k)*math.Log(p) + float64(n-k)*math.Log1p(-p))
	sum := 0.0
	for i := k; i <= n && term > 0; i++ {
		sum += term
		if term < sum*1e-17 {
			break
		}
		term *= float64(n-i) / float64(i+1) * p / (1 - p)
	}
	return math.Min(sum, 1)
}

// logChoose is the logarithm of n over k.
func logChoose(n, k int) float64 {
	of := func(x int) float64 { v, _ := math.Lgamma(float64(x) + 1); return v }
	return of(n) - of(k) - of(n-k)
}
