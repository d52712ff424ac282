package reckon

// chargeByGravity is TM 5-1185 Table II. Two other manuals give more charge at
// the same gravity (25 % at 1.160; batteries filled to 1.265): this one warns
// sooner.
var chargeByGravity = []point{{1.130, 0}, {1.190, 25}, {1.220, 50}, {1.250, 75}, {1.280, 100}}

// chargeByVolts is the no-load test of TM 5-3805-262-20.
var chargeByVolts = []point{{11.7, 0}, {12.0, 25}, {12.2, 50}, {12.4, 75}, {12.6, 100}}

// freezingTables are three published tables in F; water closes each.
var freezingTables = [][]point{
	{{1.000, 32}, {1.100, 19}, {1.150, 5}, {1.200, -16}, {1.250, -62}, {1.280, -90}}, // OD1002; TM 5-1185 Table III
	{{1.000, 32}, {1.160, 1}, {1.220, -31}, {1.250, -62}, {1.280, -95}},              // TM 10-6140-200-14
	{{1.000, 32}, {1.120, 15}, {1.155, 5}, {1.190, -15}, {1.225, -35}, {1.265, -75}}, // TM 5-4210-230-14&P-1 Table 2
}

// GravityAt80F gives the specific gravity at 80 F (26.7 C) from a hydrometer
// reading (1.0 to 1.4) and the temperature of the acid in C (-40 to 60): 0.004
// for every 10 F.
//
// Source: TM 5-4210-230-14&P-1, hydrometer test.
func GravityAt80F(reading, temperature float64) (float64, error) {
	if err := firstOf(
		within("specific gravity", reading, 1, 1.4, ""),
		within("acid temperature", temperature, -40, 60, "C"),
	); err != nil {
		return 0, err
	}
	return reading + 0.004*(fahrenheit(temperature)-80)/10, nil
}

// BatteryChargeByGravity gives the charge in % from the specific gravity at
// 80 F (1.0 to 1.3), with straight lines between the rows of the table.
//
// Source: TM 5-1185, Table II.
func BatteryChargeByGravity(gravity float64) (float64, error) {
	if err := within("specific gravity", gravity, 1, 1.3, ""); err != nil {
		return 0, err
	}
	return between(chargeByGravity, clamp(gravity, 1.130, 1.280)), nil
}

// BatteryCharge gives the charge in % of a 12 V lead-acid battery from its
// voltage at rest (7 to 13.2), with straight lines between the rows of the
// table. Below 11.7 it is flat or has a dead cell; above 13.2 it has just been
// charged, and below 7 it may be a 6 V battery. A trade table (recalled) sets
// 0 % at 11.89 and 100 % at 12.65.
//
// Source: TM 5-3805-262-20, no-load voltage test.
func BatteryCharge(volts float64) (float64, error) {
	if err := within("battery voltage at rest", volts, 7, 13.2, "V"); err != nil {
		return 0, err
	}
	return between(chargeByVolts, clamp(volts, 11.7, 12.6)), nil
}

// GravityOfCharge gives the specific gravity at 80 F of a battery of a charge in
// % (0 to 100), with straight lines between the rows of the table. A flat one
// has 1.130 at the best.
//
// Source: TM 5-1185, Table II.
func GravityOfCharge(charge float64) (float64, error) {
	if err := within("charge", charge, 0, 100, "%"); err != nil {
		return 0, err
	}
	turned := make([]point, len(chargeByGravity))
	for i, p := range chargeByGravity {
		turned[i] = point{p.y, p.x}
	}
	return between(turned, charge), nil
}

// BatteryFreezing gives the temperature in C at which the acid freezes from
// its specific gravity at 80 F (1.0 to 1.28): the warmest of three tables.
//
// Source: OD1002 and TM 5-1185 Table III; TM 10-6140-200-14;
// TM 5-4210-230-14&P-1 Table 2.
func BatteryFreezing(gravity float64) (float64, error) {
	if err := within("specific gravity", gravity, 1, 1.28, ""); err != nil {
		return 0, err
	}
	warmest := between(freezingTables[0], gravity)
	for _, table := range freezingTables[1:] {
		if gravity <= table[len(table)-1].x {
			warmest = max(warmest, between(table, gravity))
		}
	}
	return celsius(warmest), nil
}

// clamp keeps a value between two bounds.
func clamp(x, low, high float64) float64 { return min(max(x, low), high) }

// fahrenheit and celsius change one scale into the other, exactly defined.
func fahrenheit(c float64) float64 { return c*9/5 + 32 }
func celsius(f float64) float64    { return (f - 32) * 5 / 9 }
