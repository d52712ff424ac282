package book

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/diag"
)

// notInErr are codes that no small text beside the small book can earn: those
// of house layers and cases stand in their own tests, with their examples.
var notInErr = []string{"file-too-large", "not-decided", "too-much", "type-check"}

// TestEveryCodeIsInErr: each code of a rule file is shown at its place at least once.
func TestEveryCodeIsInErr(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/check/err/*.want")
	require.NoError(t, err)
	var all strings.Builder
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		all.Write(data)
	}
	for _, c := range Codes() {
		if (c.In == "rules" || c.In == "condition") && !slices.Contains(notInErr, c.ID) {
			assert.True(t, strings.Contains(all.String(), "["+c.ID+"]\n"), "no text of testdata/check/err earns %s", c.ID)
		}
	}
}

var firstQuoted = regexp.MustCompile(`"((?:[^"\\]|\\.)*)"`)

// holdsToken demands of a diagnostic that its span lies in its file, and that
// the word which its message names first, in quotes, stands in the span or, of
// what a table lacks or does, in the table that starts there.
func holdsToken(t *testing.T, d diag.Diagnostic, data []byte) {
	require.True(t, 0 <= d.At.Start && d.At.Start <= d.At.End && d.At.End <= len(data), "%+v", d)
	piece := string(data[d.At.Start:d.At.End])
	quoted := firstQuoted.FindString(d.Message)
	word, err := strconv.Unquote(quoted)
	if err != nil || word == "" || strings.Contains(piece, "\\") {
		return // escapes: the bytes are not the text's
	}
	if slices.Contains(wholeTable, d.Code) {
		return // the word stands further down in the table
	}
	require.Contains(t, normal(piece), normal(word), "%s: %s", d.At, d.Message)
}

// wholeTable are codes whose place is a table and whose message names a thing in it.
var wholeTable = []string{"levels-overlap", "counted-twice", "never-reached", "toml-syntax", "house-clash", "idle-option", "unused-caution"}

// normal drops what TOML and conditions may write otherwise.
func normal(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '"' || r == '\'' || r == ' ' || r == '\r' || r == '\n' || r == '\t' {
			return -1
		}
		return r
	}, s)
}

// TestEverySpanHoldsItsToken over every bad text.
func TestEverySpanHoldsItsToken(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/check/err/*.toml")
	require.NoError(t, err)
	small := base(t)
	named := 0
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, d := range Check([]File{small, {Name: "x.toml", Data: data}}).Diagnostics {
			text := data
			if d.At.File == small.Name {
				text = small.Data
			}
			holdsToken(t, d, text)
			if strings.Contains(d.Message, `"`) {
				named++
			}
		}
	}
	assert.Greater(t, named, 30)
}
