package reckon

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnitFactors(t *testing.T) { // NIST SP 811 App. B.8, seven figures
	for _, r := range readTable(t, "unit_factors") {
		factor, err := Convert(1, r.text("unit"), r.text("si"))
		require.NoError(t, err)
		assert.InEpsilon(t, r.number("factor"), factor, 5e-7, r.text("unit"))
	}
}

func TestTemperatures(t *testing.T) {
	for _, r := range readTable(t, "temperature_pairs") {
		c, err := Convert(r.number("f"), "F", "°C")
		require.NoError(t, err)
		assert.InDelta(t, r.number("c"), c, 1e-9)
		f, err := Convert(c, "C", "F")
		require.NoError(t, err)
		assert.InDelta(t, r.number("f"), f, 1e-9)
		assert.InDelta(t, r.number("c"), celsius(r.number("f")), 1e-9)
		assert.InDelta(t, r.number("f"), fahrenheit(celsius(r.number("f"))), 1e-9)
	}
	k, err := Convert(0, "C", "K")
	require.NoError(t, err)
	assert.InDelta(t, 273.15, k, 1e-12)
}

func TestUnitNamesAreOneUnitEach(t *testing.T) {
	seen := map[string]string{}
	for _, u := range unitNames {
		for name := range strings.SplitSeq(u.names, "|") {
			if other, ok := seen[unitKey(name)]; ok {
				assert.Equal(t, u.names, other, "%s names two units", name)
			}
			seen[unitKey(name)] = u.names
			assert.NotContains(t, twoUnits, unitKey(name))
		}
	}
}

func TestConvertRefuses(t *testing.T) {
	for _, c := range [][3]string{
		{"psi", "mm", "psi is a pressure and mm is a length"}, {"years", "mm", "years is an age and mm is a length"},
		{"furlong", "m", "furlong"}, {"m", "furlong", "furlong"}, {"gal", "l", "imp gal or us gal"},
	} {
		_, err := Convert(1, c[0], c[1])
		assert.ErrorContains(t, err, c[2])
	}
}

func TestMeasure(t *testing.T) {
	for _, c := range []struct {
		text, want string
		value      float64
		shown      string
	}{
		{"140 psi", "psi", 140, "140 psi"},
		{"140", "psi", 140, "140 psi"},
		{"9.6 bar", "psi", 139.236228221, "139.2 psi (9.6 bar)"},
		{"3/32 in", "mm", 2.38125, "2.381 mm (3/32 in)"},
		{`3/32"`, "mm", 2.38125, `2.381 mm (3/32")`},
		{"62 F", "C", 16.6666666667, "16.67 C (62 F)"},
		{"62°F", "°C", 16.6666666667, "16.67 °C (62°F)"},
		{"-5 degrees C", "F", 23, "23 F (-5 degrees C)"},
		{"−40 F", "C", -40, "-40 C"},
		{"2 1/2", "turns", 2.5, "2.5 turns"},
		{"2 1/2 turns", "turns", 2.5, "2.5 turns"},
		{"1 turn", "turns", 1, "1 turns"},
		{"2½ in", "in", 2.5, "2.5 in"},
		{"½ in", "in", 0.5, "0.5 in"},
		{"-½", "mm", -0.5, "-0.5 mm"},
		{"2-1/4 in", "in", 2.25, "2.25 in"},
		{"1,5 mm", "mm", 1.5, "1.5 mm"},
		{",5", "mm", 0.5, "0.5 mm"},
		{"0,125 in", "in", 0.125, "0.125 in"},
		{"1.250", "", 1.25, "1.25"},
		{"85,000 miles", "miles", 85000, "85000 miles"},
		{"84,312", "miles", 84312, "84312 miles"},
		{"5,000 miles", "km", 8046.72, "8047 km (5,000 miles)"},
		{"85 000 km", "km", 85000, "85000 km"},
		{"1,250,000", "km", 1250000, "1250000 km"},
		{"1,234.5 mm", "mm", 1234.5, "1234.5 mm"},
		{"1.234,5 mm", "mm", 1234.5, "1234.5 mm"},
		{"1.234.567", "mm", 1234567, "1234567 mm"},
		{"12 345,5 mm", "mm", 12345.5, "12345.5 mm"},
		{"100000 km", "miles", 62137.1192237, "62137 miles (100000 km)"},
		{"18 months", "years", 1.5, "1.5 years (18 months)"},
		{"55%", "%", 55, "55 %"},
		{"55 per cent", "%", 55, "55 %"},
		{"18 inHg", "kPa", 60.9549955261, "60.95 kPa (18 inHg)"},
		{"70 lb ft", "N m", 94.9072563832, "94.91 N m (70 lb ft)"},
		{"2 us gal", "l", 7.570823568, "7.571 l (2 us gal)"},
		{"5 mile", "miles", 5, "5 miles"},
		{"+3", "mm", 3, "3 mm"},
		{"-0", "mm", 0, "0 mm"},
		{"30 thou", "mm", 0.762, "0.762 mm (30 thou)"},
	} {
		value, shown, err := Measure(c.text, c.want)
		require.NoError(t, err, c.text)
		assert.InEpsilon(t, c.value+1000, value+1000, 1e-12, c.text)
		assert.Equal(t, c.shown, shown)
	}
}

func TestMeasureRefuses(t *testing.T) {
	for _, c := range [][3]string{
		{"", "mm", "begin with a figure"}, {"about 3", "mm", "begin with a figure"}, {"mm", "mm", "begin with a figure"},
		{"1,250", "", "as 1250 or as 1.25"}, {"1,500 mm", "mm", "as 1500 or as 1.5"},
		{"55.000 km", "km", "as 55000 or as 55:"},
		{"3 psi", "mm", `wanted in mm, not in "psi"; understood are cm, ft, in, km, m, miles, mm, thou, um, yd`},
		{"3 fish", "mm", `not in "fish"`}, {"3 psi", "turns", "wanted in turns"}, {"3 psi", "", "a plain figure"},
		{"3 gal", "l", "two sizes"}, {"3 pints", "l", "imp pt"}, {"1/0 in", "in", "divides by nothing"},
		{"5 to 10 mm", "mm", "more than one figure"}, {"5-10 mm", "mm", "more than one figure"}, {"5 - 10", "mm", "more than one figure"},
		{"140 138 142 136", "psi", "more than one figure"}, {"140, 138", "psi", "more than one figure"}, {"1.2.3", "mm", "do not fit"},
		{"1,2,3", "mm", "do not fit"}, {"3/4/5", "in", "more than one figure"}, {`5' 3"`, "in", `' 3`}, {"5e3", "mm", `"e3"`},
		{"NaN", "mm", "begin with a figure"}, {"Inf", "mm", "begin with a figure"}, {strings.Repeat("9", 61), "mm", "fewer than"},
		{"1 000 00", "mm", "more than one figure"},
	} {
		_, shown, err := Measure(c[0], c[1])
		require.Error(t, err, c[0])
		assert.ErrorContains(t, err, c[2], c[0])
		assert.Empty(t, shown)
	}
}

func FuzzMeasure(f *testing.F) {
	for _, text := range []string{"140 psi", "9.6 bar", "3/32 in", "62 F", "2 1/2", "1,5 mm", "85,000 miles", "−½ °C", "1.234,5", "-", ",", "1/0", "5' 3\"", "\x1b[31m3", "3 \xff"} {
		for _, unit := range []string{"psi", "mm", "C", "turns", "%", ""} {
			f.Add(text, unit)
		}
	}
	f.Fuzz(func(t *testing.T, text, unit string) {
		value, shown, err := Measure(text, unit)
		if err != nil {
			require.Zero(t, value)
			require.Empty(t, shown)
			return
		}
		require.False(t, math.IsNaN(value) || math.IsInf(value, 0), "%q in %q", text, unit)
		require.NotEmpty(t, shown)
		again, _, err := Measure(text, unit)
		require.NoError(t, err)
		require.Equal(t, value, again)
		// What is shown reads back as about the same value.
		figure, _, _ := strings.Cut(shown, " ")
		if back, _, err := Measure(figure, ""); err == nil {
			require.InDelta(t, value, back, 0.001*math.Abs(value)+1e-9, "%q in %q shows %q", text, unit, shown)
		}
	})
}
