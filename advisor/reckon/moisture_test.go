package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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

func TestDewPointOfColdMetal(t *testing.T) { // computed: 12 C, 70 %, so metal at 4 C sweats
	dew, err := DewPoint(12, 70)
	require.NoError(t, err)
	assert.InDelta(t, 6.69, dew, 0.02)
}

// TestDewPointGivesTheSteamTableBack: air at its dew point is full, so a table
// of saturation pressures (ASHRAE 2017 ch. 1 Table 3, read) gives it too.
func TestDewPointGivesTheSteamTableBack(t *testing.T) {
	dew, err := DewPoint(25, 100*872.6/3169.7)
	require.NoError(t, err)
	assert.InDelta(t, 5, dew, 0.05)
	dew, err = DewPoint(50, 100*3169.7/12351.3)
	require.NoError(t, err)
	assert.InDelta(t, 25, dew, 0.05)
}
