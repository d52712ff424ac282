package report

import (
	"embed"
	"fmt"
	"math"
	"strings"
	"text/template"
	"time"
	"unicode"

	"longstand/advisor"
)

// wordFiles hold the phrases of the letter and the shape of its page.
//
//go:embed words/*.tmpl
var wordFiles embed.FS

// letter gathers what the letter says.
type letter struct {
	a      *advisor.Advice
	b      *advisor.Book
	says   *template.Template
	region *region
	err    error // the first fault in a phrase
}

func newLetter(a *advisor.Advice, b *advisor.Book, phrases string) (*letter, error) {
	t, err := template.New("phrases").Option("missingkey=error").ParseFS(wordFiles, "words/phrases.tmpl")
	if err != nil {
		return nil, err
	}
	if t, err = t.Parse(phrases); err != nil {
		return nil, fmt.Errorf("the shop's phrases: %w", err)
	}
	return &letter{a: a, b: b, says: t, region: newRegion(b.Words, a.Settings.Locale)}, nil
}

// with are the values of a phrase, by name.
type with map[string]any

// say words a phrase; one that fails is kept as the letter's error.
func (l *letter) say(phrase string, values with) string {
	var out strings.Builder
	if err := l.says.ExecuteTemplate(&out, phrase, values); err != nil && l.err == nil {
		l.err = fmt.Errorf("the phrase %q of the letter: %w", phrase, err)
	}
	return clean(out.String())
}

// book gives a sentence of the book in the words of the shop's region.
func (l *letter) book(s string) string { return l.region.say(sentence(s)) }

// name gives a name of the book in the words of the shop's region.
func (l *letter) name(s string) string {
	return l.region.say(strings.TrimSuffix(strings.TrimSpace(s), "."))
}

// title gives a name of the book with a capital first.
func (l *letter) title(s string) string { return strings.TrimSuffix(l.book(s), ".") }

// taxed writes minor units without tax as money with tax.
func (l *letter) taxed(minor int64) string {
	return Money(int64(math.Floor(float64(minor)*(1+l.a.Settings.Tax)+0.5)), l.a.Settings)
}

// span writes a low and a high sum, both with tax.
func (l *letter) span(r advisor.Range) string {
	return l.say("money.span", with{"Low": l.taxed(r.Low), "High": l.taxed(r.High)})
}

// dateForms are how a date is written where it is not ISO 8601.
var dateForms = map[string]string{"en-GB": "2 January 2006", "en-US": "January 2, 2006"}

// day writes the case's date, some days on, by the shop's locale.
func (l *letter) day(later int) string {
	t, err := time.Parse(time.DateOnly, l.a.Case.Date)
	if err != nil {
		return l.a.Case.Date
	}
	form, ok := dateForms[l.a.Settings.Locale]
	if !ok {
		form = time.DateOnly
	}
	return t.AddDate(0, 0, later).Format(form)
}

// clean makes one line of a text and takes out what is not seen: control
// characters could drive a terminal, marks of direction could turn a line round.
func clean(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// joined writes a list within a sentence.
func joined(items []string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	return strings.Join(items[:len(items)-1], ", ") + " and " + items[len(items)-1]
}
