package reckon

import (
	"fmt"
	"math"
)

// The constants of the Magnus formula over water in the form of the WMO.
const (
	magnusSlope = 17.62
	magnusC     = 243.12
)

// DewPoint gives the temperature in C at which moisture falls out of air of a
// temperature in C (-45 to 60) and a humidity in % (above 0, to 100). It errs
// where the dew point would lie below -45.
//
// Source: Magnus formula with the WMO constants (Sonntag 1990).
func DewPoint(temperature, humidity float64) (float64, error) {
	if err := firstOf(
		within("air temperature", temperature, -45, 60, "C"),
		within("humidity", humidity, 0, 100, "%"),
	); err != nil {
		return 0, err
	}
	if humidity == 0 {
		return 0, fmt.Errorf("air of 0 %% humidity has no dew point")
	}
	g := math.Log(humidity/100) + magnusSlope*temperature/(magnusC+temperature)
	dew := magnusC * g / (magnusSlope - g)
	if err := within("dew point", dew, -45, 60, "C"); err != nil {
		return 0, err
	}
	return dew, nil
}
