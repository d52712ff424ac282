package reckon

import (
	"fmt"
	"strings"
	"time"
)

// TyreDate is one week in which a tyre may have been made. From and To are
// decimal years: the start of its Sunday and the end of its Saturday.
type TyreDate struct {
	Year, Week int
	From, To   float64
}

// TyreCode is what a tyre's date code can mean, oldest first. Older is set
// when four digits can also be read as day of the week, week and last digit of
// a year before 2000, as some makers stamped them.
type TyreCode struct {
	Dates []TyreDate
	Older bool
}

// The first year of the three-digit code (it came in during 1971, so the year
// digit 0 reads from 1980) and the year in the middle of which it ended.
const (
	threeDigitsFrom = 1971
	fourDigitsFrom  = 2000
	changeWeek      = 27
)

// TyreDates reads the date code of a tyre: the last group of its
// identification number, week and year. Four digits (from July 2000) name one
// week; three digits fit one year in each decade and all are given. Weeks run
// from 01 to 53, the first being the first full one, Sunday to Saturday. Dates
// after the decimal year by are left out. It errs for anything but three or
// four digits, for other weeks, and when no date is left.
//
// Source: 49 CFR 574.5(b)(3); 64 FR 36807 (four digits); NHTSA letter
// nht73-3.16 (day of the week first). Sunday to Saturday and 1971 recalled.
func TyreDates(code string, by float64) (TyreCode, error) {
	week, year, digits, err := tyreFigures(code)
	if err != nil {
		return TyreCode{}, err
	}
	var read TyreCode
	switch digits {
	case 4:
		read.Dates = append(read.Dates, tyreWeek(fourDigitsFrom+year, week))
		day, oldWeek := week/10, week%10*10+year/10
		read.Older = day >= 1 && day <= 7 && oldWeek >= 1 && oldWeek <= 53
	default:
		for y := 1970 + year; y <= fourDigitsFrom; y += 10 {
			if y >= threeDigitsFrom && (y < fourDigitsFrom || week <= changeWeek) {
				read.Dates = append(read.Dates, tyreWeek(y, week))
			}
		}
	}
	var past []TyreDate
	for _, d := range read.Dates {
		if d.From <= by {
			past = append(past, d)
		}
	}
	if len(past) == 0 {
		return TyreCode{}, fmt.Errorf("tyre code %q reads as a date still to come", code)
	}
	read.Dates = past
	return read, nil
}

// TyreMade gives the decimal years between which a tyre was made: the start of
// the oldest and the end of the youngest week that the code can mean. It errs
// as TyreDates does.
//
// Source: as TyreDates.
func TyreMade(code string, by float64) (from, to float64, err error) {
	read, err := TyreDates(code, by)
	if err != nil {
		return 0, 0, err
	}
	return read.Dates[0].From, read.Dates[len(read.Dates)-1].To, nil
}

// tyreFigures takes the last group of a code apart.
func tyreFigures(code string) (week, year, digits int, err error) {
	groups := strings.Fields(code)
	if len(groups) == 0 {
		return 0, 0, 0, fmt.Errorf("the tyre code is empty")
	}
	last := groups[len(groups)-1]
	for _, r := range last {
		if r < '0' || r > '9' {
			return 0, 0, 0, fmt.Errorf("tyre code %q does not end in three or four digits", code)
		}
	}
	if len(last) != 3 && len(last) != 4 {
		return 0, 0, 0, fmt.Errorf("tyre code %q does not end in three or four digits", code)
	}
	week = int(last[0]-'0')*10 + int(last[1]-'0')
	for _, r := range last[2:] {
		year = year*10 + int(r-'0')
	}
	if week < 1 || week > 53 {
		return 0, 0, 0, fmt.Errorf("tyre code %q names week %02d; weeks run from 01 to 53", code, week)
	}
	return week, year, len(last), nil
}

// tyreWeek gives the days of a week as decimal years. A week 53 that the year
// does not have runs into the next January: some plants count otherwise.
func tyreWeek(year, week int) TyreDate {
	first := time.Date(year, time.January, 1, 0, 0, 0, 0, time.UTC)
	untilSunday := (7 - int(first.Weekday())) % 7
	start := first.AddDate(0, 0, untilSunday+7*(week-1))
	return TyreDate{Year: year, Week: week, From: DecimalYear(start), To: DecimalYear(start.AddDate(0, 0, 7))}
}

// DecimalYear gives the start of a day as a decimal year: 2 July 2001 is
// 2001 + 182/365.
//
// Source: arithmetic.
func DecimalYear(day time.Time) float64 {
	days := time.Date(day.Year(), time.December, 31, 0, 0, 0, 0, time.UTC).YearDay()
	return float64(day.Year()) + float64(day.YearDay()-1)/float64(days)
}
