package reckon

// Steering limits of the US model inspection standard, which binds where a
// state adopts it.
//
// Source: 49 CFR 570.7(b) and (d), 570.10 (number inferred).
const (
	LinkagePlayLimit = inchMM / 4 // mm at the tread, vehicles to 10,000 lb
	ToeLimit         = 1.5        // times the maker's figure
	RimRunoutLimit   = inchMM / 8 // mm at the bead, sideways and up and down
)

// SteeringLashLimit gives the most movement in inches at the rim of a steering
// wheel of a diameter in inches (10 to 22) before the road wheels turn: 2 in
// up to 16, and 2 1/4, 2 1/2 and 2 3/4 at 18, 20 and 22. The table has no rule
// between those; a straight line of 1/8 in for each inch is drawn.
//
// Source: 49 CFR 570.7(a), Table 1 (US model inspection standard).
func SteeringLashLimit(wheel float64) (float64, error) {
	if err := within("steering wheel diameter", wheel, 10, 22, "in"); err != nil {
		return 0, err
	}
	return 2 + max(0, wheel-16)/8, nil
}

// HeavyLinkagePlay gives the most play in mm at the tread of a vehicle over
// 10,000 lb by the rim's diameter at the bead in inches (8 to 30).
//
// Source: 49 CFR 570.60, Table 3.
func HeavyLinkagePlay(bead float64) (float64, error) {
	if err := within("rim diameter", bead, 8, 30, "in"); err != nil {
		return 0, err
	}
	switch {
	case bead <= 16:
		return inchMM / 4, nil
	case bead <= 18:
		return inchMM * 3 / 8, nil
	}
	return inchMM / 2, nil
}
