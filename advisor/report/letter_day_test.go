package report_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// dayPage is the letter in plain text on a made-up job of 24 firm hours, a look
// of one hour, and 10 hours that may be needed 3 times in 10, in one line.
func dayPage(t *testing.T, week float64, parts int) string {
	s := *shelf().Book()
	a := shelf().Advise(readCase(t, "demo.toml"))
	there := *a.Settings
	there.HoursAWeek, there.PartsDays = week, parts
	a.Settings = &there
	a.Operations = []advisor.OperationAdvice{
		{ID: "a", Name: "a", Call: advisor.Do, Who: "shop", MinutesUsual: 24 * 60},
		{ID: "b", Name: "b", Call: advisor.LookFirst, Who: "shop", MinutesUsual: 600, MaybeChance: 0.3},
		{ID: "c", Name: "c", Call: advisor.Do, Who: "sent_out", MinutesUsual: 6000},
		{ID: "d", Name: "d", Call: advisor.Leave, Who: "shop", MinutesUsual: 6000},
	}
	a.Total.Lines = []advisor.Line{{Operation: "l", Name: "l", Kind: "look", Minutes: 60}}
	page, err := report.Letter(a, &s, report.LetterOptions{Format: "text"})
	require.NoError(t, err)
	return strings.Join(strings.Fields(page), " ")
}

// TestLikelyDay reckons by hand: 25 hours and 3 more by chance, at 7 a week, are
// 28 days; with 10 for parts, 38 days from 6 May are 13 June.
func TestLikelyDay(t *testing.T) {
	page := dayPage(t, 7, 10)
	assert.Contains(t, page, "about 13 June 2025")
	assert.Contains(t, page, "from 6 May 2025, 10 days for parts. Then 25 hours of our work, and 3 more for what waits or may be found, at 7 hours a week.")
	assert.Contains(t, page, "Without those more hours it is 10 June 2025. Waiting for specialists is not in it.")
	page = dayPage(t, 0, 0)
	assert.Contains(t, page, "not known yet")
	assert.Contains(t, page, "our settings do not say how many hours a week we can give")
}
