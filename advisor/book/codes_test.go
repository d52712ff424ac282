package book

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/casefile"
	"longstand/advisor/diag"
)

func base(t testing.TB) File {
	data, err := os.ReadFile("../../testdata/check/base.toml")
	require.NoError(t, err)
	return File{Name: "base.toml", Data: data}
}

func codesOf(l diag.List) (codes []string) {
	for _, d := range l {
		codes = append(codes, d.Code)
	}
	return codes
}

// TestCodeExamples runs every example of every code: the wrong one must earn
// it, the right one must not, and must earn no other error either.
func TestCodeExamples(t *testing.T) {
	small := base(t)
	book := Load([]File{small}).Book
	run := func(in, text string) diag.List {
		switch in {
		case "case":
			_, faults := casefile.Read("x.toml", []byte("case = 1\ndate = 2025-10-14\n"+text), book)
			if regexp.MustCompile(`(?m)^(case|date) =`).MatchString(text) {
				_, faults = casefile.Read("x.toml", []byte(text), book)
			}
			return faults
		case "house":
			return Check([]File{small, {Name: "x.toml", Data: []byte(text), Layer: "house"}}).Diagnostics
		case "condition":
			return nil
		}
		return Check([]File{small, {Name: "x.toml", Data: []byte(text)}}).Diagnostics
	}
	for _, c := range Codes() {
		assert.NotEmpty(t, c.Title, c.ID)
		if c.Wrong == "" || c.In == "condition" {
			continue
		}
		wrong := run(c.In, c.Wrong)
		assert.Contains(t, codesOf(wrong), c.ID, "%s\n%s\n%v", c.ID, c.Wrong, wrong)
		right := run(c.In, c.Right)
		right = slices.DeleteFunc(right, func(d diag.Diagnostic) bool { return d.Code == "missing-key" && c.In == "case" })
		assert.Empty(t, right, "%s\n%s", c.ID, c.Right)
	}
}

var codeUse = regexp.MustCompile(`(?:Errorf|Warnf)\([^\n]*?, "([a-z]+(?:-[a-z]+)*)",`)

// TestEveryCodeIsExplained finds the codes in the sources of the rooms that read files.
func TestEveryCodeIsExplained(t *testing.T) {
	var known []string
	for _, c := range Codes() {
		known = append(known, c.ID)
	}
	assert.True(t, slices.IsSorted(known))
	assert.Equal(t, known, slices.Compact(slices.Clone(known)))
	used := 0
	for _, room := range []string{".", "../tomltext", "../casefile"} {
		paths, err := filepath.Glob(room + "/*.go")
		require.NoError(t, err)
		for _, p := range paths {
			data, err := os.ReadFile(p)
			require.NoError(t, err)
			for _, m := range codeUse.FindAllSubmatch(data, -1) {
				assert.Contains(t, known, string(m[1]), p)
				used++
			}
		}
	}
	assert.Greater(t, used, 50)
}
