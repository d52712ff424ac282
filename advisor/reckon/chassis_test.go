package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSteeringLash(t *testing.T) { // 49 CFR 570.7(a) Table 1 (read; between the rows computed)
	for _, r := range readTable(t, "steering_lash") {
		limit, err := SteeringLashLimit(r.number("wheel"))
		require.NoError(t, err)
		assert.InDelta(t, r.number("limit"), limit, 1e-12)
	}
	for _, c := range []struct {
		wheel, lash float64
		within      bool
	}{{15, 2.0, true}, {15, 2.1, false}, {18, 2.25, true}, {20, 2.6, false}} { // computed
		limit, _ := SteeringLashLimit(c.wheel)
		assert.Equal(t, c.within, c.lash <= limit)
	}
	_, err := SteeringLashLimit(23)
	refuses(t, err, "steering wheel diameter")
}

func TestPedalReserve(t *testing.T) { // computed from 49 CFR 570.55(c): travel 75, 80 and 83.3 %
	for _, c := range []struct {
		pressed, travel float64
		enough          bool
	}{{1.5, 75, true}, {1.2, 80, true}, {1.0, 83.3, false}} {
		reserve, err := PedalReserve(6, c.pressed)
		require.NoError(t, err)
		assert.InDelta(t, 100-c.travel, reserve, 0.05)
		assert.Equal(t, c.enough, reserve >= 20-1e-9)
	}
	_, err := PedalReserve(6, 7)
	assert.ErrorContains(t, err, "cannot stand at 7")
	_, err = PedalReserve(0, 0)
	assert.Error(t, err)
	_, err = PedalReserve(401, 1)
	refuses(t, err, "free pedal height")
	_, err = PedalReserve(6, -1)
	refuses(t, err, "pressed pedal height")
}
