package reckon

import "slices"

// Functions lists what conditions may call, by name.
var Functions = slices.Concat(metalFunctions, rubberFunctions, engineFunctions, batteryFunctions, chassisFunctions)

// ranged guards a function's call by the number and ranges of its arguments,
// so that what is stated of it is what it does.
func ranged(f Function) Function {
	inner := f.Call
	f.Call = func(args []float64) (float64, error) {
		if len(args) != len(f.Params) {
			return 0, wrongCount(f)
		}
		for i, p := range f.Params {
			if err := within(p.Name, args[i], p.Low, p.High, p.Unit); err != nil {
				return 0, err
			}
		}
		return inner(args)
	}
	return f
}

// coded is a parameter that stands for one of a list.
func coded(name string, d Direction, codes ...float64) Param {
	return Param{Name: name, Low: codes[0], High: codes[len(codes)-1], Direction: d, Codes: codes}
}

var metalFunctions = []Function{
	ranged(Function{
		Name: "steel_loss",
		Params: []Param{
			{Name: "yearly mean temperature", Unit: "C", Low: -17.1, High: 28.7, Direction: Mixed},
			{Name: "yearly mean humidity", Unit: "%", Low: 34, High: 93, Direction: Rising},
			{Name: "sulphur dioxide deposition", Unit: "mg/(m2 d)", Low: 0.7, High: 150.4, Direction: Rising},
			{Name: "chloride deposition", Unit: "mg/(m2 d)", Low: 0.4, High: 760.5, Direction: Rising},
		},
		Low: 0, High: 490, Unit: "um",
		Doc: "bare steel lost outdoors in the first year", Source: "ISO 9223:2012, 8.2",
		Call: func(a []float64) (float64, error) { return SteelLoss(a[0], a[1], a[2], a[3]) },
	}),
	ranged(Function{
		Name: "steel_loss_in_class", Params: []Param{coded("class of the air", Rising, 1, 2, 3, 4, 5, 6)},
		Low: 1.3, High: 700, Unit: "um",
		Doc: "the most that bare steel loses in the first year in a class of the air, 1 for C1 to 6 for CX", Source: "ISO 9223:2012, Table 2",
		Call: func(a []float64) (float64, error) { return SteelLossInClass(a[0]) },
	}),
	ranged(Function{
		Name: "steel_loss_after",
		Params: []Param{
			{Name: "first-year loss", Unit: "um", Low: 0, High: 700, Direction: Rising},
			{Name: "years", Unit: "years", Low: 1, High: 100, Direction: Rising},
		},
		Low: 0, High: 10400, Unit: "um",
		Doc: "bare steel lost after some years, usual exponent", Source: "ISO 9224:2012",
		Call: func(a []float64) (float64, error) { return SteelLossAfter(a[0], a[1]) },
	}),
	ranged(Function{
		Name: "dew_point",
		Params: []Param{
			{Name: "air temperature", Unit: "C", Low: -20, High: 60, Direction: Rising},
			{Name: "humidity", Unit: "%", Low: 10, High: 100, Direction: Rising},
		},
		Low: -45, High: 60, Unit: "C",
		Doc: "temperature below which metal sweats", Source: "Magnus formula, WMO constants",
		Call: func(a []float64) (float64, error) { return DewPoint(a[0], a[1]) },
	}),
}

var rubberFunctions = []Function{
	ranged(Function{
		Name: "rubber_first_years", Params: []Param{coded("storage group", Rising, 1, 2, 3)},
		Low: 5, High: 10, Unit: "years",
		Doc: "how long rubber may lie in store before first use; group 1 for A to 3 for C", Source: "ISO 2230:2002",
		Call: func(a []float64) (float64, error) { first, _, err := RubberStorage(a[0]); return first, err },
	}),
	ranged(Function{
		Name: "rubber_all_years", Params: []Param{coded("storage group", Rising, 1, 2, 3)},
		Low: 7, High: 15, Unit: "years",
		Doc: "the same with the extension after an inspection", Source: "ISO 2230:2002",
		Call: func(a []float64) (float64, error) { _, all, err := RubberStorage(a[0]); return all, err },
	}),
	ranged(Function{
		Name: "ageing_factor",
		Params: []Param{
			{Name: "activation energy", Unit: "eV", Low: 0.5, High: 1.2, Direction: Mixed},
			{Name: "temperature in use", Unit: "C", Low: -10, High: 50, Direction: Falling},
			{Name: "temperature compared", Unit: "C", Low: -10, High: 50, Direction: Rising},
		},
		Low: 0, High: 19000,
		Doc: "how many times faster ageing runs at the temperature compared; rubber about 0.9 eV", Source: "Arrhenius law as in JEDEC JEP122",
		Call: func(a []float64) (float64, error) { return AgeingFactor(a[0], a[1], a[2]) },
	}),
}

var engineFunctions = []Function{
	ranged(Function{
		Name: "glycol_freezing_by_volume", Params: []Param{{Name: "glycol by volume", Unit: "%", Low: 0, High: 57, Direction: Falling}},
		Low: -48.6, High: 0, Unit: "C",
		Doc: "freezing point of coolant from its % glycol by volume", Source: "ASHRAE Fundamentals 2009, 31, Table 4 (fitted)",
		Call: func(a []float64) (float64, error) { return GlycolFreezingByVolume(a[0]) },
	}),
	ranged(Function{
		Name: "glycol_freezing_by_mass", Params: []Param{{Name: "glycol by mass", Unit: "%", Low: 0, High: 60, Direction: Falling}},
		Low: -48.6, High: 0, Unit: "C",
		Doc: "freezing point of coolant from its % glycol by mass", Source: "ASHRAE Fundamentals 2009, 31, Table 4 (fitted)",
		Call: func(a []float64) (float64, error) { return GlycolFreezing(a[0]) },
	}),
	ranged(Function{
		Name: "cylinder_share",
		Params: []Param{
			{Name: "lowest compression", Low: 0, High: 800, Direction: Rising},
			{Name: "highest compression", Low: 1, High: 800, Direction: Falling},
		},
		Low: 0, High: 100, Unit: "%",
		Doc: "the lowest compression in % of the highest, one unit", Source: "TM 5-4210-230-14&P-1, engine addendum 2",
		Call: func(a []float64) (float64, error) { return CylinderShare(a[0], a[1]) },
	}),
	ranged(Function{
		Name: "cylinder_lag",
		Params: []Param{
			{Name: "lowest compression", Low: 0, High: 800, Direction: Falling},
			{Name: "mean compression", Low: 1, High: 800, Direction: Rising},
		},
		Low: 0, High: 100, Unit: "%",
		Doc: "by how many % the lowest compression lies under the mean, one unit", Source: "TM 1-1500-204-23-1",
		Call: func(a []float64) (float64, error) { return CylinderLag(a[0], a[1]) },
	}),
	ranged(Function{
		Name: "leakdown_percent",
		Params: []Param{
			{Name: "pressure put in", Low: 10, High: 200, Direction: Rising},
			{Name: "pressure held", Low: 0, High: 200, Direction: Falling},
		},
		Low: 0, High: 100, Unit: "%",
		Doc: "loss of a cylinder from the pressure put in and held, one unit", Source: "FAA AC 43.13-1B, 8-14",
		Call: func(a []float64) (float64, error) { return LeakDown(a[0], a[1]) },
	}),
	ranged(Function{
		Name: "sea_level_compression",
		Params: []Param{
			{Name: "compression", Low: 0, High: 700, Direction: Rising},
			{Name: "altitude", Unit: "m", Low: -500, High: 4000, Direction: Rising},
		},
		Low: 0, High: 1151, Unit: "",
		Doc: "what a compression would read at sea level, in its own unit", Source: "ISA",
		Call: func(a []float64) (float64, error) { return SeaLevelCompression(a[0], a[1]) },
	}),
}

var batteryFunctions = []Function{
	ranged(Function{
		Name: "battery_charge", Params: []Param{{Name: "battery voltage at rest", Unit: "V", Low: 7, High: 13.2, Direction: Rising}},
		Low: 0, High: 100, Unit: "%",
		Doc: "charge of a 12 V battery from its voltage at rest", Source: "TM 5-3805-262-20",
		Call: func(a []float64) (float64, error) { return BatteryCharge(a[0]) },
	}),
	ranged(Function{
		Name: "gravity_corrected",
		Params: []Param{
			{Name: "hydrometer reading", Low: 1, High: 1.4, Direction: Rising},
			{Name: "temperature of the acid", Unit: "C", Low: -40, High: 60, Direction: Rising},
		},
		Low: 0.95, High: 1.43,
		Doc: "specific gravity at 80 F", Source: "TM 5-4210-230-14&P-1",
		Call: func(a []float64) (float64, error) { return GravityAt80F(a[0], a[1]) },
	}),
	ranged(Function{
		Name: "battery_charge_by_gravity", Params: []Param{{Name: "specific gravity", Low: 1, High: 1.3, Direction: Rising}},
		Low: 0, High: 100, Unit: "%",
		Doc: "charge of a battery from its specific gravity at 80 F", Source: "TM 5-1185, Table II",
		Call: func(a []float64) (float64, error) { return BatteryChargeByGravity(a[0]) },
	}),
	ranged(Function{
		Name: "gravity_of_charge", Params: []Param{{Name: "charge", Unit: "%", Low: 0, High: 100, Direction: Rising}},
		Low: 1.13, High: 1.28,
		Doc: "specific gravity of a battery from its charge; a flat one has this at the best", Source: "TM 5-1185, Table II",
		Call: func(a []float64) (float64, error) { return GravityOfCharge(a[0]) },
	}),
	ranged(Function{
		Name: "battery_freezing", Params: []Param{{Name: "specific gravity", Low: 1, High: 1.28, Direction: Falling}},
		Low: -68, High: 0, Unit: "C",
		Doc: "temperature at which a battery's acid freezes", Source: "TM 5-1185, Table III, and two more manuals",
		Call: func(a []float64) (float64, error) { return BatteryFreezing(a[0]) },
	}),
}
