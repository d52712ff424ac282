package report_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
	"longstand/advisor/report"
)

// TestMoneyByLocale checks digits, grouping and the place of the sign (CLDR).
func TestMoneyByLocale(t *testing.T) {
	for _, c := range []struct{ locale, currency, want string }{
		{"en-GB", "GBP", "£1,234,568"},
		{"en-US", "USD", "$1,234,568"},
		{"de-DE", "EUR", "1.234.568\u00a0€"},
		{"de-CH", "CHF", "1’234’568\u00a0CHF"},
		{"fr-FR", "EUR", "1\u00a0234\u00a0568\u00a0€"},
		{"en-IN", "INR", "12,34,568\u00a0INR"},
		{"xx", "GBP", "£1,234,568"},
		{"<b>", "GBP", "£1,234,568"},
	} {
		got := report.Money(123456789, &advisor.Settings{Locale: c.locale, Currency: c.currency, MinorDigits: 2})
		assert.Equal(t, c.want, strings.ReplaceAll(got, "\u202f", "\u00a0"), c.locale)
	}
	assert.Equal(t, "-£2", report.Money(-150, &advisor.Settings{Locale: "en-GB", Currency: "GBP", MinorDigits: 2}))
}

// TestPagesSpeakAsTheRegion checks the words, dates and places of the mechanic's pages.
func TestPagesSpeakAsTheRegion(t *testing.T) {
	a := shelf().Advise(readCase(t, "demo.toml"))
	there := *a.Settings
	there.Locale, there.Units = "en-US", "imperial"
	b := *a
	b.Settings = &there
	page := report.Text(report.Spoken(&b, shelf().Book()))
	for _, want := range []string{"May 6, 2025", "Under the hood", "tires", "frost plug", "after the first 31 to 62 miles", "0.06 in"} {
		assert.Contains(t, page, want)
	}
	page = regexp.MustCompile(`\[[a-z_]+\]`).ReplaceAllString(page, "") // ids are the same everywhere
	for _, not := range []string{"bonnet", "tyre", "petrol", "core plug"} {

		assert.NotContains(t, page, not)
	}
	assert.Same(t, a, report.Spoken(a, shelf().Book()), "at home nothing is changed")
	assert.Contains(t, report.Text(a), "tyres", "nor in the record itself")

	why := report.Why(report.Spoken(&b, shelf().Book()), report.SpokenWhy(&b, shelf().Book(), &advisor.Why{ID: "core_plugs", Kind: "operation", Name: "core plugs",
		Turns: []advisor.Turn{{Question: "coolant_protects_to", Name: "core plug", Written: "-9 C", Value: advisor.Number(-10),
			Changes: []advisor.Change{{ID: "core_plugs", From: "leave", To: "do"}}}}}))
	assert.NotContains(t, why, "core plug")
	assert.Contains(t, why, "14 °F")

	// A bound is said in words, with no letter to say it in.
	most := advisor.Value{State: advisor.Told, Low: math.Inf(-1), High: 3}
	one := *a
	one.Case = &advisor.Case{Answers: []advisor.Answer{{Question: "years_since_run", How: advisor.Owner, Value: most}}}
	said := report.SpokenWhy(&one, shelf().Book(), &advisor.Why{Turns: []advisor.Turn{{Question: "years_since_run", Value: advisor.Number(1)}}})
	assert.Equal(t, "at most 3 years (owner)", said.Turns[0].Now)
}
