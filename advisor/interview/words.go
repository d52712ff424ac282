package interview

import (
	"strconv"
	"strings"
)

var (
	units = map[string]int{"zero": 0, "nought": 0, "nil": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6,
		"seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14,
		"fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19}
	tens = map[string]int{"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}
	many = map[string]int{"hundred": 100, "thousand": 1000}
)

// inDigits turns a number that begins a text and is spelt out into digits:
// "twenty-five years" into "25 years", "a dozen" into "12", "minus five" into "-5". What is not spelt
// out stays as it is.
func inDigits(s string) string {
	if rest, ok := strings.CutPrefix(s, "minus "); ok {
		return "-" + strings.TrimPrefix(inDigits(rest), "-")
	}
	words := strings.Fields(s)
	if len(words) == 0 {
		return s
	}
	first := strings.Split(words[0], "-")
	if _, ten := tens[first[0]]; ten && len(first) == 2 {
		words = append(first, words[1:]...)
	}
	total, part, used := 0, 0, 0
	for i, w := range words {
		switch n, unit := units[w]; {
		case unit && part%10 == 0 && part%100 != 10:
			part += n
		case tens[w] > 0 && part%100 == 0:
			part += tens[w]
		case w == "hundred" && 0 < part && part < 10, w == "hundred" && i == 1 && words[0] == "a":
			part = max(part, 1) * 100
		case w == "thousand" && 0 < part && part < 1000, w == "thousand" && i == 1 && words[0] == "a":
			total, part = max(part, 1)*1000, 0
		case (w == "dozen") && (i == 0 || i == 1 && words[0] == "a"):
			part = 12
		case w == "couple" && i == 1 && words[0] == "a":
			part = 2
		case w == "a" && i == 0 && len(words) > 1 && (many[words[1]] > 0 || words[1] == "dozen" || words[1] == "couple"):
		case w == "and" && used > 0 && (part >= 100 || total > 0), w == "of" && i > 0 && (words[i-1] == "couple" || words[i-1] == "dozen"):
		default:
			if used == 0 {
				return s
			}
			return strings.Join(append([]string{strconv.Itoa(total + part)}, words[used:]...), " ")
		}
		used = i + 1
	}
	return strconv.Itoa(total + part)
}
