package report_test

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/calibration"
	"longstand/advisor/report"
)

func TestEveryEndHoldsToItsSchema(t *testing.T) {
	e := shelf()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(report.EndedSchema()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("ended.schema.json", doc))
	schema, err := c.Compile("ended.schema.json")
	require.NoError(t, err)
	paths, err := filepath.Glob(cases + "/closed/*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(paths), 8)
	for _, path := range append(paths, cases+"/demo.toml") {
		a := advised(t, e, path, "")
		page, err := report.EndedJSON(a, e.Book())
		require.NoError(t, err)
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(page))
		require.NoError(t, err)
		assert.NoError(t, schema.Validate(v), path)
		for line := range strings.Lines(report.Ended(a, e.Book())) {
			assert.LessOrEqual(t, len([]rune(strings.TrimSuffix(line, "\n"))), 80, line)
		}
	}
}

func TestEndOfAJob(t *testing.T) {
	e := shelf()
	a := advised(t, e, cases+"/closed/chapel.toml", "")
	page := report.Ended(a, e.Book())
	assert.Contains(t, page, "job chapel, closed on 12 September 2024 by AB\n")
	assert.Contains(t, page, "there is oil on the clutch disc: forecast on about 4 in 10; AB.\n")
	assert.Contains(t, page, "Both rear chassis legs.\n")
	assert.Contains(t, page, "9 suspects were looked at in this job, and 4 found; of the other 4 nothing is\nknown.")
	assert.NotContains(t, page, "gearbox are worn", "unlikely, and nobody looked")
	found, sound := strings.Index(page, "Found:"), strings.Index(page, "Looked at, and sound:")
	assert.True(t, 0 < found && found < sound)
	assert.Less(t, strings.Index(page, "there is oil on"), sound)
	assert.Greater(t, strings.Index(page, "the clutch is worn out"), sound)
	assert.Contains(t, report.EndedMarkdown(a, e.Book()), "\n## Hours taken, beside the estimate\n")

	open := report.Ended(advised(t, e, cases+"/closed/smithy.toml", ""), e.Book())
	assert.Contains(t, open, "Not closed yet: ")
	assert.NotContains(t, open, "forecast on about", "of what is still asked the forecast is not shown")
	late := report.Ended(advised(t, e, cases+"/closed/ferry.toml", ""), e.Book())
	assert.Contains(t, late, "battery spent: no forecast")
	assert.Contains(t, late, "No forecast was frozen before the first finding")
}

// TestAccountSaysWhichWay: a band whose forecasts lie outside the bounds says so.
func TestAccountSaysWhichWay(t *testing.T) {
	account := func(forecast float64, n, there int) string {
		var all []calibration.Suspicion
		for i := range n {
			all = append(all, calibration.Suspicion{Forecast: forecast, Settled: true, There: i < there})
		}
		return strings.Join(strings.Fields(report.AccountText(&report.Account{Read: 1, Books: 1, Forecast: calibration.Reckon(all)}, &advisor.Settings{Locale: "en-GB"})), " ")
	}
	assert.Contains(t, account(.1, 100, 60), "10 to 20 in 100: 100 of 100 looked at; found 60, and the forecast meant 10.0; share 50 to 70 in 100: there more often than forecast")
	assert.Contains(t, account(.6, 100, 10), "there more seldom than forecast")
	assert.NotContains(t, account(.6, 100, 60), "than forecast")
	assert.NotContains(t, account(.6, 100, 60), "Change no figure", "60 and 40 can tell")
	assert.Contains(t, account(.6, 40, 29), "Change no figure of the book yet: 29 were found and 11 sound")
	assert.Contains(t, account(0, 0, 0), "there is nothing to count")
}
