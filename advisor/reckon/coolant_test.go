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

func TestGlycolWarnsAtTheWarmerReading(t *testing.T) { // 50 %: -33.8 by mass, -37.4 by volume (computed)
	for p := 0.0; p <= 57; p++ {
		byMass, _ := GlycolFreezing(p)
		byVolume, _ := GlycolFreezingByVolume(p)
		either, err := GlycolFreezingEither(p)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, either, byMass)
		assert.GreaterOrEqual(t, either, byVolume)
	}
	either, _ := GlycolFreezingEither(50)
	assert.InDelta(t, -33.8, either, 0.05)
	_, err := GlycolFreezingEither(60)
	refuses(t, err, "glycol by volume")
}

func TestFrostReserve(t *testing.T) {
	reserve, err := FrostReserve(-16.2, -12)
	require.NoError(t, err)
	assert.InDelta(t, 4.2, reserve, 1e-9)
	reserve, _ = FrostReserve(-8.9, -12)
	assert.InDelta(t, -3.1, reserve, 1e-9)
	_, err = FrostReserve(5, -12)
	refuses(t, err, "freezing point")
	_, err = FrostReserve(-5, -80)
	refuses(t, err, "lowest winter temperature")
}

func TestBoilingPoint(t *testing.T) { // IAPWS R7-97 Tables 35 and 36 (read)
	for _, r := range readTable(t, "steam_saturation") {
		boiling, err := BoilingPoint(r.number("pressure"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("boiling"), boiling, r.number("tolerance"))
	}
	_, err := BoilingPoint(0.5)
	refuses(t, err, "absolute pressure")
}

func TestCapBoiling(t *testing.T) { // computed: regression only
	for _, r := range readTable(t, "cap_boiling") {
		boiling, err := CapBoiling(r.number("cap"), r.number("altitude"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("boiling"), boiling, r.number("tolerance"))
	}
	// The handbook rule of 3 F for each psi (read) is too hopeful: 257 F against 249.7 F at 15 psi.
	chosen, _ := CapBoiling(15, 0)
	assert.InDelta(t, 249.7, fahrenheit(chosen), 0.05)
	assert.Less(t, fahrenheit(chosen), 212+3*15.0)
	_, err := CapBoiling(31, 0)
	refuses(t, err, "cap pressure")
	_, err = CapBoiling(15, 5000)
	refuses(t, err, "altitude")
}
