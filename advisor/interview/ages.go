package interview

import (
	"math"
	"regexp"
	"strconv"

	"longstand/advisor/casefile"
	"longstand/advisor/reckon"
)

var sinceShape = regexp.MustCompile(`^(?:(?:since|in|from) )(?:about )?(.*\d.*)$`)

// ageSince reads "since 2010" where an age in years is wanted, by the day of
// the case; ok tells whether that is how it was said.
func (p *Prompt) ageSince(s string, e *casefile.Entry) (shown string, ok bool, err error) {
	m := sinceShape.FindStringSubmatch(s)
	if m == nil || p.Question.Unit != "years" || yearShape.FindString(m[1]) == "" && decadeShape.FindString(m[1]) == "" {
		return "", false, nil
	}
	low, high, err := p.yearSpan(m[1])
	if err != nil {
		return "", true, err
	}
	if low > p.day {
		return "", true, wrong("a year that has come", "%s is after the day of the case", plain(low))
	}
	const tenth, hair = 10, 1e-6
	least := max(0, math.Floor((p.day-high-1)*tenth+hair)/tenth)
	most := math.Ceil((p.day-low)*tenth-hair) / tenth
	shown, err = p.span(least, most, e)
	return shown + " (" + s + ")", true, err
}

var (
	yearsMonths = regexp.MustCompile(`^(.+ ?(?:years?|yrs?)),? (?:and )?(.+ ?months?)$`)
	daysWeeks   = regexp.MustCompile(`^(.+?) ?(days?|weeks?)$`)
)

// age reads ages that are said in more than years: "5 years 6 months", "three
// weeks"; ok tells whether it is one.
func (p *Prompt) age(s string) (m measured, ok bool, err error) {
	var years float64
	if parts := yearsMonths.FindStringSubmatch(s); parts != nil {
		first, err := p.measure(parts[1])
		if err != nil {
			return m, true, err
		}
		second, err := p.measure(parts[2])
		if err != nil {
			return m, true, err
		}
		years = first.value + second.value
	} else if parts := daysWeeks.FindStringSubmatch(s); parts != nil {
		days, _, err := reckon.Measure(inFigures(s), "days")
		if err != nil {
			return m, true, wrong(p.Form, "%s", err)
		}
		const year = 365.25 // days
		years = days / year
	} else {
		return m, false, nil
	}
	years, err = strconv.ParseFloat(strconv.FormatFloat(years, 'g', 6, 64), 64)
	return measured{years, plain(years) + " years (" + s + ")"}, true, err
}
