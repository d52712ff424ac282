package reckon

import (
	"fmt"
	"math"
)

// exponents holds B1 (usual) and B2 (two standard deviations above, for a
// cautious estimate) of each metal.
var exponents = [4][2]float64{
	Steel:     {0.523, 0.575},
	Zinc:      {0.813, 0.873},
	Copper:    {0.667, 0.726},
	Aluminium: {0.728, 0.807},
}

// Exponents gives the exponents B1 and B2 with which a metal's loss grows over
// the years.
//
// Source: ISO 9224:2012, Tables 2 and 3.
func Exponents(m Metal) (b1, b2 float64) { return exponents[m][0], exponents[m][1] }

// LongTermLoss gives the loss in um after some years (1 to 100) from that of
// the first year in um (0 to 700) and an exponent (0 to 1): the power law up
// to 20 years and its tangent beyond. The standard's own table continues the
// power law instead, which gives less; the clause is followed.
//
// Source: ISO 9224:2012, equations for up to and over 20 years.
func LongTermLoss(first, exponent, years float64) (float64, error) {
	if years <= 20 {
		return PowerLawLoss(first, exponent, years)
	}
	if err := growing(first, exponent, years); err != nil {
		return 0, err
	}
	slope := exponent * math.Pow(20, exponent-1)
	return first * (math.Pow(20, exponent) + slope*(years-20)), nil
}

// PowerLawLoss gives the loss in um as the table of the standard continues it
// beyond 20 years. Kept for comparison: LongTermLoss is the one to use.
//
// Source: ISO 9224:2012, Table 3.
func PowerLawLoss(first, exponent, years float64) (float64, error) {
	if err := growing(first, exponent, years); err != nil {
		return 0, err
	}
	return first * math.Pow(years, exponent), nil
}

// growing guards the figures of a loss over years.
func growing(first, exponent, years float64) error {
	return firstOf(
		within("first-year loss", first, 0, 700, "um"),
		within("exponent", exponent, 0, 1, ""),
		within("years", years, 1, 100, "years"),
	)
}

// Shelter is a place where metal stands, with the category that the standard
// gives it where nothing has been measured.
type Shelter struct {
	ID, Words string
	Indoors   bool
	Category  Category
	Source    string
}

// Shelters lists the named places, indoors first, each by rising category.
//
// Source: ISO 9223:2012, Table C.1.
var Shelters = []Shelter{
	{"indoor_heated", "heated and dry", true, C1, shelterTable},
	{"indoor_rare_damp", "unheated, damp forms rarely, clean air", true, C2, shelterTable},
	{"indoor_some_damp", "unheated, damp forms now and then", true, C3, shelterTable},
	{"indoor_often_damp", "damp forms often", true, C4, shelterTable},
	{"outdoor_country", "outdoors, sulphur dioxide below 5 ug/m3", false, C2, shelterTable},
	{"outdoor_town", "outdoors, sulphur dioxide 5 to 30 ug/m3", false, C3, shelterTable},
	{"outdoor_industry", "outdoors, sulphur dioxide 30 to 90 ug/m3", false, C4, shelterTable},
	{"outdoor_salted", "outdoors, salted roads or the coast out of the spray", false, C4, shelterTable},
	{"outdoor_heavy_industry", "outdoors, sulphur dioxide 90 to 250 ug/m3", false, C5, shelterTable},
}

const shelterTable = "ISO 9223:2012, Table C.1"

// ShelterCategory gives the category of a named shelter. It errs for a name
// not among Shelters.
func ShelterCategory(id string) (Category, error) {
	for _, s := range Shelters {
		if s.ID == id {
			return s.Category, nil
		}
	}
	return 0, fmt.Errorf("no shelter is called %q", id)
}
