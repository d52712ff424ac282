package report_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/report"
)

// sent is the demonstration car with a letter noted, as its bytes read back.
func sent(t *testing.T, since string) *advisor.Case {
	const path = "../../testdata/cases/demo.toml"
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	says := report.LetterSays(shelf().Advise(readCase(t, "demo.toml")), "2025-05-09")
	data, err = casefile.Remember(data, &says)
	require.NoError(t, err)
	if since != "" {
		data = []byte(strings.Replace(string(data), "[answers]\n", "[answers]\n"+since+"\n", 1))
	}
	c, faults := casefile.Read(path, data, shelf().Book())
	require.False(t, faults.HasErrors(), faults)
	require.Len(t, c.Letters, 1)
	says.At, c.Letters[0].At = advisor.Place{}, advisor.Place{}
	assert.Equal(t, says, c.Letters[0], "what a letter said reads back as it was")
	return c
}

func since(t *testing.T, c *advisor.Case, n int, format string) (string, error) {
	return report.Letter(shelf().Advise(c), shelf().Book(), report.LetterOptions{Format: format, Since: n})
}

func TestLaterLetterSaysOnlyWhatChanged(t *testing.T) {
	c := sent(t, `bubbles = "repeated"`)
	text, err := since(t, c, 1, "text")
	require.NoError(t, err)
	flat := strings.Join(strings.Fields(text), " ")
	assert.Contains(t, flat, "Since letter 1 of 9 May 2025")
	assert.Contains(t, flat, "Job demo, letter 2.")
	assert.Regexp(t, `To agree today: then £[0-9,]+; now £[0-9,]+`, flat)
	assert.Contains(t, flat, "repeated on the same cylinder", "what was found")
	assert.Contains(t, flat, `Lift the cylinder head: it was "leave" and is now "advised, but it waits"`)
	assert.Contains(t, flat, "What must not be done", "safety stands in every letter")
	assert.Contains(t, flat, "The inside of the engine")
	for _, not := range []string{"Seat belts, cabin and exhaust", "How far to go", "Where it stood", "The routine work"} {
		assert.NotContains(t, flat, not, "it has not changed")
	}
	whole := strings.Count(letterOn(t, c, "text"), "\n")
	assert.Less(t, strings.Count(text, "\n"), whole/3)
}

func TestLaterLetterWithoutNews(t *testing.T) {
	c := sent(t, "")
	text, err := since(t, c, 1, "text")
	require.NoError(t, err)
	assert.Contains(t, text, "Nothing has changed since then.")
	assert.NotContains(t, text, "Your answer")
	_, err = since(t, c, 2, "text")
	assert.ErrorContains(t, err, "no letter 2; the last was 1")
	_, err = since(t, readCase(t, "demo.toml"), 1, "text")
	assert.ErrorContains(t, err, "--send")
}

// TestLaterLetterTellsOfStops lifts one stop by work that is done.
func TestLaterLetterTellsOfStops(t *testing.T) {
	c := sent(t, "")
	c.Done = append(c.Done, advisor.Decision{Operation: "engine_oil_filter"})
	text, err := since(t, c, 1, "text")
	require.NoError(t, err)
	flat := strings.Join(strings.Fields(text), " ")
	assert.Contains(t, flat, "Gone, because it is so now: oil and filter are changed.")
	assert.Contains(t, flat, `it was "do" and is now "done"`)
}
