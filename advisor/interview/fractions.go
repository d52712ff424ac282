package interview

import (
	"regexp"
	"strings"

	"longstand/advisor/reckon"
)

// fractionWords are the parts of one that people name, by what divides one.
var fractionWords = map[string]string{"half": "2", "third": "3", "quarter": "4", "fifth": "5", "eighth": "8", "tenth": "10",
	"sixteenth": "16", "thirty-second": "32", "thirty second": "32", "sixty-fourth": "64", "sixty fourth": "64"}

const partName = `(half|third|quarter|fifth|eighth|tenth|sixteenth|thirty[- ]second|sixty[- ]fourth)`

var (
	onePart   = regexp.MustCompile(`^(?:an? |one )?` + partName + `(?:[ -](?:of )?(?:an? )?(.+))?$`)
	someParts = regexp.MustCompile(`^(\S+) ` + partName + `s(?:[ -](?:of )?(?:an? )?(.+))?$`)
	andPart   = regexp.MustCompile(`^(.+?) and (?:(an?|one|three) )?(half|third|quarter)s?(?: (.+))?$`)
	single    = regexp.MustCompile(`^an? (.+)$`)
)

// inFractions turns parts in words into figures: "half an inch" into "1/2 inch",
// "three quarters" into "3/4", "two and a half years" and "two years and a half"
// into "2 1/2 years", "a year" into "1 year". What is not said in parts stays.
func inFractions(s string) string {
	if m := onePart.FindStringSubmatch(s); m != nil {
		if m[1] == "half" && m[2] == "dozen" {
			return "6"
		}
		return strings.TrimSpace("1/" + fractionWords[m[1]] + " " + m[2])
	}
	if m := someParts.FindStringSubmatch(s); m != nil {
		return strings.TrimSpace(inDigits(m[1]) + "/" + fractionWords[m[2]] + " " + m[3])
	}
	if m := andPart.FindStringSubmatch(s); m != nil {
		whole, unit, _ := strings.Cut(inFigures(m[1]), " ")
		top := "1"
		if m[2] == "three" {
			top = "3"
		}
		return strings.TrimSpace(whole + " " + top + "/" + fractionWords[m[3]] + " " + unit + m[4])
	}
	return s
}

var (
	timesThousand = regexp.MustCompile(`^([+-]?[\d.,]*\d) ?(k|thousand|grand|hundred|dozen)(?: (.+)|)$`)
	factors       = map[string]float64{"k": 1000, "thousand": 1000, "grand": 1000, "hundred": 100, "dozen": 12}
)

// manyOf is what a figure says behind its digits that makes it many times as
// much, "" for nothing.
func manyOf(s string) string {
	if m := timesThousand.FindStringSubmatch(inDigits(s)); m != nil {
		return m[2]
	}
	return ""
}

// inFigures turns words, parts and thousands at the beginning into figures:
// "60k miles" into "60000 miles".
func inFigures(s string) string {
	s = inDigits(inFractions(reckon.Typed(s)))
	if m := timesThousand.FindStringSubmatch(s); m != nil {
		if x, _, err := reckon.Measure(m[1], ""); err == nil {
			return strings.TrimSpace(plain(tidy(x*factors[m[2]])) + " " + m[3])
		}
	}
	if m := single.FindStringSubmatch(s); m != nil {
		return "1 " + m[1]
	}
	return s
}
