package reckon

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// longestMeasure bounds, in bytes, what is read as one figure.
const longestMeasure = 60

// The two shapes of a number: a fraction, perhaps after a whole number
// ("2 1/2", "3/32"), and decimal figures with either mark, perhaps grouped.
var (
	fractionShape = regexp.MustCompile(`^([+-]?) ?(?:(\d+)(?: |-))?(\d+) ?/ ?(\d+)(.*)$`)
	decimalShape  = regexp.MustCompile(`^([+-]?) ?(\d{1,3}(?: \d{3}){1,2}(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)(.*)$`)
	groupedComma  = regexp.MustCompile(`^\d{1,3}(,\d{3})+(\.\d+)?$`)
	groupedPoint  = regexp.MustCompile(`^\d{1,3}(\.\d{3})+(,\d+)?$`)
	thousands     = regexp.MustCompile(`^([1-9]\d{1,2},\d{3}|[1-9],000)$`)
	twoWays       = regexp.MustCompile(`^([1-9],\d{3}|[1-9]\d{0,2}\.000)$`)
)

// typed turns the marks that keyboards and phones put into the plain ones.
var typed = strings.NewReplacer(
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ", "−", "-", "–", "-", "⁄", "/",
	"″", "\"", "”", "\"", "′", "'", "’", "'",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅓", " 1/3", "⅔", " 2/3",
)

// Typed gives what was typed with the marks of keyboards and phones made plain:
// a true minus, fractions in one letter, several kinds of space.
func Typed(text string) string { return strings.Join(strings.Fields(typed.Replace(text)), " ") }

// Measure reads a figure as a person types it ("140 psi", "9.6 bar",
// "3/32 in", "62 F", "2 1/2", "1,5 mm", "85,000 miles") and gives it in the
// unit wanted. A figure without a unit is in the unit wanted, and a unit not in
// the table is read when it is the one wanted. "1,250" is refused, for it may
// be 1250 or 1.25, and so is "55.000". Shown repeats what was understood, with what was typed when
// the unit changed. It errs with what would be understood instead.
func Measure(text, wantUnit string) (value float64, shown string, err error) {
	if len(text) > longestMeasure {
		return 0, "", fmt.Errorf("a figure takes fewer than %d letters", longestMeasure)
	}
	plainText := Typed(text)
	number, rest, err := leadingNumber(plainText)
	if err != nil {
		return 0, "", err
	}
	given, wanted := strings.TrimSpace(rest), strings.TrimSpace(wantUnit)
	if given == "" || unitKey(given) == unitKey(wanted) || sameWord(given, wanted) {
		return number, strings.TrimSpace(plain(clean(number)) + " " + wanted), nil
	}
	value, err = fromTo(number, given, wanted)
	if err != nil {
		return 0, "", err
	}
	if value == number {
		return number, plain(clean(number)) + " " + wanted, nil
	}
	return value, fmt.Sprintf("%s %s (%s)", shortNumber(value), wanted, plainText), nil
}

// leadingNumber reads the number at the start and gives what follows it.
func leadingNumber(text string) (float64, string, error) {
	var number float64
	var sign, rest string
	if m := fractionShape.FindStringSubmatch(text); m != nil {
		whole, top, bottom := digits(m[2]), digits(m[3]), digits(m[4])
		if bottom == 0 {
			return 0, "", fmt.Errorf("%q divides by nothing", text)
		}
		sign, number, rest = m[1], whole+top/bottom, m[5]
	} else if m := decimalShape.FindStringSubmatch(text); m != nil {
		x, err := decimal(m[2])
		if err != nil {
			return 0, "", err
		}
		sign, number, rest = m[1], x, m[3]
	} else {
		return 0, "", fmt.Errorf("%q does not begin with a figure", text)
	}
	if after := strings.TrimSpace(rest); after != "" && (strings.ContainsAny(after[:1], "0123456789./,+-") || strings.HasPrefix(after, "to ")) {
		return 0, "", fmt.Errorf("%q holds more than one figure", text)
	}
	if sign == "-" && number != 0 {
		number = -number
	}
	return number, rest, nil
}

// decimal reads figures with a decimal point or comma, grouped or not.
func decimal(text string) (float64, error) {
	figures := strings.ReplaceAll(text, " ", "")
	points, commas := strings.Count(figures, "."), strings.Count(figures, ",")
	switch {
	case thousands.MatchString(figures):
		return digits(strings.ReplaceAll(figures, ",", "")), nil
	case twoWays.MatchString(figures):
		return 0, fmt.Errorf("%s can be read as %s or as %s: write one of these",
			text, strings.NewReplacer(",", "", ".", "").Replace(figures), plain(digits(strings.Replace(figures, ",", ".", 1))))
	case commas == 0 && points <= 1:
		return digits(figures), nil
	case points == 0 && commas == 1:
		return digits(strings.Replace(figures, ",", ".", 1)), nil
	case groupedComma.MatchString(figures):
		return digits(strings.ReplaceAll(figures, ",", "")), nil
	case groupedPoint.MatchString(figures):
		return digits(strings.Replace(strings.ReplaceAll(figures, ".", ""), ",", ".", 1)), nil
	}
	return 0, fmt.Errorf("%s is not a figure: its points and commas do not fit", text)
}

// digits reads figures already in the plain form; none are 0.
func digits(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0
	}
	return x
}

// fromTo converts, and rounds off the noise of the last places, so that what
// is written into a case reads clean and is the same on every machine.
func fromTo(number float64, given, wanted string) (float64, error) {
	want, err := unitNamed(wanted)
	if err != nil {
		if wanted == "" {
			return 0, fmt.Errorf("a plain figure is wanted, without %q", given)
		}
		return 0, fmt.Errorf("the answer is wanted in %s, not in %q", wanted, given)
	}
	have, err := unitNamed(given)
	if _, two := twoUnits[unitKey(given)]; two {
		return 0, err
	}
	if err != nil || have.kind != want.kind {
		return 0, fmt.Errorf("the answer is wanted in %s, not in %q; understood are %s",
			wanted, given, strings.Join(unitsOfKind[want.kind], ", "))
	}
	value, err := Convert(number, given, wanted)
	return clean(value), err
}

// clean keeps twelve figures.
func clean(x float64) float64 { return digits(strconv.FormatFloat(x, 'g', 12, 64)) }

// sameWord says whether two units not in the table differ only by a plural.
func sameWord(a, b string) bool {
	return strings.TrimSuffix(unitKey(a), "s") == strings.TrimSuffix(unitKey(b), "s") && unitKey(b) != "" && units[unitKey(b)] == unit{}
}

// shortNumber writes a converted number with four figures, more when whole.
func shortNumber(x float64) string {
	size := math.Abs(x)
	if x == math.Trunc(x) || size == 0 {
		return plain(x)
	}
	places := max(0, 3-int(math.Floor(math.Log10(size))))
	text := strconv.FormatFloat(x, 'f', min(places, 12), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}
