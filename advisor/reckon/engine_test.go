package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAtmosphere(t *testing.T) { // ASHRAE 2017 ch. 1 Table 1 (read)
	for _, r := range readTable(t, "standard_atmosphere") {
		p, err := AltitudePressure(r.number("altitude"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("pressure"), 1000*p, 1)
		temperature, err := AltitudeTemperature(r.number("altitude"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("temperature"), temperature, 0.1)
	}
	_, err := AltitudePressure(-501)
	refuses(t, err, "altitude")
	_, err = AltitudeTemperature(10001)
	refuses(t, err, "altitude")
}

// A manual's table of least compressions by altitude (read) follows density;
// pressure alone, which is chosen, corrects a little more the higher one goes.
func TestSeaLevelCompression(t *testing.T) {
	rows := readTable(t, "compression_altitude")
	reference, err := SeaLevelCompression(rows[0].number("psi"), rows[0].number("feet")*0.3048)
	require.NoError(t, err)
	for i, slack := range []float64{0, 0.01, 0.01, 0.04, 0.06} {
		corrected, err := SeaLevelCompression(rows[i].number("psi"), rows[i].number("feet")*0.3048)
		require.NoError(t, err)
		assert.InDelta(t, 1, corrected/reference, slack+1e-9, "%v ft", rows[i].number("feet"))
		assert.GreaterOrEqual(t, corrected, reference)
	}
	same, _ := SeaLevelCompression(140, 0)
	assert.InDelta(t, 140, same, 1e-9)
	_, err = SeaLevelCompression(701, 0)
	refuses(t, err, "compression")
	_, err = SeaLevelCompression(140, 4001)
	refuses(t, err, "altitude")
}

func TestIdleVacuum(t *testing.T) { // OD1001 (read): 20 at sea level, about 15 at 5,000 ft
	for feet, want := range map[float64]float64{0: 20, 5000: 15} {
		vacuum, err := IdleVacuum(feet * 0.3048)
		require.NoError(t, err)
		assert.InDelta(t, want, vacuum, 1e-9)
	}
	_, err := IdleVacuum(3001)
	refuses(t, err, "altitude")
}

func TestCylinderBalance(t *testing.T) {
	for _, c := range []struct {
		name   string
		rule   BalanceRule
		psi    []float64
		value  float64
		alike  bool
		lowest int
	}{
		{"75 % exactly", LowestOfHighest, []float64{140, 105, 138, 136}, 75, true, 2},
		{"below 75 %", LowestOfHighest, []float64{140, 138, 104, 136}, 74.2857, false, 3},
		{"a fifth below the average", BelowAverage, []float64{150, 150, 150, 110}, 21.4286, false, 4},
		{"near the average", BelowAverage, []float64{140, 138, 142, 136}, 2.1583, true, 4},
		{"20 % exactly", BelowAverage, []float64{80, 110, 110, 100}, 20, false, 1},
		{"10 psi exactly", WithinTen, []float64{120, 125, 130}, 10, true, 1},
		{"the first of two lowest", WithinTen, []float64{130, 125, 125}, 5, true, 2},
		{"11 psi", WithinTen, []float64{120, 131}, 11, false, 1},
		// One set on which the three published rules part.
		{"parted: 75 %", LowestOfHighest, []float64{150, 150, 150, 118}, 78.6667, true, 4},
		{"parted: average", BelowAverage, []float64{150, 150, 150, 118}, 16.9014, true, 4},
		{"parted: 10 psi", WithinTen, []float64{150, 150, 150, 118}, 32, false, 4},
	} {
		b, err := CylinderBalance(c.rule, c.psi)
		require.NoError(t, err, c.name)
		assert.InDelta(t, c.value, b.Value, 1e-4, c.name)
		assert.Equal(t, c.alike, b.Alike, c.name)
		assert.Equal(t, c.lowest, b.Lowest, c.name)
		assert.Equal(t, c.rule, b.Rule)
		assert.NotEmpty(t, b.Words)
		assert.NotEmpty(t, b.Source)
	}
	_, err := CylinderBalance(WithinTen, []float64{140})
	refuses(t, err, "number of cylinders")
	_, err = CylinderBalance(WithinTen, []float64{140, -1})
	refuses(t, err, "compression")
	_, err = CylinderBalance(WithinTen, []float64{0, 0})
	assert.ErrorContains(t, err, "no cylinder moved")
	_, err = CylinderBalance(9, []float64{140, 138})
	assert.ErrorContains(t, err, "no rule 9")
}

func TestLeakDown(t *testing.T) { // AC 43.13-1B 8-14 (read): 60 held of 80 is 25 %
	loss, err := LeakDown(80, 60)
	require.NoError(t, err)
	assert.InDelta(t, LeakDownLook, loss, 1e-12)
	all, _ := LeakDown(100, 0)
	assert.InDelta(t, 100, all, 0)
	_, err = LeakDown(80, 81)
	assert.ErrorContains(t, err, "cannot hold 81")
	_, err = LeakDown(9, 1)
	refuses(t, err, "pressure put in")
	_, err = LeakDown(80, -1)
	refuses(t, err, "pressure held")
}
