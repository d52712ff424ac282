package reckon

// Functions lists what conditions may call, by name.
var Functions = []Function{
	ranged(Function{
		Name: "steel_loss",
		Params: []Param{
			{Name: "yearly mean temperature", Unit: "C", Low: -17.1, High: 28.7},
			{Name: "yearly mean humidity", Unit: "%", Low: 34, High: 93, Direction: Rising},
			{Name: "sulphur dioxide deposition", Unit: "mg/(m2 d)", Low: 0.7, High: 150.4, Direction: Rising},
			{Name: "chloride deposition", Unit: "mg/(m2 d)", Low: 0.4, High: 760.5, Direction: Rising},
		},
		Low: 0, High: 490, Unit: "um",
		Doc: "bare steel lost outdoors in the first year", Source: "ISO 9223:2012, 8.2",
		Call: func(a []float64) (float64, error) { return SteelLoss(a[0], a[1], a[2], a[3]) },
	}),
	ranged(Function{
		Name: "steel_loss_after",
		Params: []Param{
			{Name: "first-year loss", Unit: "um", Low: 0, High: 700, Direction: Rising},
			{Name: "years", Unit: "years", Low: 1, High: 100, Direction: Rising},
		},
		Low: 0, High: 10400, Unit: "um",
		Doc: "bare steel lost after some years, usual exponent", Source: "ISO 9224:2012",
		Call: func(a []float64) (float64, error) { return LongTermLoss(a[0], exponents[Steel][0], a[1]) },
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
		Name: "coolant_boiling",
		Params: []Param{
			{Name: "cap pressure", Unit: "psi", Low: 0, High: 30, Direction: Rising},
			{Name: "altitude", Unit: "m", Low: -500, High: 4000, Direction: Falling},
		},
		Low: 86, High: 136, Unit: "C",
		Doc: "temperature at which water boils under a cooling cap", Source: "IAPWS R7-97; ISA",
		Call: func(a []float64) (float64, error) { return CapBoiling(a[0], a[1]) },
	}),
	ranged(Function{
		Name: "battery_charge", Params: []Param{{Name: "battery voltage at rest", Unit: "V", Low: 7, High: 13.2, Direction: Rising}},
		Low: 0, High: 100, Unit: "%",
		Doc: "charge of a 12 V battery from its voltage at rest", Source: "TM 5-3805-262-20",
		Call: func(a []float64) (float64, error) { return BatteryCharge(a[0]) },
	}),
	ranged(Function{
		Name: "battery_charge_by_gravity", Params: []Param{{Name: "specific gravity", Low: 1, High: 1.3, Direction: Rising}},
		Low: 0, High: 100, Unit: "%",
		Doc: "charge of a battery from its specific gravity at 80 F", Source: "TM 5-1185, Table II",
		Call: func(a []float64) (float64, error) { return BatteryChargeByGravity(a[0]) },
	}),
	ranged(Function{
		Name: "battery_freezing", Params: []Param{{Name: "specific gravity", Low: 1, High: 1.28, Direction: Falling}},
		Low: -68, High: 0, Unit: "C",
		Doc: "temperature at which a battery's acid freezes", Source: "TM 5-1185, Table III, and two more manuals",
		Call: func(a []float64) (float64, error) { return BatteryFreezing(a[0]) },
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
		Name: "altitude_pressure", Params: []Param{{Name: "altitude", Unit: "m", Low: -500, High: 10000, Direction: Falling}},
		Low: 26, High: 108, Unit: "kPa",
		Doc: "standard pressure of the air", Source: "ISA",
		Call: func(a []float64) (float64, error) { return AltitudePressure(a[0]) },
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
	ranged(Function{
		Name: "idle_vacuum", Params: []Param{{Name: "altitude", Unit: "m", Low: 0, High: 3000, Direction: Falling}},
		Low: 10, High: 20, Unit: "inHg",
		Doc: "steady vacuum of a sound engine at idle", Source: "OD1001",
		Call: func(a []float64) (float64, error) { return IdleVacuum(a[0]) },
	}),
	ranged(Function{
		Name: "steering_lash_limit", Params: []Param{{Name: "steering wheel diameter", Unit: "in", Low: 10, High: 22, Direction: Rising}},
		Low: 2, High: 2.75, Unit: "in",
		Doc: "most free movement at the rim of the steering wheel", Source: "49 CFR 570.7(a)",
		Call: func(a []float64) (float64, error) { return SteeringLashLimit(a[0]) },
	}),
	ranged(Function{
		Name: "pedal_reserve",
		Params: []Param{
			{Name: "free pedal height", Low: 1, High: 400, Direction: Falling},
			{Name: "pressed pedal height", Low: 0, High: 400, Direction: Rising},
		},
		Low: 0, High: 100, Unit: "%",
		Doc: "brake pedal travel left, heights over the floor in one unit", Source: "49 CFR 570.55(c)",
		Call: func(a []float64) (float64, error) { return PedalReserve(a[0], a[1]) },
	}),
}

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
