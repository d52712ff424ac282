package report

import (
	"cmp"
	"embed"
	"fmt"
	"math"
	"slices"
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
	photos map[string][]byte
	date   string // of the letter, ISO 8601
	err    error  // the first fault in a phrase
}

func newLetter(a *advisor.Advice, b *advisor.Book, o LetterOptions) (*letter, error) {
	t, err := template.New("phrases").Option("missingkey=error").ParseFS(wordFiles, "words/phrases.tmpl")
	if err != nil {
		return nil, err
	}
	if t, err = t.Parse(o.Phrases); err != nil {
		return nil, fmt.Errorf("the shop's phrases: %w", err)
	}
	return &letter{a: a, b: b, says: t, region: newRegion(b.Words, a.Settings), photos: o.Photos, date: cmp.Or(o.Day, a.Case.Date)}, nil
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
func (l *letter) book(s string) string { return l.region.say(advisor.Sentence(s)) }

// name gives a name of the book in the words of the shop's region.
func (l *letter) name(s string) string {
	return l.region.say(strings.TrimSuffix(strings.TrimSpace(s), "."))
}

// title gives a name of the book with a capital first.
func (l *letter) title(s string) string { return strings.TrimSuffix(l.book(s), ".") }

// taxed writes minor units without tax as money with tax.
func (l *letter) taxed(minor int64) string {
	return Money(taxed(minor, l.a.Settings), l.a.Settings)
}

// language is that of the phrases, with the shop's land where it is spoken there.
func (l *letter) language() string {
	own := l.say("language", nil)
	if strings.HasPrefix(l.a.Settings.Locale, own+"-") {
		return l.a.Settings.Locale
	}
	return own
}

// number2 writes a bare number with at most two decimals.
func (l *letter) number2(x float64) string {
	return digits(math.Round(x*100)/100, -1, l.a.Settings.Locale)
}

// span writes a low and a high sum, both with tax.
func (l *letter) span(r advisor.Range) string {
	return l.say("money.span", with{"Low": l.taxed(r.Low), "High": l.taxed(r.High)})
}

// dateForms are how a date is written where it is not ISO 8601.
var dateForms = map[string]string{"en-GB": "2 January 2006", "en-US": "January 2, 2006"}

// day writes the letter's date, some days on, by the shop's locale.
func (l *letter) day(later int) string {
	return longDay(l.date, later, l.a.Settings.Locale)
}

// longDay writes an ISO 8601 date, some days on, by a locale; what is no date
// stays as it is.
func longDay(date string, later int, locale string) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	form, ok := dateForms[locale]
	switch {
	case ok:
	case strings.HasPrefix(locale, "en-"):
		form = dateForms["en-GB"]
	default:
		form = time.DateOnly
	}
	return t.AddDate(0, 0, later).Format(form)
}

// clean makes one line of a text and takes out what is not seen: control
// characters could drive a terminal, marks of direction could turn a line round.
func clean(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == noBreak, r == thinNoBreak: // between a number and its unit or sign
			return r
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, s)
	return strings.Join(spaced(s), " ")
}

// joined writes a list within a sentence.
func joined(items []string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	return strings.Join(items[:len(items)-1], ", ") + " and " + items[len(items)-1]
}

// Paper is the size of paper that is usual where a locale is spoken (A4, ISO
// 216, but in North and much of Latin America).
func Paper(locale string) string {
	_, land, _ := strings.Cut(locale, "-")
	if slices.Contains([]string{"US", "CA", "MX", "PH", "CL", "CO", "VE"}, land) {
		return "letter"
	}
	return "A4"
}
