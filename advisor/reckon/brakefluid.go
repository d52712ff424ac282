package reckon

import (
	"fmt"
	"strings"
)

// BrakeFluid is a class of brake fluid with its least boiling points in C: as
// delivered, and wet (after taking up a set share of water, about 3.7 % by
// mass, recalled). Recalled marks figures not read in the source.
type BrakeFluid struct {
	Class    string
	Dry, Wet float64
	Silicone bool
	Recalled bool
}

// BrakeFluids lists the classes.
//
// Source: 49 CFR 571.116 (FMVSS 116), S5.1.1 and S5.1.2. One maker's table
// has 205 C for DOT 4 dry, which contradicts the standard and is not used.
var BrakeFluids = []BrakeFluid{
	{Class: "DOT 3", Dry: 205, Wet: 140},
	{Class: "DOT 4", Dry: 230, Wet: 155},
	{Class: "DOT 5", Dry: 260, Wet: 180, Silicone: true, Recalled: true},
	{Class: "DOT 5.1", Dry: 260, Wet: 180, Recalled: true},
}

// BrakeFluidClass gives a class by name ("DOT 4", "dot4", "5.1"). It errs for
// a class that the standard does not have.
//
// No function here tells the water in the fluid from its age: TRL report LR903
// looked at 1,000 cars and found no firm relation, with more than half at 3 %
// or over and some new fluid wet. Measure it, or renew it.
func BrakeFluidClass(name string) (BrakeFluid, error) {
	wanted := strings.TrimPrefix(strings.ReplaceAll(strings.ToUpper(name), " ", ""), "DOT")
	for _, f := range BrakeFluids {
		if strings.TrimPrefix(f.Class, "DOT ") == wanted {
			return f, nil
		}
	}
	return BrakeFluid{}, fmt.Errorf("no brake fluid class is called %q; known are DOT 3, 4, 5 and 5.1", name)
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
