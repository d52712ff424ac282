package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSaturationPressure(t *testing.T) {
	for _, r := range readTable(t, "saturation_pressure") {
		p, err := SaturationPressure(r.number("temperature"))
		switch {
		case r.number("temperature") > 60:
			refuses(t, err, "temperature")
		case r.text("over") == "ice": // the water formula lies above the ice table, by a known amount
			require.NoError(t, err)
			assert.Greater(t, p, r.number("pressure")*1.04)
		default:
			require.NoError(t, err)
			assert.InDelta(t, r.number("pressure"), p, r.number("tolerance"))
		}
	}
	minus5, _ := SaturationPressure(-5)
	minus20, _ := SaturationPressure(-20)
	assert.InDelta(t, 422.2, minus5, 0.5) // computed
	assert.InDelta(t, 126.0, minus20, 0.5)
	_, err := SaturationPressure(-46)
	refuses(t, err, "temperature")
}

func TestDewPoint(t *testing.T) {
	for _, r := range readTable(t, "dew_point") {
		dew, err := DewPoint(r.number("air"), r.number("humidity"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("dew"), dew, r.number("tolerance"))
	}
	same, err := DewPoint(17, 100)
	require.NoError(t, err)
	assert.InDelta(t, 17, same, 1e-9, "full air is at its dew point")
	_, err = DewPoint(61, 50)
	refuses(t, err, "air temperature")
	_, err = DewPoint(20, 101)
	refuses(t, err, "humidity")
	_, err = DewPoint(20, 0)
	assert.ErrorContains(t, err, "no dew point")
	low, err := DewPoint(-40, 10)
	refuses(t, err, "dew point")
	assert.Zero(t, low)
}

func TestCondenses(t *testing.T) { // computed: 12 C, 70 %, dew point 6.69 C
	for metal, want := range map[float64]bool{4: true, 6.6: true, 6.8: false, 12: false} {
		sweats, dew, err := Condenses(12, 70, metal)
		require.NoError(t, err)
		assert.InDelta(t, 6.69, dew, 0.02)
		assert.Equal(t, want, sweats, "metal at %v", metal)
	}
	_, _, err := Condenses(12, 70, -61)
	refuses(t, err, "metal temperature")
	sweats, _, err := Condenses(99, 70, 4)
	refuses(t, err, "air temperature")
	assert.False(t, sweats)
}
