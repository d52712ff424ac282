package reckon

// NutFactor is a range of the factor K by the state of the thread.
type NutFactor struct {
	Thread    string
	Low, High float64
}

// NutFactors lists the usual ranges.
//
// Source: a design article citing textbooks.
var NutFactors = []NutFactor{
	{"dry", 0.20, 0.25},
	{"oiled", 0.15, 0.20},
	{"anti-seize", 0.12, 0.16},
}

// TorqueScatter is the share by which the preload from one torque scatters
// either way.
//
// Source: a fastener article; commonly accepted.
const TorqueScatter = 0.30

// ReusablePreload is the share of the proof load to which a joint that is
// opened again is tightened.
//
// Source: Shigley, Mechanical Engineering Design (quoted).
const ReusablePreload = 0.75

// BoltTorque gives the torque in N m for a preload in N (0 to 1e6) on a thread
// of a diameter in mm (2 to 64) with the factor K (0.05 to 0.5).
//
// Source: T = K D F, textbooks of machine design.
func BoltTorque(factor, diameter, preload float64) (float64, error) {
	if err := firstOf(nut(factor, diameter), within("preload", preload, 0, 1e6, "N")); err != nil {
		return 0, err
	}
	return factor * diameter / 1000 * preload, nil
}

// BoltPreload gives the preload in N to be expected from a torque in N m (0 to
// 5000), with the lowest and highest of its scatter.
//
// Source: as BoltTorque and TorqueScatter.
func BoltPreload(factor, diameter, torque float64) (low, mean, high float64, err error) {
	if err := firstOf(nut(factor, diameter), within("torque", torque, 0, 5000, "N m")); err != nil {
		return 0, 0, 0, err
	}
	mean = torque / (factor * diameter / 1000)
	return mean * (1 - TorqueScatter), mean, mean * (1 + TorqueScatter), nil
}

func nut(factor, diameter float64) error {
	return firstOf(within("factor K", factor, 0.05, 0.5, ""), within("thread diameter", diameter, 2, 64, "mm"))
}
