package reckon

// brakeFluid is a class of brake fluid with its least boiling points in C: as
// delivered, and wet (after taking up a set share of water, about 3.7 % by
// mass, recalled). Number is the class as the standard counts it; recalled marks
// figures not read in the source.
type brakeFluid struct {
	number   float64
	dry, wet float64
	recalled bool
}

// brakeFluids lists the classes.
//
// Source: 49 CFR 571.116 (FMVSS 116), S5.1.1 and S5.1.2. One maker's table
// has 205 C for DOT 4 dry, which contradicts the standard and is not used.
var brakeFluids = []brakeFluid{
	{3, 205, 140, false},
	{4, 230, 155, false},
	{5, 260, 180, true}, // silicone
	{5.1, 260, 180, true},
}

// BrakeFluidBoiling gives the least temperatures in C at which a class of brake
// fluid (3, 4, 5 or 5.1) may boil: as delivered, and wet. It errs for a class
// that the standard does not have.
//
// No function here tells the water in the fluid from its age: TRL report LR903
// looked at 1,000 cars and found no firm relation, with more than half at 3 %
// or over and some new fluid wet. Measure it, or renew it.
//
// Source: 49 CFR 571.116 (FMVSS 116), S5.1.1 and S5.1.2 (5 and 5.1 recalled).
func BrakeFluidBoiling(class float64) (dry, wet float64, err error) {
	for _, f := range brakeFluids {
		if f.number == class {
			return f.dry, f.wet, nil
		}
	}
	return 0, 0, notListed("brake fluid class", class)
}

// VapourLockPoint gives the temperature in C at which fluid with a measured
// water content in % by mass (0 to 10) may lock by vapour: about 250 with
// none, 180 at 1 %, 145 from 3 %. Between those it keeps to the lower figure,
// because a straight line would be too hopeful.
//
// Source: TRL report LR903.
func VapourLockPoint(water float64) (float64, error) {
	if err := within("water content", water, 0, 10, "%"); err != nil {
		return 0, err
	}
	switch {
	case water == 0:
		return 250, nil
	case water <= 1:
		return 180, nil
	}
	return 145, nil
}
