package oracles

import (
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"longstand/advisor/calibration"
)

// TestShareBounds: the ends of the exact interval are quantiles of two beta
// distributions, and its tails are those of the binomial.
func TestShareBounds(t *testing.T) {
	for n := 1; n <= 60; n += 7 {
		for k := 0; k <= n; k++ {
			for _, level := range []float64{0.5, 0.8, 0.95, 0.99} {
				low, high := calibration.Interval(k, n, level)
				a, b := float64(k), float64(n-k)
				if k > 0 {
					require.InDelta(t, distuv.Beta{Alpha: a, Beta: b + 1}.Quantile((1-level)/2), low, 1e-8, "%d of %d", k, n)
				}
				if k < n {
					require.InDelta(t, distuv.Beta{Alpha: a + 1, Beta: b}.Quantile((1+level)/2), high, 1e-8, "%d of %d", k, n)
				}
			}
			for _, p := range []float64{0.01, 0.3, 0.77} {
				require.InDelta(t, 1-distuv.Binomial{N: float64(n), P: p}.CDF(float64(k-1)), calibration.AtLeast(k, n, p), 1e-9, "%d of %d at %g", k, n, p)
			}
		}
	}
}
