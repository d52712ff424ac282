package reckon

import "math"

// seaLevel is the standard pressure of the air at sea level in kPa.
const seaLevel = 101.325

// AltitudePressure gives the standard pressure of the air in kPa at an
// altitude in m (-500 to 10,000).
//
// Source: ISA, as in ASHRAE Handbook Fundamentals 2017, chapter 1, Table 1
// (formula recalled; it gives all six rows read).
func AltitudePressure(altitude float64) (float64, error) {
	if err := within("altitude", altitude, -500, 10000, "m"); err != nil {
		return 0, err
	}
	return seaLevel * math.Pow(1-2.25577e-5*altitude, 5.25588), nil
}

// AltitudeTemperature gives the standard temperature of the air in C at an
// altitude in m (-500 to 10,000).
//
// Source: as AltitudePressure.
func AltitudeTemperature(altitude float64) (float64, error) {
	if err := within("altitude", altitude, -500, 10000, "m"); err != nil {
		return 0, err
	}
	return 15 - 0.0065*altitude, nil
}

// SeaLevelCompression gives what a gauge compression (0 to 700, any unit of
// pressure) taken at an altitude in m (-500 to 4,000) would read at sea level:
// what the cylinder draws in, and so the reading, follows the air's pressure.
//
// Source: ISA. TM 5-3895-359-14&P scales by density at a set temperature and
// agrees to 1 % up to 5,000 ft; at 10,000 ft this corrects 5 % more.
func SeaLevelCompression(reading, altitude float64) (float64, error) {
	if err := firstOf(
		within("compression", reading, 0, 700, ""),
		within("altitude", altitude, -500, 4000, "m"),
	); err != nil {
		return 0, err
	}
	air, err := AltitudePressure(altitude)
	return reading * seaLevel / air, err
}

// IdleVacuum gives the steady manifold vacuum in inHg to be expected of a
// sound engine at idle, at an altitude in m (0 to 3,000): about 20 at sea
// level and 1 less for every 1,000 ft.
//
// Source: US Army OD1001, vacuum readings.
func IdleVacuum(altitude float64) (float64, error) {
	if err := within("altitude", altitude, 0, 3000, "m"); err != nil {
		return 0, err
	}
	return 20 - altitude/304.8, nil
}
