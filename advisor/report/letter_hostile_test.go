package report_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

const nasty = "<script>alert('x')</script> \"quoted\" {{.}} **bold** [a](javascript:b) `c` | pipe\n# head\x1b[31m\u202e &amp; </title></table></style>"

// hostileCase has the same bad text in every field that a person fills in.
func hostileCase(t *testing.T) *advisor.Case {
	c := readCase(t, "demo.toml")
	c.Name, c.Words, c.ID = nasty, nasty, nasty
	for i := range c.Answers {
		c.Answers[i].Note, c.Answers[i].By, c.Answers[i].Written = nasty, nasty, nasty
		c.Answers[i].Photos = []advisor.Photo{{File: nasty}}
	}
	c.Answers = append(c.Answers, advisor.Answer{Question: "bore_wear", Value: advisor.Value{State: advisor.Hidden}, Note: nasty})
	c.Declined = append(c.Declined, advisor.Decision{Operation: "tyres", By: nasty, Note: nasty, Date: nasty})
	c.Overruled = append(c.Overruled, advisor.Overruling{Operation: "radiator", Call: "leave", By: nasty, Why: nasty, Date: nasty},
		advisor.Overruling{Operation: "fuel_pump", Call: "do", By: nasty, Why: nasty, Date: nasty})
	return c
}

func TestHostileTextsAreEscaped(t *testing.T) {
	a := shelf().Advise(hostileCase(t))
	there := *a.Settings
	there.Shop = nasty
	a.Settings = &there
	write := func(format string) string {
		page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: format})
		require.NoError(t, err)
		return page
	}
	html := write("html")
	assert.Equal(t, 1, strings.Count(html, "</style>"))
	all := elements(t, html)
	assert.Empty(t, named(all, "script"))
	assert.Len(t, named(all, "title"), 3, "the page's and those of two pictures")
	assert.Contains(t, html, "&lt;script&gt;")
	assert.GreaterOrEqual(t, strings.Count(html, "&lt;script&gt;"), 10)

	mark := write("markdown")
	assert.NotContains(t, mark, "<script")
	assert.NotContains(t, strings.ReplaceAll(mark, `\]`, ""), "](javascript")
	assert.Contains(t, mark, `\*\*bold\*\*`)
	assert.NotContains(t, mark, "\n# head")
	for _, line := range strings.Split(mark, "\n") {
		if strings.HasPrefix(line, "|") {
			assert.NotContains(t, strings.ReplaceAll(line, `\|`, ""), "| pipe")
		}
	}
	for _, page := range []string{html, mark, write("text")} {
		assert.NotContains(t, page, "\x1b")
		assert.NotContains(t, page, "\u202e")
		assert.Contains(t, page, "{{.}}", "what a person wrote is no phrase")
	}
}

func TestShopsOwnPhrases(t *testing.T) {
	a := shelf().Advise(readCase(t, "demo.toml"))
	page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: "text", Phrases: `{{define "title.asked"}}You came to us with this{{end}}`})
	require.NoError(t, err)
	assert.Contains(t, page, "You came to us with this")
	for _, bad := range []string{`{{define "title.asked"}}{{.Nothing}}{{end}}`, `{{define "x"`} {
		_, err = report.Letter(a, shelf().Book(), report.LetterOptions{Format: "text", Phrases: bad})
		assert.Error(t, err, bad)
	}
	_, err = report.Letter(a, shelf().Book(), report.LetterOptions{Format: "scroll"})
	assert.ErrorContains(t, err, "scroll")
}

// TestRegionOfTheShop checks that words and dates follow the shop's locale, and
// that what the owner wrote does not.
func TestRegionOfTheShop(t *testing.T) {
	c := readCase(t, "demo.toml")
	c.Words = "the bonnet rattles"
	a := shelf().Advise(c)
	there := *a.Settings
	there.Locale, there.Currency = "en-US", "USD"
	a.Settings = &there
	page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: "text"})
	require.NoError(t, err)
	for _, want := range []string{"May 6, 2025", "the bonnet rattles", "frost plug", "transmission", "tires", "gasoline", "$"} {
		assert.Contains(t, page, want)
	}
	for _, not := range []string{"core plug", "gearbox", "tyre", "£", "petrol"} {
		assert.NotContains(t, strings.ToLower(page), not)
	}
	there.Locale = "xx"
	page, err = report.Letter(a, shelf().Book(), report.LetterOptions{Format: "text"})
	require.NoError(t, err)
	assert.Contains(t, page, "2025-05-06")
}
