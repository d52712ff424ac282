package reckon

import "math"

// seaLevel is the standard pressure of the air at sea level in kPa.
const seaLevel = 101.325

// altitudePressure gives the standard pressure of the air in kPa at an
// altitude in m (-500 to 10,000).
//
// Source: ISA, as in ASHRAE Handbook Fundamentals 2017, chapter 1, Table 1
// (formula recalled; it gives all six rows read).
func altitudePressure(altitude float64) (float64, error) {
	if err := within("altitude", altitude, -500, 10000, "m"); err != nil {
		return 0, err
	}
	return seaLevel * math.Pow(1-2.25577e-5*altitude, 5.25588), nil
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
	air, err := altitudePressure(altitude)
	return reading * seaLevel / air, err
}
