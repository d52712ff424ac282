package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestRangesAreAsDocumented holds each formula to the range in its comment:
// the ends are taken, a little beyond is refused, and with no figure.
func TestRangesAreAsDocumented(t *testing.T) {
	for _, c := range []struct {
		name      string
		low, high float64
		call      func(x float64) (float64, error)
	}{
		{"VapourLockPoint", 0, 10, VapourLockPoint},
		{"DewPoint air", -45, 60, func(x float64) (float64, error) { return DewPoint(x, 100) }},
		{"SteelLossAfter first", 0, 700, func(x float64) (float64, error) { return SteelLossAfter(x, 30) }},
		{"SteelLossAfter years", 1, 100, func(x float64) (float64, error) { return SteelLossAfter(1, x) }},
		{"GravityOfCharge", 0, 100, GravityOfCharge},
		{"CylinderShare", 0, 800, func(x float64) (float64, error) { return CylinderShare(x, 800) }},
		{"CylinderLag", 0, 800, func(x float64) (float64, error) { return CylinderLag(x, 800) }},
		{"AgeingFactor energy", 0, 3, func(x float64) (float64, error) { return AgeingFactor(x, 20, 30) }},
		{"AgeingFactor use", -50, 300, func(x float64) (float64, error) { return AgeingFactor(1, x, 30) }},
		{"AgeingFactor stress", -50, 300, func(x float64) (float64, error) { return AgeingFactor(1, 20, x) }},
		{"CutLimit", 80, 500, CutLimit},
		{"SteeringLashLimit", 10, 22, SteeringLashLimit},
		{"PedalReserve free", 1, 400, func(x float64) (float64, error) { return PedalReserve(x, 1) }},
		{"PedalReserve pressed", 0, 400, func(x float64) (float64, error) { return PedalReserve(400, x) }},
		{"GravityAt80F reading", 1, 1.4, func(x float64) (float64, error) { return GravityAt80F(x, 20) }},
		{"GravityAt80F temperature", -40, 60, func(x float64) (float64, error) { return GravityAt80F(1.2, x) }},
		{"BatteryChargeByGravity", 1, 1.3, BatteryChargeByGravity},
		{"BatteryCharge", 7, 13.2, BatteryCharge},
		{"BatteryFreezing", 1, 1.28, BatteryFreezing},
		{"GlycolByMass", 0, 100, GlycolByMass},
		{"GlycolFreezing", 0, 60, GlycolFreezing},
		{"GlycolFreezingByVolume", 0, 57, GlycolFreezingByVolume},
		{"SeaLevelCompression reading", 0, 700, func(x float64) (float64, error) { return SeaLevelCompression(x, 9) }},
		{"SeaLevelCompression altitude", -500, 4000, func(x float64) (float64, error) { return SeaLevelCompression(9, x) }},
		{"LeakDown in", 10, 200, func(x float64) (float64, error) { return LeakDown(x, 9) }},
		{"LeakDown held", 0, 200, func(x float64) (float64, error) { return LeakDown(200, x) }},
		{"Maybe", 0, 1, func(x float64) (float64, error) { f, err := Maybe(x, Figure{1, 1}); return f.Mean, err }},
	} {
		if c.name != "PedalReserve free" { // bounded below by what is pressed
			value, err := c.call(c.low - 0.0005)
			assert.Error(t, err, c.name)
			assert.Zero(t, value, c.name)
		}
		_, err := c.call(c.low)
		assert.NoError(t, err, c.name)
		_, err = c.call(c.high)
		assert.NoError(t, err, c.name)
		value, err := c.call(c.high + 0.0005)
		assert.Error(t, err, c.name)
		assert.Zero(t, value, c.name)
	}
}

func TestRangeErrorWords(t *testing.T) {
	_, err := BatteryCharge(14.1)
	assert.EqualError(t, err, "battery voltage at rest 14.1 lies outside 7 to 13.2 V")
	_, err = BatteryFreezing(1.3)
	assert.EqualError(t, err, "specific gravity 1.3 lies outside 1 to 1.28")
	_, err = SteelLoss(10, 75, 5, 0)
	assert.EqualError(t, err, "chloride deposition 0 lies outside 0.4 to 760.5 mg/(m2 d)")
}
