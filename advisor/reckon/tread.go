package reckon

import "fmt"

// inchMM is the inch in mm, exact.
const inchMM = 25.4

// TreadRule is the least depth of tread in mm that a country asks of a kind of
// vehicle, with where it is measured.
type TreadRule struct {
	Country, Vehicle string
	Depth            float64
	Where, Source    string
}

// TreadRules lists the limits.
//
// Source: in each row.
var TreadRules = []TreadRule{
	{"GB", "car", 1.6, "the middle three quarters of the tread, all the way round", "Construction and Use Regulations 1986, reg. 27"},
	{"GB", "motorcycle", 1.0, "three quarters of the tread, all the way round", "Construction and Use Regulations 1986, reg. 27"},
	{"GB", "over 3500 kg", 1.0, "three quarters of the tread, all the way round", "Construction and Use Regulations 1986, reg. 27"},
	{"US", "car", 2.0 / 32 * inchMM, "two grooves side by side, at three places", "RCW 46.37.425(4); 49 CFR 570.9(a) (the latter recalled)"},
	{"US", "heavy, front axle", 4.0 / 32 * inchMM, "two grooves side by side, at three places", "49 CFR 570.62(a)"},
	{"US", "heavy, other axles", 2.0 / 32 * inchMM, "two grooves side by side, at three places", "49 CFR 570.62(a)"},
}

// TreadLimit gives the rule for a country ("GB" or "US") and a kind of
// vehicle. It errs when none is listed. The US rules are a model that states
// adopt or not.
//
// Source: in the rule.
func TreadLimit(country, vehicle string) (TreadRule, error) {
	for _, r := range TreadRules {
		if r.Country == country && r.Vehicle == vehicle {
			return r, nil
		}
	}
	return TreadRule{}, fmt.Errorf("no tread limit is listed for a %s in %s", vehicle, country)
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

// TenYearRule says whether the ban of February 2021 on tyres over ten years
// old in Great Britain reaches a kind of vehicle, and on which wheels. Cars
// are not reached: their old tyres are a matter of judgement, not of law. It
// errs for a kind that it does not know.
//
// Source: Construction and Use (Amendment) Regulations 2020.
func TenYearRule(vehicle string) (reached bool, wheels string, err error) {
	switch vehicle {
	case "car", "motorcycle":
		return false, "", nil
	case "goods over 3500 kg", "bus", "coach":
		return true, "front axle", nil
	case "minibus":
		return true, "all single wheels", nil
	}
	return false, "", fmt.Errorf("no tyre age rule is listed for a %s", vehicle)
}
