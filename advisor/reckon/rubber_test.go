package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRubberStorage(t *testing.T) { // ISO 2230:2002 (read in an extract)
	for _, r := range readTable(t, "rubber_storage") {
		g, err := RubberStorage(r.text("polymer"))
		require.NoError(t, err)
		assert.Equal(t, r.text("group"), g.Name)
		assert.InDelta(t, r.number("first"), g.First, 0)
		assert.InDelta(t, r.number("extension"), g.Extension, 0)
	}
	g, err := RubberStorage(" epdm ")
	require.NoError(t, err)
	assert.Equal(t, "C", g.Name)
	_, err = RubberStorage("cheese")
	assert.ErrorContains(t, err, "cheese")
}

// Another maker prints, as from the same standard, 5 to 7, 7 to 9 and 10 to 12
// years (read). The shorter figures are chosen.
func TestRubberStorageKeepsTheShorterPeriod(t *testing.T) {
	for polymer, other := range map[string][2]int{"NR": {5, 7}, "NBR": {7, 9}, "CR": {7, 9}, "EPDM": {10, 12}, "FKM": {10, 12}, "VMQ": {10, 12}} {
		g, err := RubberStorage(polymer)
		require.NoError(t, err)
		assert.Equal(t, other[0], g.First)
		assert.Less(t, g.First, other[1])
	}
}

func TestAgeingFactor(t *testing.T) {
	for _, r := range readTable(t, "arrhenius") {
		f, err := AgeingFactor(r.number("energy"), r.number("use"), r.number("stress"))
		require.NoError(t, err)
		assert.InEpsilon(t, r.number("factor"), f, r.number("tolerance"), r.text("source"))
	}
	f, _ := AgeingFactor(0.5, 40, 125) // 1,000 h are 5.9 years, 2,000 h 11.8 (read)
	assert.InDelta(t, 5.9, 1000*f/8766, 0.1)
	assert.InDelta(t, 11.8, 2000*f/8766, 0.15)
	_, err := AgeingFactor(4, 20, 30)
	refuses(t, err, "activation energy")
	_, err = AgeingFactor(1, -51, 30)
	refuses(t, err, "temperature in use")
	_, err = AgeingFactor(1, 20, 301)
	refuses(t, err, "temperature compared")
}

func TestTenDegreeFactor(t *testing.T) {
	f, err := TenDegreeFactor(2, 25, 55) // ASTM F1980 method (read): 8, so 730 days take 91.25
	require.NoError(t, err)
	assert.InDelta(t, 8, f, 1e-12)
	assert.InDelta(t, 91.25, 730/f, 1e-9)
	f, _ = TenDegreeFactor(2, 22, 55) // memory: 9.85, so 365 days take 37.1
	assert.InDelta(t, 9.85, f, 0.005)
	assert.InDelta(t, 37.1, 365/f, 0.05)
	_, err = TenDegreeFactor(0.5, 20, 30)
	refuses(t, err, "factor for 10 C")
	_, err = TenDegreeFactor(2, 200, 30)
	refuses(t, err, "temperature in use")
	_, err = TenDegreeFactor(2, 20, 200)
	refuses(t, err, "temperature compared")
}

func TestBrakeFluid(t *testing.T) { // FMVSS 116 (read; DOT 5 and 5.1 memory)
	for _, r := range readTable(t, "brake_fluid") {
		f, err := BrakeFluidClass(r.text("class"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("dry_c"), f.Dry, 0)
		assert.InDelta(t, r.number("wet_c"), f.Wet, 0)
		assert.InDelta(t, r.number("dry_f"), fahrenheit(f.Dry), 1e-9)
		assert.InDelta(t, r.number("wet_f"), fahrenheit(f.Wet), 1e-9)
		assert.Equal(t, r.text("how") == "memory", f.Recalled)
	}
	f, err := BrakeFluidClass("dot4")
	require.NoError(t, err)
	assert.NotEqual(t, 205.0, f.Dry, "one maker's table contradicts the standard")
	f, err = BrakeFluidClass("5.1")
	require.NoError(t, err)
	assert.False(t, f.Silicone)
	_, err = BrakeFluidClass("DOT 6")
	assert.ErrorContains(t, err, "DOT 6")
}

func TestVapourLockPoint(t *testing.T) { // TRL LR903 (read): none 250, 1 % 180, 3 % and over 145
	for water, want := range map[float64]float64{0: 250, 1: 180, 3: 145, 8: 145, 0.2: 180, 2: 145} {
		got, err := VapourLockPoint(water)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 0, "%v %%", water)
	}
	_, err := VapourLockPoint(11)
	refuses(t, err, "water content")
}
