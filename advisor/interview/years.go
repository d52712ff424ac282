package interview

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"longstand/advisor/casefile"
	"longstand/advisor/reckon"
)

// The words with which people say when, before and behind a year.
var (
	aboutYear = hedge{[]string{"about ", "around ", "roughly ", "approximately ", "approx. ", "approx ", "circa ", "ca. ", "ca ", "c. ", "c ", "maybe ", "perhaps ", "~"},
		[]string{"-ish", "ish", " or so", " or thereabouts"}}
	untilYear = hedge{[]string{"until ", "till ", "up to ", "by ", "not after ", "at most ", "<=", "≤"}, []string{" or before", " or earlier", " or older"}}
	afterYear = hedge{[]string{"after ", "post-", "post ", "later than ", ">"}, nil}
	sinceYear = hedge{[]string{"since ", "not before ", "at least ", ">=", "≥"}, []string{" or later", " or after", " or newer", " onwards", " onward", " on"}}
	priorYear = hedge{[]string{"before ", "pre-", "pre ", "earlier than ", "older than ", "<"}, nil}
)

// year reads a year as people say it: "1964", "'98", "June 1998", "late 80s",
// "about 1965", "before 2010", "since 2010", "1964 to 1966".
func (p *Prompt) year(s string, e *casefile.Entry) (string, error) {
	if aboutTight.MatchString(s) {
		s = "c " + s[1:]
	}
	s, about := aboutYear.cut(s)
	if low, high, ok, err := p.yearsAgo(s, about); ok || err != nil {
		if err != nil {
			return "", err
		}
		return p.span(low, high, e)
	}
	if rest, ok := untilYear.cut(s); ok {
		return p.yearBounds(rest, e, false, 0)
	}
	rest, since := sinceYear.cut(s)
	if only, from := strings.CutPrefix(rest, "from "); from && !yearsTo.MatchString(s) {
		rest, since = only, true
	}
	if since {
		return p.yearBounds(rest, e, true, 0)
	}
	if rest, ok := afterYear.cut(s); ok {
		return p.yearBounds(rest, e, true, 1)
	}
	if rest, ok := priorYear.cut(s); ok {
		return p.yearBounds(rest, e, false, 1)
	}
	low, high, err := p.yearRange(s)
	if err != nil {
		return "", err
	}
	if about {
		const roughly = 2 // years either way
		low, high = max(low-roughly, min(low, p.Question.Low)), min(high+roughly, max(high, p.lastYear()))
	}
	return p.span(low, high, e)
}

// yearBounds is everything from a year on, or up to it: apart leaves the year
// itself out.
func (p *Prompt) yearBounds(s string, e *casefile.Entry, from bool, apart float64) (string, error) {
	low, high, err := p.yearSpan(s)
	if err != nil {
		return "", err
	}
	if from {
		x := low
		if apart > 0 {
			x = high + apart
		}
		e.From = &x
		return "from " + plain(x) + " on", nil
	}
	x := high
	if apart > 0 {
		x = low - apart
	}
	e.To = &x
	return plain(x) + " or before", nil
}

var agoShape = regexp.MustCompile(`^(.+) ago$`)

// yearsAgo reads "this year", "last year" and "12 years ago", which can be any
// of the two years half a year to either side; about, two years more.
func (p *Prompt) yearsAgo(s string, about bool) (low, high float64, ok bool, err error) {
	roughly := 0.5
	if about {
		roughly += 2
	}
	switch m := agoShape.FindStringSubmatch(s); {
	case s == "this year":
		return p.lastYear(), p.lastYear(), true, nil
	case s == "last year":
		return p.lastYear() - 1, p.lastYear() - 1, true, nil
	case m != nil:
		ago, _, err := reckon.Measure(inFigures(m[1]), "years")
		if err != nil {
			return 0, 0, false, wrong("a year, or as: 12 years ago", "%q is no year", s)
		}
		return math.Floor(p.day - ago - roughly), min(math.Floor(p.day-ago+roughly), p.lastYear()), true, nil
	}
	return 0, 0, false, nil
}

var (
	aboutTight = regexp.MustCompile(`^c\d{4}$`)
	yearsTo    = regexp.MustCompile(`^(?:from |between )?(.+?)(?: to | and | until | or |\.\.+|…| ?– ?| - )(.+)$`)
	yearsShort = regexp.MustCompile(`^(\d\d)(\d\d) ?[-/] ?(\d{1,2}|\d{4})$`)
)

// yearRange reads a year or a range of years. The second year of "1964-66"
// takes its century from the first.
func (p *Prompt) yearRange(s string) (low, high float64, err error) {
	if m := yearsShort.FindStringSubmatch(s); m != nil {
		first := m[1] + m[2]
		second := first[:4-len(m[3])] + m[3]
		if second <= first {
			return 0, 0, wrong("write both in full, the lesser first, as: 1964 to 1966", "%q is no range of years", s)
		}
		s = first + " to " + second
	}
	m := yearsTo.FindStringSubmatch(s)
	if m == nil {
		return p.yearSpan(s)
	}
	if low, _, err = p.yearSpan(m[1]); err != nil {
		return 0, 0, err
	}
	_, high, err = p.yearSpan(m[2])
	return low, high, err
}

var (
	decadeShape = regexp.MustCompile(`^(?:in )?(?:the )?(?:(early|mid|late)[- ]+)?(?:the )?(?:'?((?:18|19|20)?\d0)'?s|(twenties|thirties|forties|fifties|sixties|seventies|eighties|nineties))$`)
	yearShape   = regexp.MustCompile(`^(?:in )?(?:(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.? )?'?(\d{4}|\d{2})$`)
	decadeWords = []string{"twenties", "thirties", "forties", "fifties", "sixties", "seventies", "eighties", "nineties"}
	// parts of a decade overlap, since nobody means them to the year.
	parts = map[string][2]float64{"": {0, 9}, "early": {0, 4}, "mid": {3, 7}, "late": {5, 9}}
)

// yearSpan reads one year, or the years of a decade or of a part of one.
func (p *Prompt) yearSpan(s string) (low, high float64, err error) {
	s = strings.TrimSpace(s)
	if m := decadeShape.FindStringSubmatch(s); m != nil {
		digits := m[2]
		for i, word := range decadeWords {
			if word == m[3] {
				digits = fmt.Sprint(20 + 10*i)
			}
		}
		start, err := p.century(digits, "s")
		part := parts[m[1]]
		return start + part[0], min(start+part[1], max(start+part[0], p.lastYear())), err
	}
	m := yearShape.FindStringSubmatch(s)
	if m == nil {
		return 0, 0, wrong("a year as 1964, '64, late 60s, before 1964, or 1964 to 1966", "%q is no year", s)
	}
	low, err = p.century(m[1], "")
	return low, low, err
}

// century gives two figures the century in which they can have been by the day
// of the case; with two such centuries it is asked back. Of a car's papers and
// parts nobody writes a year before 1900 with two figures.
func (p *Prompt) century(digits, tail string) (float64, error) {
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil || len(digits) == 4 {
		return x, err
	}
	this := 2000 + x
	switch last := 1900 + x; {
	case this > p.lastYear():
		return last, nil
	default:
		return 0, wrong("write all four figures", "'%s%s can be %s%s or %s%s", digits, tail, plain(last), tail, plain(this), tail)
	}
}

// lastYear is the year of the case's day.
func (p *Prompt) lastYear() float64 { return math.Floor(p.day) }
