package reckon

var chassisFunctions = []Function{
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
	ranged(Function{
		Name: "brake_fluid_dry_boils", Params: []Param{coded("class", Rising, 3, 4, 5, 5.1)},
		Low: 205, High: 260, Unit: "C",
		Doc: "least boiling point of a class of brake fluid as delivered", Source: "49 CFR 571.116, S5.1.1",
		Call: func(a []float64) (float64, error) { dry, _, err := BrakeFluidBoiling(a[0]); return dry, err },
	}),
	ranged(Function{
		Name: "brake_fluid_wet_boils", Params: []Param{coded("class", Rising, 3, 4, 5, 5.1)},
		Low: 140, High: 180, Unit: "C",
		Doc: "the same with a set share of water in it", Source: "49 CFR 571.116, S5.1.2",
		Call: func(a []float64) (float64, error) { _, wet, err := BrakeFluidBoiling(a[0]); return wet, err },
	}),
	ranged(Function{
		Name: "vapour_lock_point", Params: []Param{{Name: "water content", Unit: "%", Low: 0, High: 10, Direction: Falling}},
		Low: 145, High: 250, Unit: "C",
		Doc: "temperature at which brake fluid may lock by vapour, from its measured water", Source: "TRL report LR903",
		Call: func(a []float64) (float64, error) { return VapourLockPoint(a[0]) },
	}),
	ranged(Function{
		Name: "tread_limit", Params: []Param{coded("country", Falling, 826, 840)},
		Low: 1.5875, High: 1.6, Unit: "mm",
		Doc: "least tread of a car's tyre; country by its number in ISO 3166-1, 826 the United Kingdom, 840 the United States", Source: "Construction and Use Regulations 1986, reg. 27; RCW 46.37.425(4)",
		Call: func(a []float64) (float64, error) { return TreadLimit(a[0]) },
	}),
	ranged(Function{
		Name: "cut_limit", Params: []Param{{Name: "section width", Unit: "mm", Low: 80, High: 500, Direction: Rising}},
		Low: 25, High: 50, Unit: "mm",
		Doc: "longest cut of a tyre that may reach the cords, Great Britain", Source: "Construction and Use Regulations 1986, reg. 27",
		Call: func(a []float64) (float64, error) { return CutLimit(a[0]) },
	}),
}
