package calibration

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const fine = 1e-12

// groups builds forecasts of one chance each: n of them, of which k came.
func groups(rows ...[3]float64) (out []Outcome) {
	for _, r := range rows {
		for i := range int(r[1]) {
			out = append(out, Outcome{r[0], i < int(r[2])})
		}
	}
	return out
}

// TestScoreOfGroups: an example worked by hand in fractions.
func TestScoreOfGroups(t *testing.T) {
	all := groups([3]float64{.1, 10, 2}, [3]float64{.5, 4, 1}, [3]float64{.8, 6, 5})
	s := Partition(Count(Bands, all))
	assert.Equal(t, 20, s.N)
	assert.InDelta(t, 177.0/1000, Brier(all), fine)
	assert.InDelta(t, 177.0/1000, s.Brier, fine)
	assert.InDelta(t, 107.0/6000, s.Reliability, fine)
	assert.InDelta(t, 97.0/1200, s.Resolution, fine)
	assert.InDelta(t, 6.0/25, s.Uncertainty, fine)
	assert.InDelta(t, 0, s.Within, fine)
	assert.InDelta(t, 21.0/80, 1-177.0/1000/(6.0/25), fine)
	assert.InDelta(t, 21.0/80, s.Skill(), fine)
}

// TestScoreWithinBands: where forecasts in one band differ, the three parts
// alone do not add up; with the part within they do.
func TestScoreWithinBands(t *testing.T) {
	all := []Outcome{{.1, false}, {.2, false}, {.1, true}, {.2, false}, {.7, true}, {.9, true}, {.7, false}, {.9, true}}
	s := Partition(Count([]Band{{0, .5}, {.5, 1}}, all))
	assert.InDelta(t, 3.0/16, Brier(all), fine)
	assert.InDelta(t, 1.0/160, s.Reliability, fine)
	assert.InDelta(t, 1.0/16, s.Resolution, fine)
	assert.InDelta(t, 1.0/4, s.Uncertainty, fine)
	assert.InDelta(t, 31.0/160, s.Reliability-s.Resolution+s.Uncertainty, fine)
	assert.InDelta(t, 1.0/160-1.0/80, s.Within, fine)
	assert.InDelta(t, 3.0/16, s.Brier, fine)
}

// TestPartsAddUp: over random forecasts the parts give the score.
func TestPartsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1973))
	for range 200 {
		var all []Outcome
		for range 1 + r.IntN(60) {
			p := math.Round(r.Float64()*1e4) / 1e4
			all = append(all, Outcome{p, r.Float64() < p})
		}
		s := Partition(Count(Bands, all))
		require.Equal(t, len(all), s.N, "every forecast has a band")
		require.InDelta(t, Brier(all), s.Brier, fine)
	}
	assert.Equal(t, Score{}, Partition(Count(Bands, nil)))
}

func TestBandsMeet(t *testing.T) {
	for i, b := range Bands {
		assert.Less(t, b.Low, b.High)
		assert.Equal(t, i, BandOf(Bands, b.Low))
		if i > 0 {
			assert.Equal(t, Bands[i-1].High, b.Low)
		}
	}
	assert.Equal(t, len(Bands)-1, BandOf(Bands, 1))
	assert.Equal(t, -1, BandOf(Bands, 1.01))
}

// TestIntervalEnds: at none and all of n the ends have a closed form.
func TestIntervalEnds(t *testing.T) {
	for _, n := range []int{1, 2, 5, 10, 100, 1000, 100_000} {
		far := math.Pow(0.025, 1/float64(n))
		low, high := Interval(0, n, 0.95)
		assert.Zero(t, low)
		assert.InDelta(t, 1-far, high, 1e-10, n)
		low, high = Interval(n, n, 0.95)
		assert.InDelta(t, far, low, 1e-10, n)
		assert.Equal(t, 1.0, high)
	}
	low, high := Interval(0, 0, 0.95)
	assert.Equal(t, [2]float64{0, 1}, [2]float64{low, high})
}

// upper is the chance of k or more of n, in exact fractions.
func upper(k, n int, p *big.Rat) float64 {
	sum, q := new(big.Rat), new(big.Rat).Sub(big.NewRat(1, 1), p)
	for i := k; i <= n; i++ {
		term := new(big.Rat).SetInt(new(big.Int).Binomial(int64(n), int64(i)))
		for range i {
			term.Mul(term, p)
		}
		for range n - i {
			term.Mul(term, q)
		}
		sum.Add(sum, term)
	}
	f, _ := sum.Float64()
	return f
}

// TestIntervalKeepsItsTails: with the share at an end, what was counted or
// further out has just the chance that the level leaves to that side, reckoned
// in exact fractions.
func TestIntervalKeepsItsTails(t *testing.T) {
	for _, c := range []struct {
		k, n  int
		level float64
	}{{5, 6, .95}, {1, 10, .95}, {4, 20, .9}, {10, 20, .95}, {19, 20, .5}, {3, 28, .8}, {40, 60, .99}} {
		low, high := Interval(c.k, c.n, c.level)
		share := float64(c.k) / float64(c.n)
		assert.True(t, low < share && share < high)
		assert.InDelta(t, (1-c.level)/2, upper(c.k, c.n, new(big.Rat).SetFloat64(low)), 1e-9)
		assert.InDelta(t, (1-c.level)/2, 1-upper(c.k+1, c.n, new(big.Rat).SetFloat64(high)), 1e-9)
	}
}

func TestAtLeast(t *testing.T) {
	for _, n := range []int{1, 7, 30} {
		for k := range n + 2 {
			for _, p := range []float64{0.015625, 0.25, 0.5, 0.9375} {
				assert.InDelta(t, upper(k, n, new(big.Rat).SetFloat64(p)), AtLeast(k, n, p), 1e-12, "%d of %d at %g", k, n, p)
			}
		}
	}
	assert.Equal(t, 0.0, AtLeast(1, 5, 0))
	assert.Equal(t, 1.0, AtLeast(5, 5, 1))
}

// TestCorrected: of 100 cars a sign was seen on 40 (36 opened, 27 faulty) and
// not on 60 (6 opened, 1 faulty). Of those opened 2 in 3 were faulty; of all
// 2 in 5 are.
func TestCorrected(t *testing.T) {
	seen, not := Stratum{40, 36, 27}, Stratum{60, 6, 1}
	share, covered := Corrected([]Stratum{seen, not})
	assert.InDelta(t, 2.0/5, share, fine)
	assert.Equal(t, 100, covered)
	assert.InDelta(t, 2.0/3, float64(seen.There+not.There)/float64(seen.Looked+not.Looked), fine)
	share, covered = Corrected([]Stratum{seen, {All: 60}})
	assert.InDelta(t, 3.0/4, share, fine)
	assert.Equal(t, 40, covered, "where nobody looked nothing is said")
	share, covered = Corrected(nil)
	assert.Zero(t, share+float64(covered))
}

func TestHours(t *testing.T) {
	h := Compare([]Job{{1, 2, 4, 2}, {1, 2, 4, 1}, {1, 2, 4, 5}, {1, 2, 4, 0.5}, {2, 4, 6, 6}})
	assert.Equal(t, Hours{N: 5, Below: 1, Within: 3, Above: 1, Ratio: 1, Low: 0.25, High: 2.5}, h)
	assert.InDelta(t, 1, Compare([]Job{{1, 2, 4, 1}, {1, 2, 4, 4}}).Ratio, fine, "half and twice as long are as far off")
	assert.Equal(t, Hours{N: 1, Within: 1}, Compare([]Job{{}}), "no ratio to nothing")
}
