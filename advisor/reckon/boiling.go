package reckon

import "math"

// steam holds the coefficients n1 to n10 of region 4.
//
// Source: IAPWS R7-97, Table 34.
var steam = [10]float64{
	0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
	0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
}

// BoilingPoint gives the temperature in C at which water boils under an
// absolute pressure in kPa (0.611213 to 22,064).
//
// Source: IAPWS R7-97 (IF97), region 4, equation 31.
func BoilingPoint(pressure float64) (float64, error) {
	if err := within("absolute pressure", pressure, 0.611213, 22064, "kPa"); err != nil {
		return 0, err
	}
	n := &steam
	b := math.Sqrt(math.Sqrt(pressure / 1000))
	e := (b+n[2])*b + n[5]
	f := (n[0]*b+n[3])*b + n[6]
	g := (n[1]*b+n[4])*b + n[7]
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	s := n[9] + d
	kelvin := (s - math.Sqrt(s*s-4*(n[8]+n[9]*d))) / 2
	return kelvin - 273.15, nil
}

// CapBoiling gives the temperature in C at which water boils in a cooling
// system whose cap opens at a gauge pressure in psi (0 to 30), at an altitude
// in m (-500 to 4,000). Glycol adds some degrees. The handbook rule of 3 F for
// each psi is 4 C too hopeful at 15 psi.
//
// Source: IAPWS R7-97 and ISA.
func CapBoiling(cap, altitude float64) (float64, error) {
	if err := firstOf(
		within("cap pressure", cap, 0, 30, "psi"),
		within("altitude", altitude, -500, 4000, "m"),
	); err != nil {
		return 0, err
	}
	air, err := AltitudePressure(altitude)
	if err != nil {
		return 0, err
	}
	return BoilingPoint(air + cap*psiPa/1000)
}
