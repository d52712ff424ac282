package report_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// TestGoldenReckoning compares the reckoning of the demonstration car with the
// page that was read and approved.
func TestGoldenReckoning(t *testing.T) {
	page := report.Reckoning(shelf().Advise(readCase(t, "demo.toml")))
	for i, line := range strings.Split(page, "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, "line %d is wider than a terminal", i+1)
	}
	const golden = "../../testdata/golden/reckoning_demo.txt"
	if *rewrite {
		require.NoError(t, os.WriteFile(golden, []byte(page), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err, "run `go test ./advisor/report -update`")
	assert.Equal(t, string(want), page)
}

// TestReckoningShowsEveryStep reads the page of one made-up job by eye: 2 h at
// factor 1.5 and 60 an hour, parts 30, 10 saved, needed 1 time in 4.
func TestReckoningShowsEveryStep(t *testing.T) {
	figures := func(x int64) advisor.Figures { return advisor.Figures{Low: x, Usual: x, High: x, Mean: x} }
	a := &advisor.Advice{Case: &advisor.Case{Name: "A car"}, Settings: &advisor.Settings{Rate: 6000, Currency: "XTS", MinorDigits: 2, Tax: 0.1}}
	a.Total = advisor.Total{Firm: 0, Maybe: 5000, Likely: 5000, Lines: []advisor.Line{{Operation: "job", Name: "the job", Kind: "maybe",
		Chance: 0.25, Low: 20000, Usual: 20000, High: 20000, Mean: 20000, Expected: 5000, Deviation: 8660.25,
		Sum: &advisor.Sum{Hours: advisor.Three{Low: 2, Usual: 2, High: 2}, HoursMean: 2, Factor: 1.5, Labour: figures(18000), Parts: figures(3000), Saved: 1000}}}}
	page := strings.Join(strings.Fields(report.Reckoning(a)), " ")
	for _, want := range []string{"An hour is 60.00 XTS", "hours 2 / 2 / 2, mean 2, x 1.5 x 60.00 XTS 180.00 XTS",
		"parts 30.00 XTS / 30.00 XTS / 30.00 XTS, mean 30.00 XTS", "less: other work has it open -10.00 XTS", "in all 200.00 XTS",
		"x its chance 0.25 50.00 XTS", "standard deviation 86.60 XTS", "tax on the likely sum at 10 per cent 5.00 XTS", "likely, with tax 55.00 XTS"} {
		assert.Contains(t, page, want)
	}
}
