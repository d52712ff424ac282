package reckon

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestThreeFigures(t *testing.T) { // computed
	for _, r := range readTable(t, "three_figures") {
		f, err := ThreeFigures(r.number("low"), r.number("usual"), r.number("high"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("mean"), f.Mean, 1e-9)
		assert.InDelta(t, r.number("variance"), f.Deviation*f.Deviation, 1e-6)
	}
	for _, bad := range [][3]float64{{-1, 2, 3}, {2, 1, 3}, {1, 3, 2}, {1, 2, math.Inf(1)}, {math.NaN(), 2, 3}} {
		_, err := ThreeFigures(bad[0], bad[1], bad[2])
		assert.Error(t, err)
	}
}

func TestSums(t *testing.T) { // computed: three jobs, mean 830
	jobs := []Figure{{170, 110.0 / 3}, {500, 100}, {160, 160.0 / 3}}
	apart, together := Independent(jobs...), Dependent(jobs...)
	assert.InDelta(t, 830, apart.Mean, 1e-9)
	assert.InDelta(t, 830, together.Mean, 1e-9)
	assert.InDelta(t, 119.117, apart.Deviation, 0.001)
	assert.InDelta(t, 190, together.Deviation, 1e-9)
	_, high := apart.OneInTen()
	assert.InDelta(t, 982.65, high, 0.01)
	low, high := together.OneInTen()
	assert.InDelta(t, 1073.49, high, 0.01)
	assert.InDelta(t, 830-243.49, low, 0.01)
	assert.Equal(t, Figure{}, Independent())
	assert.Equal(t, Figure{}, Dependent())
}

func TestMaybe(t *testing.T) { // computed: .3 of (300, 450, 900) has mean 150 and variance 55500
	f := Figure{500, 100}
	m, err := Maybe(0.3, f)
	require.NoError(t, err)
	assert.InDelta(t, 150, m.Mean, 1e-9)
	assert.InDelta(t, 55500, m.Deviation*m.Deviation, 1e-6)
	never, _ := Maybe(0, f)
	assert.Equal(t, Figure{}, never)
	surely, _ := Maybe(1, f)
	assert.InDelta(t, f.Mean, surely.Mean, 1e-9)
	assert.InDelta(t, f.Deviation, surely.Deviation, 1e-9)
	low, high := m.OneInTen()
	assert.Zero(t, low, "never below zero")
	assert.Greater(t, high, m.Mean)
	_, err = Maybe(1.1, f)
	refuses(t, err, "chance")
}
