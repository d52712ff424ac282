package reckon

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
