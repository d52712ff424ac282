package report

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// amount writes what is left possible of a number.
func (l *letter) amount(unit string, low, high float64) string {
	words := l.figure(unit, low)
	switch {
	case math.IsInf(low, -1) && math.IsInf(high, 1):
		return l.say("value.any", nil)
	case math.IsInf(low, -1):
		words = l.say("value.most", with{"Amount": l.figure(unit, high)})
	case math.IsInf(high, 1):
		words = l.say("value.least", with{"Amount": words})
	case low != high:
		words = l.say("value.range", with{"Low": words, "High": l.figure(unit, high)})
	}
	return strings.TrimSpace(words + " " + l.unit(unit))
}

// measures give, for the units in which pages speak, the unit that stands for
// another and how it is reckoned: times a factor, plus a shift (NIST SP 811,
// appendix B), to so many decimals.
var measures = map[string]map[string]measure{
	"imperial": {"km": {"miles", 1 / 1.609344, 0, 0}, "mm": {"in", 1 / 25.4, 0, 2}, "bar": {"psi", 14.50377, 0, 0}, "C": {"°F", 1.8, 32, 0}},
	"metric":   {"psi": {"bar", 1 / 14.50377, 0, 1}},
}

type measure struct {
	unit          string
	factor, shift float64
	decimals      int
}

// unit writes a unit as the shop's readers know it.
func (l *letter) unit(u string) string {
	if m, ok := measures[l.a.Settings.Units][u]; ok {
		return m.unit
	}
	if u == "C" {
		return "°C"
	}
	return u
}

// figure writes a number of a unit as the shop's readers know it.
func (l *letter) figure(u string, x float64) string {
	decimals := -1
	if m, ok := measures[l.a.Settings.Units][u]; ok {
		x, decimals = x*m.factor+m.shift, m.decimals
	}
	return digits(x, decimals, l.a.Settings.Locale)
}

// spokenFigure finds a figure, or two, with a unit of length or pressure in a
// sentence of the book.
var spokenFigure = regexp.MustCompile(`(\d[\d,]*(?:\.\d+)?)(?:( to | or | and )(\d[\d,]*(?:\.\d+)?))? (km|mm|bar|psi)\b`)

// inUnits puts the figures in a sentence of the book into the units of the shop.
func inUnits(text, units, locale string) string {
	return spokenFigure.ReplaceAllStringFunc(text, func(found string) string {
		m := spokenFigure.FindStringSubmatch(found)
		to, ok := measures[units][m[4]]
		if !ok {
			return found
		}
		turned := func(s string) string {
			x, err := strconv.ParseFloat(strings.ReplaceAll(s, ",", ""), 64)
			if err != nil {
				return s
			}
			return digits(x*to.factor+to.shift, to.decimals, locale)
		}
		out := turned(m[1])
		if m[3] != "" {
			out += m[2] + turned(m[3])
		}
		return out + " " + to.unit
	})
}
