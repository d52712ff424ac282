package reckon

import (
	"fmt"
	"sort"
	"strings"
)

// The exact definitions from which the factors follow. Constant expressions
// are exact, so each factor is rounded once.
//
// Source: NIST Special Publication 811 (2008), Appendix B; the mercury column
// is the conventional one (13,595.1 kg/m3).
const (
	inchM           = 0.0254
	poundKG         = 0.45359237
	standardGravity = 9.80665
	poundForce      = poundKG * standardGravity
	psiPa           = poundForce / (inchM * inchM)
	mmHgPa          = 13595.1 * standardGravity / 1000
	imperialGallonL = 4.54609
	usGallonL       = 231 * inchM * inchM * inchM * 1000
)

// unit is a unit of measure: what it measures, how many of the first unit of
// that kind it holds, and (temperatures) what is added afterwards.
type unit struct {
	kind          string
	factor, shift float64
}

// unitNames lists every unit under its spellings, the one to print first.
// Letters' case and spaces do not count.
var unitNames = []struct {
	unit  unit
	names string
}{
	{unit{"pressure", 1, 0}, "Pa"},
	{unit{"pressure", 100, 0}, "hPa|mbar"},
	{unit{"pressure", 1e3, 0}, "kPa"},
	{unit{"pressure", 1e5, 0}, "bar"},
	{unit{"pressure", 1e6, 0}, "MPa"},
	{unit{"pressure", psiPa, 0}, "psi|psig|lb/in2|lbf/in2|lb/in²|lbf/in²|lb/sq in"},
	{unit{"pressure", standardGravity * 1e4, 0}, "kg/cm2|kgf/cm2|kg/cm²|kgf/cm²"},
	{unit{"pressure", mmHgPa, 0}, "mmHg"},
	{unit{"pressure", mmHgPa * 25.4, 0}, "inHg|inches of mercury"},
	{unit{"length", 1, 0}, "m|metre|metres|meter|meters"},
	{unit{"length", 1e-6, 0}, "um|µm|μm|micron|microns"},
	{unit{"length", 1e-3, 0}, "mm|millimetre|millimetres|millimeter|millimeters"},
	{unit{"length", 1e-2, 0}, "cm|centimetre|centimetres|centimeter|centimeters"},
	{unit{"length", 1e3, 0}, "km|kms|kilometre|kilometres|kilometer|kilometers"},
	{unit{"length", inchM / 1000, 0}, "thou"},
	{unit{"length", inchM, 0}, "in|inch|inches|\"|''|in."},
	{unit{"length", inchM * 12, 0}, "ft|foot|feet|'"},
	{unit{"length", inchM * 36, 0}, "yd|yard|yards"},
	{unit{"length", inchM * 63360, 0}, "miles|mile|mi"},
	{unit{"temperature", 1, 0}, "K|kelvin"},
	{unit{"temperature", 1, 273.15}, "C|celsius|centigrade"},
	{unit{"temperature", 5.0 / 9, 459.67 * 5 / 9}, "F|fahrenheit"},
	{unit{"volume", 1, 0}, "l|litre|litres|liter|liters"},
	{unit{"volume", 1e-3, 0}, "ml|cc|cm3|cm³"},
	{unit{"volume", imperialGallonL, 0}, "imp gal|uk gal|imperial gallon|imperial gallons"},
	{unit{"volume", imperialGallonL / 8, 0}, "imp pt|uk pt|imperial pint|imperial pints"},
	{unit{"volume", usGallonL, 0}, "us gal|us gallon|us gallons"},
	{unit{"volume", usGallonL / 4, 0}, "us qt|us quart|us quarts"},
	{unit{"mass", 1, 0}, "kg|kgs|kilogram|kilograms"},
	{unit{"mass", 1e-3, 0}, "g|gram|grams"},
	{unit{"mass", poundKG, 0}, "lb|lbs|pound|pounds"},
	{unit{"mass", poundKG / 16, 0}, "oz|ounce|ounces"},
	{unit{"force", 1, 0}, "N|newton|newtons"},
	{unit{"force", 1e3, 0}, "kN"},
	{unit{"force", poundForce, 0}, "lbf"},
	{unit{"force", standardGravity, 0}, "kgf"},
	{unit{"torque", 1, 0}, "N m|Nm|N·m|newton metres"},
	{unit{"torque", poundForce * inchM * 12, 0}, "lb ft|lbf ft|lbft|ft lb|ft lbf|lb.ft|ft.lb|ft-lb|lb-ft"},
	{unit{"torque", poundForce * inchM, 0}, "lb in|lbf in|in lb|in-lb"},
	{unit{"torque", standardGravity, 0}, "kgf m|kg m|kgm"},
	{unit{"speed", 1, 0}, "m/s"},
	{unit{"speed", 1 / 3.6, 0}, "km/h|kph|kmh"},
	{unit{"speed", inchM * 63360 / 3600, 0}, "mph"},
	{unit{"time", 1, 0}, "s|sec|second|seconds"},
	{unit{"time", 60, 0}, "min|mins|minute|minutes"},
	{unit{"time", 3600, 0}, "h|hr|hrs|hour|hours"},
	{unit{"time", 86400, 0}, "days|day"},
	{unit{"time", 604800, 0}, "weeks|week"},
	{unit{"age", 1, 0}, "years|year|yr|yrs"},
	{unit{"age", 1.0 / 12, 0}, "months|month"},
	{unit{"voltage", 1, 0}, "V|volt|volts"},
	{unit{"voltage", 1e-3, 0}, "mV|millivolt|millivolts"},
	{unit{"current", 1, 0}, "A|amp|amps|ampere|amperes"},
	{unit{"current", 1e-3, 0}, "mA|milliamp|milliamps"},
	{unit{"share", 1, 0}, "%|percent|per cent|pct"},
}

// twoUnits are names that stand for two units of different size.
var twoUnits = map[string]string{
	"gal": "imp gal or us gal", "gallon": "imp gal or us gal", "gallons": "imp gal or us gal",
	"pt": "imp pt or us qt", "pint": "imp pt or us qt", "pints": "imp pt or us qt",
	"qt": "us qt or litres", "quart": "us qt or litres", "quarts": "us qt or litres",
	"ton": "kg or lb", "tons": "kg or lb",
}

// units and units by kind, from the list above.
var units, unitsOfKind = indexUnits()

func indexUnits() (map[string]unit, map[string][]string) {
	byName, byKind := map[string]unit{}, map[string][]string{}
	for _, u := range unitNames {
		names := strings.Split(u.names, "|")
		for _, name := range names {
			byName[unitKey(name)] = u.unit
		}
		byKind[u.unit.kind] = append(byKind[u.unit.kind], names[0])
	}
	for _, names := range byKind {
		sort.Strings(names)
	}
	return byName, byKind
}

// unitKey is a unit's spelling without case, spaces and degree signs.
func unitKey(name string) string {
	key := strings.ToLower(strings.TrimSpace(name))
	key = strings.TrimPrefix(strings.ReplaceAll(key, "°", ""), "degrees ")
	key = strings.TrimPrefix(key, "deg ")
	return strings.ReplaceAll(key, " ", "")
}

// Convert turns a value in one unit into another of the same kind. It errs for
// units that it does not know and for units of two kinds.
//
// Source: NIST Special Publication 811 (2008), Appendix B.
func Convert(value float64, from, to string) (float64, error) {
	a, err := unitNamed(from)
	if err != nil {
		return 0, err
	}
	b, err := unitNamed(to)
	if err != nil {
		return 0, err
	}
	if a.kind != b.kind {
		return 0, fmt.Errorf("%s is %s and %s is %s", from, withArticle(a.kind), to, withArticle(b.kind))
	}
	if a == b {
		return value, nil
	}
	return (float64(value*a.factor) + a.shift - b.shift) / b.factor, nil
}

func unitNamed(name string) (unit, error) {
	key := unitKey(name)
	if choice, ok := twoUnits[key]; ok {
		return unit{}, fmt.Errorf("%q has two sizes: write %s", name, choice)
	}
	if u, ok := units[key]; ok {
		return u, nil
	}
	return unit{}, fmt.Errorf("no unit is called %q", name)
}

func withArticle(kind string) string {
	if strings.ContainsRune("aeiou", rune(kind[0])) {
		return "an " + kind
	}
	return "a " + kind
}
