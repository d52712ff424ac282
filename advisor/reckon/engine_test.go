package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAtmosphere(t *testing.T) { // ASHRAE 2017 ch. 1 Table 1 (read)
	for _, r := range readTable(t, "standard_atmosphere") {
		p, err := altitudePressure(r.number("altitude"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("pressure"), 1000*p, 1)
	}
	_, err := altitudePressure(-501)
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

func TestCylinderRules(t *testing.T) { // TM 5-4210-230-14&P-1: 75 %; TM 1-1500-204-23-1: 20 % (read; results computed)
	for _, c := range []struct {
		name        string
		psi         [4]float64
		share, lag  float64
		alike, near bool
	}{
		{"75 % exactly", [4]float64{140, 105, 138, 136}, 75, 19.0751, true, true},
		{"below 75 %", [4]float64{140, 138, 104, 136}, 74.2857, 19.6911, false, true},
		{"a fifth below the average", [4]float64{150, 150, 150, 110}, 73.3333, 21.4286, false, false},
		{"near the average", [4]float64{140, 138, 142, 136}, 95.7746, 2.1583, true, true},
		{"20 % exactly", [4]float64{80, 110, 110, 100}, 72.7273, 20, false, false},
		{"within both, over 10 psi", [4]float64{150, 150, 150, 118}, 78.6667, 16.9014, true, true},
	} {
		low, high, sum := c.psi[0], c.psi[0], 0.0
		for _, p := range c.psi {
			low, high, sum = min(low, p), max(high, p), sum+p
		}
		share, err := CylinderShare(low, high)
		require.NoError(t, err, c.name)
		assert.InDelta(t, c.share, share, 1e-4, c.name)
		assert.Equal(t, c.alike, share >= 75, c.name)
		lag, err := CylinderLag(low, sum/4)
		require.NoError(t, err, c.name)
		assert.InDelta(t, c.lag, lag, 1e-4, c.name)
		assert.Equal(t, c.near, lag < 20, c.name)
	}
	_, err := CylinderShare(0, 0)
	assert.ErrorContains(t, err, "no cylinder moved")
	_, err = CylinderLag(141, 140)
	assert.ErrorContains(t, err, "cannot lie over")
	_, err = CylinderShare(-1, 140)
	refuses(t, err, "lowest compression")
	_, err = CylinderLag(140, 801)
	refuses(t, err, "mean compression")
}

func TestLeakDown(t *testing.T) { // AC 43.13-1B 8-14 (read): 60 held of 80 is 25 %
	loss, err := LeakDown(80, 60)
	require.NoError(t, err)
	assert.InDelta(t, 25, loss, 1e-12)
	all, _ := LeakDown(100, 0)
	assert.InDelta(t, 100, all, 0)
	_, err = LeakDown(80, 81)
	assert.ErrorContains(t, err, "cannot hold 81")
	_, err = LeakDown(9, 1)
	refuses(t, err, "pressure put in")
	_, err = LeakDown(80, -1)
	refuses(t, err, "pressure held")
}
