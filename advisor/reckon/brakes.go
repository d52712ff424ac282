package reckon

import "fmt"

// Brake limits of the US model inspection standard and a state law that
// follows it. The bonded limit differs by the class of vehicle: both are kept.
//
// Source: 49 CFR 570.55(b), 570.59(c); RCW 46.37.360.
const (
	PedalReserveLimit = 20.0        // % of the pedal's travel that must be left
	LiningOverRivets  = inchMM / 32 // mm over the heads of the rivets
	BondedLiningHeavy = inchMM / 16 // mm over the shoe, heavy vehicles
	BondedLiningCar   = inchMM / 32 // mm over the shoe, cars (RCW 46.37.360(5))
	PedalHoldForce    = 125.0       // lbf on the pedal
	PedalHoldSeconds  = 10.0        // without a further fall
)

// PedalReserve gives how much of a brake pedal's travel is left in %, from its
// height over the floor free and pressed, both in one unit (free above 0 to
// 400, pressed 0 to free). 20 % or more is called for.
//
// Source: 49 CFR 570.55(c); RCW 46.37.360.
func PedalReserve(free, pressed float64) (float64, error) {
	if err := firstOf(
		within("free pedal height", free, 0, 400, ""),
		within("pressed pedal height", pressed, 0, 400, ""),
	); err != nil {
		return 0, err
	}
	if free == 0 || pressed > free {
		return 0, fmt.Errorf("a pedal %s high when free cannot stand at %s when pressed", plain(free), plain(pressed))
	}
	return 100 * pressed / free, nil
}

// StoppingDistance gives the way in m to a stop from a speed in m/s (0 to 70)
// at a steady deceleration in m/s2 (0.1 to 15), no time to react included.
//
// Source: d = v^2 / 2a; tables of state laws agree (RCW 46.37.528).
func StoppingDistance(speed, deceleration float64) (float64, error) {
	if err := firstOf(
		within("speed", speed, 0, 70, "m/s"),
		within("deceleration", deceleration, 0.1, 15, "m/s2"),
	); err != nil {
		return 0, err
	}
	return speed * speed / (2 * deceleration), nil
}

// StoppingDeceleration gives the mean deceleration in m/s2 of a stop from a
// speed in m/s (0 to 70) within a way in m (0.1 to 1000).
//
// Source: a = v^2 / 2d.
func StoppingDeceleration(speed, distance float64) (float64, error) {
	if err := firstOf(
		within("speed", speed, 0, 70, "m/s"),
		within("distance", distance, 0.1, 1000, "m"),
	); err != nil {
		return 0, err
	}
	return speed * speed / (2 * distance), nil
}

// BrakingForce gives the braking force in % of the weight that goes with a
// deceleration in m/s2 (0 to 15).
//
// Source: a / g; RCW 46.37.528 prints 43.5 % beside 14 ft/s2.
func BrakingForce(deceleration float64) (float64, error) {
	if err := within("deceleration", deceleration, 0, 15, "m/s2"); err != nil {
		return 0, err
	}
	return 100 * deceleration / standardGravity, nil
}
