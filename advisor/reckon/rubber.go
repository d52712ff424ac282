package reckon

import "math"

// rubberGroups holds, for each storage group of rubbers from A, how many years
// parts may lie before first use, and how many more after an inspection: A
// natural rubber, SBR, polyurethane; B nitrile, chloroprene, butyl; C EPDM,
// fluorocarbon, silicone. Another extract of the same standard prints 7, 9 and
// 12 years as the upper end of the first period; the shorter figures are kept.
var rubberGroups = [3][2]float64{{5, 2}, {7, 3}, {10, 5}}

// RubberStorage gives the years that rubber of a storage group (1 for A to 3
// for C) may lie before first use, and the years in all with the extension
// after an inspection. It errs for another number. The periods are for parts in
// store, below 25 C and dry, never fitted; fitted rubber is stretched, oiled and
// warmed, and past the period is a reason to inspect or renew it, not the end of
// a life.
//
// Source: ISO 2230:2002, clauses 4, 6 and 7 (read in an extract).
func RubberStorage(group float64) (first, all float64, err error) {
	for i, years := range rubberGroups {
		if group == float64(i+1) {
			return years[0], years[0] + years[1], nil
		}
	}
	return 0, 0, notListed("rubber storage group", group)
}

// boltzmann is Boltzmann's constant in eV/K.
const boltzmann = 8.617e-5

// AgeingFactor gives how many times faster ageing runs at one temperature in C
// than at another (-50 to 300), for an activation energy in eV (0 to 3).
// Rubber is put at 0.8 to 1.0 eV (recalled).
//
// Source: Arrhenius law as in JEDEC JEP122.
func AgeingFactor(energy, use, stress float64) (float64, error) {
	if err := firstOf(
		within("activation energy", energy, 0, 3, "eV"),
		within("temperature in use", use, -50, 300, "C"),
		within("temperature compared", stress, -50, 300, "C"),
	); err != nil {
		return 0, err
	}
	return math.Exp(energy / boltzmann * (1/(use+273.15) - 1/(stress+273.15))), nil
}
