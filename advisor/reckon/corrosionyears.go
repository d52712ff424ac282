package reckon

import "math"

// SteelLossAfter gives the loss of bare carbon steel in um after some years (1
// to 100) from that of the first year in um (0 to 700): a power law with the
// usual exponent 0.523 up to 20 years, and its tangent beyond. The standard's
// own table continues the power law instead, which gives less; the clause is
// followed.
//
// Source: ISO 9224:2012, equations for up to and over 20 years, Table 2.
func SteelLossAfter(first, years float64) (float64, error) {
	if err := firstOf(
		within("first-year loss", first, 0, 700, "um"),
		within("years", years, 1, 100, "years"),
	); err != nil {
		return 0, err
	}
	const b = 0.523
	if years <= 20 {
		return first * math.Pow(years, b), nil
	}
	slope := b * math.Pow(20, b-1)
	return first * (math.Pow(20, b) + slope*(years-20)), nil
}
