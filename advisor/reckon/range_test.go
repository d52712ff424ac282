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
		{"SaturationPressure", -45, 60, SaturationPressure},
		{"DewPoint air", -45, 60, func(x float64) (float64, error) { return DewPoint(x, 100) }},
		{"Condenses metal", -60, 200, func(x float64) (float64, error) { _, d, err := Condenses(12, 70, x); return d, err }},
		{"LongTermLoss first", 0, 700, func(x float64) (float64, error) { return LongTermLoss(x, 0.5, 30) }},
		{"PowerLawLoss first", 0, 700, func(x float64) (float64, error) { return PowerLawLoss(x, 0.5, 30) }},
		{"LongTermLoss exponent", 0, 1, func(x float64) (float64, error) { return LongTermLoss(1, x, 30) }},
		{"LongTermLoss years", 1, 100, func(x float64) (float64, error) { return LongTermLoss(1, 0.5, x) }},
		{"AgeingFactor energy", 0, 3, func(x float64) (float64, error) { return AgeingFactor(x, 20, 30) }},
		{"AgeingFactor use", -50, 300, func(x float64) (float64, error) { return AgeingFactor(1, x, 30) }},
		{"AgeingFactor stress", -50, 300, func(x float64) (float64, error) { return AgeingFactor(1, 20, x) }},
		{"TenDegreeFactor factor", 1, 5, func(x float64) (float64, error) { return TenDegreeFactor(x, 20, 30) }},
		{"TenDegreeFactor use", -50, 150, func(x float64) (float64, error) { return TenDegreeFactor(2, x, 30) }},
		{"TenDegreeFactor stress", -50, 150, func(x float64) (float64, error) { return TenDegreeFactor(2, 20, x) }},
		{"CutLimit", 80, 500, CutLimit},
		{"SteeringLashLimit", 10, 22, SteeringLashLimit},
		{"HeavyLinkagePlay", 8, 30, HeavyLinkagePlay},
		{"PedalReserve free", 1, 400, func(x float64) (float64, error) { return PedalReserve(x, 1) }},
		{"PedalReserve pressed", 0, 400, func(x float64) (float64, error) { return PedalReserve(400, x) }},
		{"StoppingDistance speed", 0, 70, func(x float64) (float64, error) { return StoppingDistance(x, 5) }},
		{"StoppingDistance deceleration", 0.1, 15, func(x float64) (float64, error) { return StoppingDistance(10, x) }},
		{"StoppingDeceleration speed", 0, 70, func(x float64) (float64, error) { return StoppingDeceleration(x, 5) }},
		{"StoppingDeceleration distance", 0.1, 1000, func(x float64) (float64, error) { return StoppingDeceleration(10, x) }},
		{"BrakingForce", 0, 15, BrakingForce},
		{"GravityAt80F reading", 1, 1.4, func(x float64) (float64, error) { return GravityAt80F(x, 20) }},
		{"GravityAt80F temperature", -40, 60, func(x float64) (float64, error) { return GravityAt80F(1.2, x) }},
		{"BatteryChargeByGravity", 1, 1.3, BatteryChargeByGravity},
		{"BatteryCharge", 7, 13.2, BatteryCharge},
		{"BatteryFreezing", 1, 1.28, BatteryFreezing},
		{"GravityAfterStorage gravity", 1.13, 1.3, func(x float64) (float64, error) { return GravityAfterStorage(x, 9) }},
		{"GravityAfterStorage days", 0, 90, func(x float64) (float64, error) { return GravityAfterStorage(1.28, x) }},
		{"CellSpread", 1, 1.4, func(x float64) (float64, error) { return CellSpread([]float64{1.2, x}) }},
		{"GlycolByMass", 0, 100, GlycolByMass},
		{"GlycolFreezing", 0, 60, GlycolFreezing},
		{"GlycolFreezingByVolume", 0, 57, GlycolFreezingByVolume},
		{"GlycolFreezingEither", 0, 57, GlycolFreezingEither},
		{"FrostReserve freezing", -60, 0, func(x float64) (float64, error) { return FrostReserve(x, 0) }},
		{"FrostReserve winter", -60, 30, func(x float64) (float64, error) { return FrostReserve(-9, x) }},
		{"AltitudePressure", -500, 10000, AltitudePressure},
		{"AltitudeTemperature", -500, 10000, AltitudeTemperature},
		{"SeaLevelCompression reading", 0, 700, func(x float64) (float64, error) { return SeaLevelCompression(x, 9) }},
		{"SeaLevelCompression altitude", -500, 4000, func(x float64) (float64, error) { return SeaLevelCompression(9, x) }},
		{"IdleVacuum", 0, 3000, IdleVacuum},
		{"BoilingPoint", 0.611213, 22064, BoilingPoint},
		{"CapBoiling cap", 0, 30, func(x float64) (float64, error) { return CapBoiling(x, 0) }},
		{"CapBoiling altitude", -500, 4000, func(x float64) (float64, error) { return CapBoiling(9, x) }},
		{"LeakDown in", 10, 200, func(x float64) (float64, error) { return LeakDown(x, 9) }},
		{"LeakDown held", 0, 200, func(x float64) (float64, error) { return LeakDown(200, x) }},
		{"CylinderBalance", 0, 700, func(x float64) (float64, error) {
			b, err := CylinderBalance(WithinTen, []float64{9, x})
			return b.Value, err
		}},
		{"BoltTorque factor", 0.05, 0.5, func(x float64) (float64, error) { return BoltTorque(x, 10, 9) }},
		{"BoltTorque diameter", 2, 64, func(x float64) (float64, error) { return BoltTorque(0.2, x, 9) }},
		{"BoltTorque preload", 0, 1e6, func(x float64) (float64, error) { return BoltTorque(0.2, 10, x) }},
		{"BoltPreload torque", 0, 5000, func(x float64) (float64, error) {
			low, _, high, err := BoltPreload(0.2, 10, x)
			return low + high, err
		}},
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
