package reckon

import (
	"fmt"
	"math"
)

// The constants of the Magnus formula over water in the form of the WMO.
const (
	magnusPa    = 611.2
	magnusSlope = 17.62
	magnusC     = 243.12
)

// MarkedRustHumidity is the humidity in % above which iron in clean air rusts
// markedly (about; a handbook figure quoted in a review).
const MarkedRustHumidity = 60

// SaturationPressure gives the pressure in Pa of water vapour over water at a
// temperature in C (-45 to 60). Within 0.3 % of the ASHRAE table from 0 to 50;
// over ice the pressure is lower by about 5 % at -5 and 18 % at -20.
//
// Source: Magnus formula with the WMO constants (Sonntag 1990).
func SaturationPressure(temperature float64) (float64, error) {
	if err := within("temperature", temperature, -45, 60, "C"); err != nil {
		return 0, err
	}
	return magnusPa * math.Exp(magnusSlope*temperature/(magnusC+temperature)), nil
}

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

// Condenses says whether metal of a temperature in C sweats in air of a
// temperature in C and a humidity in %, and the dew point in C that decides.
// Below freezing it is on the late side: frost forms a little earlier.
//
// Source: as DewPoint.
func Condenses(air, humidity, metal float64) (sweats bool, dew float64, err error) {
	if err := within("metal temperature", metal, -60, 200, "C"); err != nil {
		return false, 0, err
	}
	dew, err = DewPoint(air, humidity)
	return err == nil && metal < dew, dew, err
}
