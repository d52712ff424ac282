package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestGlycolFreezing(t *testing.T) {
	for _, r := range readTable(t, "glycol_freezing") {
		reckoned := GlycolFreezing
		if r.text("by") == "volume" {
			reckoned = GlycolFreezingByVolume
		}
		freezing, err := reckoned(r.number("percent"))
		require.NoError(t, err)
		if r.text("used") == "no" { // Melinder is colder everywhere: the warmer is chosen
			assert.Greater(t, freezing, r.number("freezing"), "%v %%", r.number("percent"))
			assert.InDelta(t, r.number("freezing"), freezing, 2.3)
			continue
		}
		assert.InDelta(t, r.number("freezing"), freezing, r.number("tolerance"), "%v %s", r.number("percent"), r.text("source"))
	}
	water, err := GlycolFreezing(0)
	require.NoError(t, err)
	assert.InDelta(t, 0, water, 0)
	below, _ := GlycolFreezing(4.999999)
	above, _ := GlycolFreezing(5)
	assert.InDelta(t, above, below, 1e-5, "the line meets the curve")
	_, err = GlycolFreezing(70)
	assert.ErrorContains(t, err, "rises again")
	_, err = GlycolFreezing(-1)
	refuses(t, err, "glycol by mass")
	_, err = GlycolFreezingByVolume(58)
	refuses(t, err, "glycol by volume")
}

func TestGlycolByMass(t *testing.T) { // computed from recalled densities
	for _, r := range readTable(t, "glycol_conversion") {
		mass, err := GlycolByMass(r.number("volume"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("mass"), mass, r.number("tolerance"))
	}
	for _, end := range []float64{0, 100} {
		mass, err := GlycolByMass(end)
		require.NoError(t, err)
		assert.InDelta(t, end, mass, 1e-12)
	}
	_, err := GlycolByMass(101)
	refuses(t, err, "glycol by volume")
}

func TestShareByMassIsWarmer(t *testing.T) { // 50 %: -33.8 by mass, -37.4 by volume (computed)
	for p := 1.0; p <= 57; p++ {
		byMass, _ := GlycolFreezing(p)
		byVolume, _ := GlycolFreezingByVolume(p)
		assert.Greater(t, byMass, byVolume)
	}
	byMass, _ := GlycolFreezing(50)
	byVolume, _ := GlycolFreezingByVolume(50)
	assert.InDelta(t, -33.8, byMass, 0.05)
	assert.InDelta(t, -37.4, byVolume, 0.05)
}
