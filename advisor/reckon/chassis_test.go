package reckon

import (
	"math"
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

func TestLinkagePlay(t *testing.T) { // 49 CFR 570.7(b), 570.60 Table 3, 570.10 (read)
	assert.InDelta(t, 6.35, LinkagePlayLimit, 1e-12)
	assert.InDelta(t, 3.18, RimRunoutLimit, 0.006)
	assert.InDelta(t, 1.5, ToeLimit, 0)
	for bead, inches := range map[float64]float64{16: 0.25, 16.01: 0.375, 18: 0.375, 18.01: 0.5} {
		play, err := HeavyLinkagePlay(bead)
		require.NoError(t, err)
		assert.InDelta(t, inches*25.4, play, 1e-12)
	}
	_, err := HeavyLinkagePlay(7)
	refuses(t, err, "rim diameter")
}

func TestPedalReserve(t *testing.T) { // computed from 49 CFR 570.55(c): travel 75, 80 and 83.3 %
	for _, c := range []struct {
		pressed, travel float64
		enough          bool
	}{{1.5, 75, true}, {1.2, 80, true}, {1.0, 83.3, false}} {
		reserve, err := PedalReserve(6, c.pressed)
		require.NoError(t, err)
		assert.InDelta(t, 100-c.travel, reserve, 0.05)
		assert.Equal(t, c.enough, reserve >= PedalReserveLimit-1e-9)
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

func TestLinings(t *testing.T) { // 49 CFR 570.59(c), RCW 46.37.360 (read): they differ by class of vehicle
	assert.InDelta(t, 0.79, LiningOverRivets, 0.005)
	assert.InDelta(t, 1.59, BondedLiningHeavy, 0.005)
	assert.InDelta(t, 0.79, BondedLiningCar, 0.005)
}

func TestStopping(t *testing.T) {
	const foot, mph = 0.3048, 0.44704
	for _, r := range readTable(t, "stopping_distance") {
		distance, err := StoppingDistance(r.number("speed")*mph, r.number("deceleration")*foot)
		require.NoError(t, err)
		assert.InEpsilon(t, r.number("distance"), distance/foot, r.number("tolerance"), r.text("source"))
		back, err := StoppingDeceleration(r.number("speed")*mph, distance)
		require.NoError(t, err)
		assert.InEpsilon(t, r.number("deceleration"), back/foot, 1e-9)
	}
	for feet, want := range map[float64]float64{30: 14.34, 25: 17.21} { // from 20 mph, computed
		a, err := StoppingDeceleration(20*mph, feet*foot)
		require.NoError(t, err)
		assert.InDelta(t, want, a/foot, 0.005)
	}
	for _, r := range readTable(t, "braking_force") {
		percent, err := BrakingForce(r.number("deceleration") * foot)
		require.NoError(t, err)
		assert.InDelta(t, r.number("percent"), percent, 0.1, r.text("source"))
	}
	_, err := StoppingDistance(71, 5)
	refuses(t, err, "speed")
	_, err = StoppingDistance(10, 0)
	refuses(t, err, "deceleration")
	_, err = StoppingDeceleration(10, 0)
	refuses(t, err, "distance")
	_, err = StoppingDeceleration(-1, 10)
	refuses(t, err, "speed")
	_, err = BrakingForce(math.Inf(1))
	refuses(t, err, "deceleration")
}

func TestBoltTorque(t *testing.T) { // 3/8 in, 4,940 lb: 30 and 23 lb ft printed (read), 30.9 and 23.2 computed
	const lbf, lbft = 4.4482216152605, 1.3558179483314004
	for factor, want := range map[float64][2]float64{0.20: {30, 30.9}, 0.15: {23, 23.2}} {
		torque, err := BoltTorque(factor, 25.4*3/8, 4940*lbf)
		require.NoError(t, err)
		assert.InDelta(t, want[0], torque/lbft, 1)
		assert.InDelta(t, want[1], torque/lbft, 0.05)
		low, mean, high, err := BoltPreload(factor, 25.4*3/8, torque)
		require.NoError(t, err)
		assert.InEpsilon(t, 4940*lbf, mean, 1e-9)
		assert.InEpsilon(t, 0.7, low/mean, 1e-9)
		assert.InEpsilon(t, 1.3, high/mean, 1e-9)
	}
	// One note prints 53 lb ft for 130 lb ft dry at K .17 brought to .09; its own formula gives 68.8 (computed).
	_, preload, _, err := BoltPreload(0.17, 12, 130*lbft)
	require.NoError(t, err)
	oiled, err := BoltTorque(0.09, 12, preload)
	require.NoError(t, err)
	assert.InDelta(t, 68.8, oiled/lbft, 0.05)
	for _, f := range NutFactors {
		assert.Less(t, f.Low, f.High)
	}
	_, err = BoltTorque(0.6, 10, 1)
	refuses(t, err, "factor K")
	_, err = BoltTorque(0.2, 1, 1)
	refuses(t, err, "thread diameter")
	_, err = BoltTorque(0.2, 10, -1)
	refuses(t, err, "preload")
	_, _, _, err = BoltPreload(0.2, 10, 5001)
	refuses(t, err, "torque")
}
