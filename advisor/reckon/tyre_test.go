package reckon

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTyreDates(t *testing.T) {
	wanted := map[string][]TyreDate{}
	var codes []string
	for _, r := range readTable(t, "tyre_dates") {
		first, err := time.Parse(time.DateOnly, r.text("first"))
		require.NoError(t, err)
		last, err := time.Parse(time.DateOnly, r.text("last"))
		require.NoError(t, err)
		assert.Equal(t, time.Sunday, first.Weekday())
		assert.Equal(t, time.Saturday, last.Weekday())
		if wanted[r.text("code")] == nil {
			codes = append(codes, r.text("code"))
		}
		wanted[r.text("code")] = append(wanted[r.text("code")], TyreDate{
			int(r.number("year")), int(r.number("week")), DecimalYear(first), DecimalYear(last.AddDate(0, 0, 1)),
		})
	}
	for _, code := range codes {
		read, err := TyreDates(code, 2025.8)
		require.NoError(t, err)
		assert.Equal(t, wanted[code], read.Dates, code)
		from, to, err := TyreMade("DOT XX9Y ABC "+code, 2025.8)
		require.NoError(t, err)
		assert.Equal(t, wanted[code][0].From, from)
		assert.Equal(t, wanted[code][len(wanted[code])-1].To, to)
	}
}

func TestTyreDatesOfTheChange(t *testing.T) {
	years := func(code string, by float64) (got []int) {
		read, err := TyreDates(code, by)
		require.NoError(t, err)
		for _, d := range read.Dates {
			got = append(got, d.Year)
		}
		return got
	}
	assert.Equal(t, []int{1980, 1990, 2000}, years("270", 2025), "three digits until July 2000")
	assert.Equal(t, []int{1980, 1990}, years("280", 2025))
	assert.Equal(t, []int{1971, 1981}, years("031", 1985), "not after the day of the case")
	assert.Equal(t, []int{2009}, years("2309", 2025))
}

func TestTyreCodeReadTheOlderWay(t *testing.T) { // NHTSA letter nht73-3.16 (read): day, week, year
	for code, older := range map[string]bool{"2309": true, "0301": false, "1001": false, "5300": true, "2599": false} {
		read, err := TyreDates(code, 2100)
		require.NoError(t, err)
		assert.Equal(t, older, read.Older, code)
	}
}

func TestTyreCodesRefused(t *testing.T) {
	for code, text := range map[string]string{
		"5409": "week 54", "0009": "week 00", "12A": "three or four digits", "": "empty", "23": "three or four digits",
		"23099": "three or four digits", "2398": "still to come", "000": "week 00", "-309": "three or four digits", "２３０９": "three or four digits",
	} {
		_, err := TyreDates(code, 2025.8)
		assert.ErrorContains(t, err, text, code)
		_, _, err = TyreMade(code, 2025.8)
		assert.Error(t, err, code)
	}
}

func TestEveryTyreWeek(t *testing.T) {
	for year := 2000; year < 2060; year++ {
		previous := float64(year)
		for week := 1; week <= 53; week++ {
			read, err := TyreDates(fmt.Sprintf("%02d%02d", week, year%100), 2100)
			require.NoError(t, err)
			d := read.Dates[0]
			assert.Less(t, d.From, d.To)
			if week > 1 {
				assert.InDelta(t, previous, d.From, 1e-9, "weeks follow on")
			} else {
				assert.Less(t, d.From, float64(year)+7/365.0, "the first week is the first full one")
				assert.GreaterOrEqual(t, d.From, float64(year))
			}
			previous = d.To
		}
	}
}

func TestTread(t *testing.T) { // C&U 1986 reg. 27; RCW 46.37.425 (read)
	for country, want := range map[float64]float64{826: 1.6, 840: 1.588} {
		depth, err := TreadLimit(country)
		require.NoError(t, err)
		assert.InDelta(t, want, depth, 0.0006)
	}
	_, err := TreadLimit(250)
	assert.ErrorContains(t, err, "there is no tread limit's country 250")
}

func TestCutLimit(t *testing.T) { // computed from C&U 1986 reg. 27
	for width, want := range map[float64]float64{165: 25, 250: 25, 300: 30} {
		got, err := CutLimit(width)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 1e-12)
	}
	_, err := CutLimit(16.5)
	refuses(t, err, "section width")
}
