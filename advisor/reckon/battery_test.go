package reckon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBatteryCharge(t *testing.T) {
	for _, r := range readTable(t, "battery_charge") {
		reckoned, slack := BatteryChargeByGravity, 0.0
		if r.text("by") == "volts" {
			reckoned, slack = BatteryCharge, 20 // the trade table is recalled and lies within 20 %
		}
		charge, err := reckoned(r.number("reading"))
		require.NoError(t, err)
		switch {
		case r.text("used") == "yes":
			assert.InDelta(t, r.number("charge"), charge, 1e-9, r.text("source"))
		case r.text("by") == "gravity":
			assert.LessOrEqual(t, charge, r.number("charge")+slack+1e-9, "the lower charge is chosen: %s", r.text("source"))
		default:
			assert.InDelta(t, r.number("charge"), charge, slack, r.text("source"))
		}
	}
	middle, _ := BatteryChargeByGravity(1.160) // "almost discharged" in TM 5-1185 (read)
	assert.InDelta(t, 12.5, middle, 1e-9)
	_, err := BatteryCharge(6.3)
	refuses(t, err, "battery voltage at rest")
	_, err = BatteryCharge(14.1)
	refuses(t, err, "battery voltage at rest")
	_, err = BatteryChargeByGravity(0.9)
	refuses(t, err, "specific gravity")
}

func TestBatteryFreezing(t *testing.T) { // three manuals (read); the warmest is chosen
	manuals := map[string][]point{"OD1002": freezingTables[0], "TM 10-6140-200-14": freezingTables[1], "TM 5-4210-230-14&P-1": freezingTables[2]}
	exact := 0
	for _, r := range readTable(t, "battery_freezing") {
		assert.InDelta(t, r.number("freezing"), between(manuals[r.text("source")], r.number("gravity")), 1e-9, "kept as printed")
		freezing, err := BatteryFreezing(r.number("gravity"))
		require.NoError(t, err)
		assert.GreaterOrEqual(t, fahrenheit(freezing), r.number("freezing")-1e-9, r.text("source"))
		assert.InDelta(t, r.number("freezing"), fahrenheit(freezing), 5.01, r.text("source"))
		if d := fahrenheit(freezing) - r.number("freezing"); d < 1e-9 {
			exact++
		}
	}
	assert.Equal(t, 9, exact, "rows kept as printed; the others come out warmer")
	full, _ := BatteryFreezing(1.280) // -90 F against -95 F
	assert.InDelta(t, -90, fahrenheit(full), 1e-9)
	_, err := BatteryFreezing(1.29)
	refuses(t, err, "specific gravity")
}

func TestGravityAt80F(t *testing.T) { // worked examples printed in manuals (read)
	for _, r := range readTable(t, "hydrometer_correction") {
		corrected, err := GravityAt80F(r.number("reading"), celsius(r.number("temperature")))
		require.NoError(t, err)
		assert.InDelta(t, r.number("corrected"), corrected, 1e-9, r.text("source"))
	}
	_, err := GravityAt80F(1.25, 61)
	refuses(t, err, "acid temperature")
	_, err = GravityAt80F(1250, 20)
	refuses(t, err, "specific gravity")
}

func TestGravityOfCharge(t *testing.T) { // TM 5-1185 Table II (read), turned round
	for charge, want := range map[float64]float64{0: 1.130, 25: 1.190, 50: 1.220, 75: 1.250, 100: 1.280, 12.5: 1.160} {
		gravity, err := GravityOfCharge(charge)
		require.NoError(t, err)
		assert.InDelta(t, want, gravity, 1e-9)
		back, _ := BatteryChargeByGravity(gravity)
		assert.InDelta(t, charge, back, 1e-6)
	}
	_, err := GravityOfCharge(101)
	refuses(t, err, "charge")
}
