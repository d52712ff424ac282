package reckon

import "fmt"

// Densities in kg/l of ethylene glycol and of water at 20 C (recalled).
const (
	glycolDensity = 1.1132
	waterDensity  = 0.9982
)

// thinnest is where the fitted curve begins, in % by mass; below it a straight
// line runs to 0 C at no glycol.
const thinnest = 5

// GlycolByMass gives the % by mass of ethylene glycol in water that is a % by
// volume (0 to 100), measured cold before mixing.
//
// Source: densities at 20 C (recalled).
func GlycolByMass(volume float64) (float64, error) {
	if err := within("glycol by volume", volume, 0, 100, "%"); err != nil {
		return 0, err
	}
	return 100 * volume * glycolDensity / (volume*glycolDensity + (100-volume)*waterDensity), nil
}

// GlycolFreezing gives the freezing point in C of ethylene glycol in water
// from its % by mass (0 to 60). Above 60 the freezing point rises again.
// Melinder's table is colder by up to 2.3 K at 50 %: the warmer is used.
//
// Source: cubic fitted to ASHRAE Handbook Fundamentals 2009, chapter 31,
// Table 4.
func GlycolFreezing(mass float64) (float64, error) {
	if mass > 60 && mass <= 100 {
		return 0, fmt.Errorf("above 60 %% glycol by mass the freezing point rises again, and %s %% is not reckoned", plain(mass))
	}
	if err := within("glycol by mass", mass, 0, 60, "%"); err != nil {
		return 0, err
	}
	if mass < thinnest {
		return glycolCurve(thinnest) * mass / thinnest, nil
	}
	return glycolCurve(mass), nil
}

func glycolCurve(x float64) float64 {
	return 0.054792 + x*(-0.29922+x*(-0.0027478-9.5960e-5*x))
}

// GlycolFreezingByVolume gives the freezing point in C of ethylene glycol in
// water from its % by volume (0 to 57, which is 60 by mass).
//
// Source: as GlycolByMass and GlycolFreezing.
func GlycolFreezingByVolume(volume float64) (float64, error) {
	if err := within("glycol by volume", volume, 0, 57, "%"); err != nil {
		return 0, err
	}
	mass, err := GlycolByMass(volume)
	if err != nil {
		return 0, err
	}
	return GlycolFreezing(mass)
}
