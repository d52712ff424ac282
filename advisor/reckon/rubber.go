package reckon

import (
	"fmt"
	"math"
	"strings"
)

// RubberGroup is a storage group of rubbers: how many years parts may lie
// before first use, and how many more after an inspection.
type RubberGroup struct {
	Name             string
	Polymers         []string
	First, Extension int
}

// RubberGroups lists the storage groups. Another extract of the same standard
// prints 7, 9 and 12 years as the upper end of the first period; the shorter
// figures are kept.
//
// Source: ISO 2230:2002, clauses 4, 6 and 7.
var RubberGroups = []RubberGroup{
	{"A", []string{"NR", "IR", "BR", "SBR", "AU", "EU"}, 5, 2},
	{"B", []string{"NBR", "HNBR", "CR", "IIR", "ACM", "ECO"}, 7, 3},
	{"C", []string{"EPDM", "FKM", "FFKM", "VMQ", "FVMQ", "CSM"}, 10, 5},
}

// RubberStorageNote is what must stand beside a storage period.
const RubberStorageNote = "The periods are for parts in store, below 25 C and dry, never fitted. Fitted rubber is stretched, oiled and warmed: " +
	"past the period is a reason to inspect or renew it, not the end of a life."

// RubberStorage gives the storage group of a rubber by its short name (NR,
// NBR, EPDM and so on, in any case). It errs for a rubber that the standard
// does not list.
//
// Source: ISO 2230:2002, clause 4.
func RubberStorage(polymer string) (RubberGroup, error) {
	for _, g := range RubberGroups {
		for _, p := range g.Polymers {
			if strings.EqualFold(p, strings.TrimSpace(polymer)) {
				return g, nil
			}
		}
	}
	return RubberGroup{}, fmt.Errorf("ISO 2230 has no group for rubber %q", polymer)
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

// TenDegreeFactor gives the same by the rule that ageing runs q10 times faster
// (1 to 5; 2 is usual) for every 10 C, temperatures in C (-50 to 150).
//
// Source: ASTM F1980, method.
func TenDegreeFactor(q10, use, stress float64) (float64, error) {
	if err := firstOf(
		within("factor for 10 C", q10, 1, 5, ""),
		within("temperature in use", use, -50, 150, "C"),
		within("temperature compared", stress, -50, 150, "C"),
	); err != nil {
		return 0, err
	}
	return math.Pow(q10, (stress-use)/10), nil
}
