package reckon

import "math"

// classBounds holds the greatest loss of carbon steel in um over the first year
// in each class of the air, C1 (very low) to CX (extreme).
var classBounds = [6]float64{1.3, 25, 50, 80, 200, 700}

// SteelLossInClass gives the most that bare carbon steel loses in um over the
// first year in a class of the air by its number (1 for C1 to 6 for CX), as a
// place is given one where nothing has been measured: C1 heated and dry; C2
// unheated, damp forms rarely; C3 damp forms now and then, or a town; C4 damp
// forms often, salted roads, or the coast out of the spray. It errs for another
// number. Even loss over open metal only: box sections, seams, pits, mud traps
// and mixed metals go their own way. Oil or wax keep air and salt off, by how
// much no published figure says.
//
// Source: ISO 9223:2012, Table 2 (bounds) and Table C.1 (places).
func SteelLossInClass(class float64) (float64, error) {
	for i, bound := range classBounds {
		if class == float64(i+1) {
			return bound, nil
		}
	}
	return 0, notListed("class of the air", class)
}

// SteelLoss gives the loss of bare carbon steel in um over the first year
// outdoors, from the yearly mean temperature in C (-17.1 to 28.7), the yearly
// mean humidity in % (34 to 93) and the deposition of sulphur dioxide (0.7 to
// 150.4) and chloride (0.4 to 760.5) in mg/(m2 d). A garage is not outdoors:
// take a shelter's category there.
//
// Source: ISO 9223:2012, 8.2 and Table 3 (range).
func SteelLoss(temperature, humidity, sulphur, chloride float64) (float64, error) {
	if err := firstOf(
		within("yearly mean temperature", temperature, -17.1, 28.7, "C"),
		within("yearly mean humidity", humidity, 34, 93, "%"),
		within("sulphur dioxide deposition", sulphur, 0.7, 150.4, "mg/(m2 d)"),
		within("chloride deposition", chloride, 0.4, 760.5, "mg/(m2 d)"),
	); err != nil {
		return 0, err
	}
	warmth := 0.150 * (temperature - 10)
	if temperature > 10 {
		warmth = -0.054 * (temperature - 10)
	}
	dry := 1.77 * math.Pow(sulphur, 0.52) * math.Exp(0.020*humidity+warmth)
	salt := 0.102 * math.Pow(chloride, 0.62) * math.Exp(0.033*humidity+0.040*temperature)
	return dry + salt, nil
}
