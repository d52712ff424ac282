package reckon

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSteelLoss(t *testing.T) { // computed rows: regression only
	for _, r := range readTable(t, "steel_first_year") {
		loss, err := SteelLoss(r.number("temperature"), r.number("humidity"), r.number("so2"), r.number("chloride"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("loss"), loss, r.number("tolerance"))
		class := float64(r.text("category")[1] - '0')
		bound, err := SteelLossInClass(class)
		require.NoError(t, err)
		below, err := SteelLossInClass(class - 1)
		require.NoError(t, err)
		assert.True(t, below < loss && loss <= bound, r.text("category"))
	}
}

func TestSteelLossRange(t *testing.T) { // ISO 9223:2012, Table 3 (read)
	for _, c := range []struct {
		quantity   string
		a          [4]float64
		low, high  float64
		which      int
		justInside bool
	}{
		{"yearly mean temperature", [4]float64{0, 75, 5, 3}, -17.1, 28.7, 0, true},
		{"yearly mean humidity", [4]float64{10, 0, 5, 3}, 34, 93, 1, true},
		{"sulphur dioxide deposition", [4]float64{10, 75, 0, 3}, 0.7, 150.4, 2, true},
		{"chloride deposition", [4]float64{10, 75, 5, 0}, 0.4, 760.5, 3, true},
	} {
		call := func(x float64) error {
			c.a[c.which] = x
			_, err := SteelLoss(c.a[0], c.a[1], c.a[2], c.a[3])
			return err
		}
		assert.NoError(t, call(c.low), c.quantity)
		assert.NoError(t, call(c.high), c.quantity)
		refuses(t, call(c.low-0.01), c.quantity)
		refuses(t, call(c.high+0.01), c.quantity)
		refuses(t, call(math.NaN()), c.quantity)
	}
}

func TestSteelLossInClass(t *testing.T) { // ISO 9223:2012, Table 2 (read)
	for i, r := range readTable(t, "corrosivity_bounds") {
		loss, err := SteelLossInClass(float64(i + 1))
		require.NoError(t, err)
		assert.InDelta(t, r.number("steel_um"), loss, 0)
	}
	for _, none := range []float64{0, 1.5, 7} {
		_, err := SteelLossInClass(none)
		assert.ErrorContains(t, err, "there is no class of the air")
	}
}

func TestCategoryBoundsAgreeByMass(t *testing.T) { // density of steel 7.86 g/cm3 (memory); the table rounds
	for _, r := range readTable(t, "corrosivity_bounds")[1:] {
		assert.InEpsilon(t, r.number("steel_um"), r.number("steel_g")/7.86, 0.05)
	}
}

func TestYearsTable(t *testing.T) { // ISO 9224:2012, Table 3 (read)
	for _, r := range readTable(t, "corrosion_years") {
		loss, err := SteelLossAfter(1, r.number("years"))
		require.NoError(t, err)
		if r.number("years") <= 20 {
			assert.InDelta(t, r.number("steel_b1"), loss, 0.0011, "%v years", r.number("years"))
		} else {
			assert.Greater(t, loss, r.number("steel_b1"), "the clause gives more than the table")
		}
	}
}

func TestSteelLossAfter(t *testing.T) { // computed from ISO 9224: regression only
	for _, c := range []struct{ first, years, loss, tolerance float64 }{
		{1, 25, 5.418, 0.001}, {1, 30, 6.044, 0.001}, {1, 50, 8.550, 0.001}, {1, 100, 14.814, 0.001},
		{25, 5, 58.0, 0.05}, {25, 10, 83.4, 0.05}, {25, 20, 119.8, 0.05}, {25, 30, 151.1, 0.05},
		{50, 5, 116.0, 0.05}, {50, 10, 166.7, 0.05}, {50, 20, 239.6, 0.05}, {50, 30, 302.2, 0.05},
	} {
		loss, err := SteelLossAfter(c.first, c.years)
		require.NoError(t, err)
		assert.InDelta(t, c.loss, loss, c.tolerance)
	}
	clause, _ := SteelLossAfter(1, 100)
	assert.InDelta(t, 1.33, clause/math.Pow(100, 0.523), 0.005)
	clause, _ = SteelLossAfter(1, 20.9)
	assert.Greater(t, clause, math.Pow(20.9, 0.523), "the tangent starts at 20 years")
	for _, years := range []float64{0.5, 101} {
		_, err := SteelLossAfter(1, years)
		refuses(t, err, "years")
	}
	_, err := SteelLossAfter(701, 30)
	refuses(t, err, "first-year loss")
	// A survey of 1993 (Feliu and Morcillo, Tables 2 and 4, read): mean exponent 0.623, deviation 0.15.
	twice, _ := SteelLossAfter(1, 2)
	assert.InDelta(t, 0.623, math.Log2(twice), 0.15)
}
