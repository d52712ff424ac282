package report

import (
	"fmt"
	"math"
	"strings"

	"longstand/advisor"
)

// currencySigns are the signs of common currencies; others are written by code.
var currencySigns = map[string]string{"GBP": "£", "USD": "$", "EUR": "€"}

// Money writes minor units in the shop's currency, whole units only: a page
// that guesses work to the penny claims too much.
func Money(minor int64, s *advisor.Settings) string {
	unit := int64(math.Pow10(s.MinorDigits))
	whole := (abs(minor) + unit/2) / unit
	sign := ""
	if minor < 0 && whole > 0 {
		sign = "-"
	}
	return sign + signed(digits(float64(whole), 0, s.Locale), s)
}

// taxed is a sum with tax, in minor units. Only pages add tax.
func taxed(minor int64, s *advisor.Settings) int64 {
	return int64(math.Floor(float64(minor)*(1+s.Tax) + 0.5))
}

func abs(x int64) int64 {
	if x < 0 {
		return -x
	}
	return x
}

// Hours writes minutes as hours and minutes.
func Hours(minutes int) string {
	switch h, m := minutes/60, minutes%60; {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m)
	}
}

// Chance says a probability as a natural frequency.
func Chance(p float64) string {
	switch {
	case p <= 0.005:
		return "fewer than 1 in 100"
	case p < 0.095:
		return fmt.Sprintf("about %d in 100", int(math.Floor(p*100+0.5)))
	case p > 0.995:
		return "more than 99 in 100"
	case p > 0.905:
		return fmt.Sprintf("about %d in 100", int(math.Floor(p*100+0.5)))
	}
	return fmt.Sprintf("about %d in 10", int(math.Floor(p*10+0.5)))
}

// wrap breaks words into lines of a width, each with an indent; the first may
// have its own.
func wrap(text, first, rest string, width int) string {
	var b strings.Builder
	line := first
	start := true
	for _, w := range spaced(text) {
		if !start && runes(line)+1+runes(w) > width {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, start = rest, true
		}
		if !start {
			line += " "
		}
		line += w
		start = false
	}
	b.WriteString(strings.TrimRight(line, " ") + "\n")
	return b.String()
}

func runes(s string) int { return len([]rune(s)) }
