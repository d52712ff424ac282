package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// typedFor makes up an answer as a person would type it.
func typedFor(q *advisor.Question, i int) string {
	switch q.Kind {
	case advisor.YesNoKind:
		return []string{"yes", "no", "don't know"}[i%3]
	case advisor.Choice:
		return []string{"1", "2 @paper # a bill", "not 1", "1 or 2", "hidden"}[i%5]
	case advisor.Choices:
		return []string{"none", "1", "1 2", "not 1"}[i%4]
	case advisor.NumberKind:
		if q.High < 5 {
			return "-20" // degrees of frost
		}
		return []string{"3", "about 4", "2 to 5", "at least 1", "can't tell"}[i%5]
	case advisor.ReadingsKind:
		return "140 138 142 136"
	case advisor.Year:
		return []string{"1964", "about 1970", "1960s"}[i%3]
	case advisor.Code:
		return "2309"
	}
	return "so it is # noted"
}

// TestWholeIntakeThroughBothAskers holds a whole intake from a file of answers
// and again over a pipe: the two cases are the same to the byte, the forecast
// is frozen in both, and nothing is left to ask.
func TestWholeIntakeThroughBothAskers(t *testing.T) {
	d := &door{}
	e, err := d.engine()
	require.NoError(t, err)
	folder := t.TempDir()
	typed := map[string]string{}
	var script strings.Builder
	for i := range e.Book().Questions {
		if q := &e.Book().Questions[i]; q.Station != "inspection" {
			typed[q.ID] = typedFor(q, i)
			fmt.Fprintf(&script, "%s = %s\n", q.ID, typed[q.ID])
		}
	}
	answers := filepath.Join(folder, "answers.txt")
	require.NoError(t, os.WriteFile(answers, []byte(script.String()), 0o600))

	first, second := filepath.Join(folder, "one", "car.toml"), filepath.Join(folder, "two", "car.toml")
	require.NoError(t, os.Mkdir(filepath.Dir(first), 0o700))
	require.NoError(t, os.Mkdir(filepath.Dir(second), 0o700))
	var out, errs bytes.Buffer
	code := run([]string{"intake", first, "--date", "2025-10-14", "--answers", answers}, nil, &out, &errs)
	assert.Contains(t, out.String(), "nothing is left to ask; the forecast is frozen", errs.String())
	if code != exitDone {
		assert.Contains(t, errs.String(), "was not asked")
	}

	data, err := os.ReadFile(first)
	require.NoError(t, err)
	m := &mechanic{book: e.Book(), questions: e.Book().Questions, answers: typed, met: map[string]bool{}, oneByOne: true}
	out.Reset()
	code = run([]string{"intake", second, "--date", "2025-10-14"}, m, &out, &m.screen)
	assert.Equal(t, exitDone, code, m.screen.String()[max(0, m.screen.Len()-2000):])
	again, err := os.ReadFile(second)
	require.NoError(t, err)
	assert.Equal(t, string(data), string(again))

	c, faults := casefile.Read(second, again, e.Book())
	require.False(t, faults.HasErrors())
	assert.Len(t, c.Forecast, len(e.Advise(c).Suspects))
	assert.Equal(t, e.Book().Fingerprint, c.Book)
	out.Reset()
	assert.Equal(t, exitDone, run([]string{"intake", second, "--no-input"}, nil, &out, &errs))
	after, err := os.ReadFile(second)
	require.NoError(t, err)
	assert.Equal(t, string(again), string(after), "a forecast is never reckoned again")
}
