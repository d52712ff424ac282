package reckon

import (
	"fmt"
	"math"
)

// Metal is a metal for which ISO 9224 gives exponents.
type Metal int

// The four standard metals.
const (
	Steel Metal = iota
	Zinc
	Copper
	Aluminium
)

// metals names the metals, by value.
var metals = []string{"carbon steel", "zinc", "copper", "aluminium"}

// String gives the metal's name.
func (m Metal) String() string { return metals[m] }

// Category is a corrosivity category of the air, C1 (very low) to CX (extreme).
type Category int

// The categories of ISO 9223:2012, Table 1.
const (
	C1 Category = iota + 1
	C2
	C3
	C4
	C5
	CX
)

// String gives the category as the standard writes it.
func (c Category) String() string { return [...]string{"C1", "C2", "C3", "C4", "C5", "CX"}[c-1] }

// upperBounds holds the greatest first-year loss of each category in um.
// Aluminium is bounded by mass only, since it pits.
var upperBounds = map[Metal][6]float64{
	Steel:  {1.3, 25, 50, 80, 200, 700},
	Zinc:   {0.1, 0.7, 2.1, 4.2, 8.4, 25},
	Copper: {0.1, 0.6, 1.3, 2.8, 5.6, 10},
}

// UniformLossNote is what must stand beside any figure of loss shown.
const UniformLossNote = "This is even loss over open metal. Box sections, seams, pits, mud traps and mixed metals go their own way: " +
	"it ranks shelters and explains, and never says that a panel is thick enough."

// OilyFilmNote is what can be said of metal under oil or wax; no figure is
// given because neither standard has one.
const OilyFilmNote = "A whole film of oil or wax keeps air and salt off the metal beneath. No published figure says by how much, so none is reckoned."

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

// SteelLossSpread gives the lowest and highest first-year loss to be expected
// when SteelLoss gives loss: a third less and half more.
//
// Source: ISO 9223:2012, Table A.1 (recalled).
func SteelLossSpread(loss float64) (low, high float64) { return loss * 0.67, loss * 1.5 }

// CategoryOfLoss gives the category in which a first-year loss in um falls;
// a loss on a bound belongs to the lower category. It errs above the bound of
// CX, below zero, and for aluminium.
//
// Source: ISO 9223:2012, Table 2.
func CategoryOfLoss(m Metal, loss float64) (Category, error) {
	bounds, ok := upperBounds[m]
	if !ok {
		return 0, fmt.Errorf("ISO 9223 bounds %s by mass only", m)
	}
	if err := within("first-year loss of "+m.String(), loss, 0, bounds[5], "um"); err != nil {
		return 0, err
	}
	for i, upper := range bounds {
		if loss <= upper {
			return C1 + Category(i), nil
		}
	}
	return CX, nil
}

// Bounds gives the losses in um over the first year between which a category
// lies (above low, up to high). It errs for aluminium.
//
// Source: ISO 9223:2012, Table 2.
func Bounds(m Metal, c Category) (low, high float64, err error) {
	bounds, ok := upperBounds[m]
	if !ok {
		return 0, 0, fmt.Errorf("ISO 9223 bounds %s by mass only", m)
	}
	if c < C1 || c > CX {
		return 0, 0, fmt.Errorf("there is no category %d", int(c))
	}
	if c > C1 {
		low = bounds[c-2]
	}
	return low, bounds[c-1], nil
}
