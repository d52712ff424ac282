package reckon

// inchMM is the inch in mm, exact.
const inchMM = 25.4

// treadRule is the least depth of tread in mm that a country asks of a car.
type treadRule struct{ country, depth float64 }

// treadRules lists the limits by the number of the country in ISO 3166-1: over
// the middle three quarters of the tread all the way round in Great Britain,
// in two grooves side by side at three places in the United States, where the
// rule is a model that states adopt or not.
//
// Source: Construction and Use Regulations 1986, reg. 27; RCW 46.37.425(4) and
// 49 CFR 570.9(a) (the last recalled).
var treadRules = []treadRule{{826, 1.6}, {840, 2.0 / 32 * inchMM}}

// TreadLimit gives the least depth of tread in mm of a car's tyre, by the
// country's number in ISO 3166-1 (826 the United Kingdom, 840 the United
// States). It errs for a country that is not listed.
//
// Source: as treadRules.
func TreadLimit(country float64) (float64, error) {
	for _, r := range treadRules {
		if r.country == country {
			return r.depth, nil
		}
	}
	return 0, notListed("tread limit's country", country)
}

// CutLimit gives the longest cut in mm that a tyre of a section width in mm
// (80 to 500) may have in Great Britain when it is deep enough to reach the
// cords: 25 mm or a tenth of the width, whichever is more.
//
// Source: Construction and Use Regulations 1986, reg. 27.
func CutLimit(width float64) (float64, error) {
	if err := within("section width", width, 80, 500, "mm"); err != nil {
		return 0, err
	}
	return max(25, width/10), nil
}
