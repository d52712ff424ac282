package report

import (
	"strings"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"

	"longstand/advisor"
)

// Spaces at which a line is not broken.
const (
	noBreak     = '\u00a0'
	thinNoBreak = '\u202f'
)

// digits writes a number as readers of a locale know it, with so many decimals;
// -1 for as many as it has, three at most. A locale that is not known is
// written as English.
func digits(x float64, decimals int, locale string) string {
	tag, err := language.Parse(locale)
	if err != nil {
		tag = language.English
	}
	form := number.MaxFractionDigits(3)
	if decimals >= 0 {
		form = number.Scale(decimals)
	}
	return message.NewPrinter(tag).Sprint(number.Decimal(x, form))
}

// signBehind are the languages that write a currency's sign behind the amount.
var signBehind = []string{"de", "fr", "es", "it", "pt", "sv", "da", "nb", "nn", "no", "fi", "pl", "cs", "sk", "sl", "hu", "ro", "bg", "el", "et", "lv", "lt", "hr", "uk", "ru"}

// signed puts the sign of the shop's currency to digits, where the locale has it.
func signed(amount string, s *advisor.Settings) string {
	sign, known := currencySigns[s.Currency]
	if !known {
		return amount + string(noBreak) + s.Currency
	}
	lang, _, _ := strings.Cut(s.Locale, "-")
	for _, behind := range signBehind {
		if lang == behind {
			return amount + string(noBreak) + sign
		}
	}
	return sign + amount
}

// spaced cuts a text at its spaces, but for those that hold together.
func spaced(s string) []string {
	return strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' || r == '\r' })
}
