package book

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
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

// conditionBook has the names that the examples of conditions use.
const conditionBook = `
[[question]]
id = "laid_up"
kind = "number"
ask = "How long?"
name = "laid up"
station = "story"
always = true
range = [0, 60]
[[question]]
id = "damp"
kind = "yesno"
ask = "Damp?"
name = "damp"
station = "story"
always = true
`

// long are examples that are too long to be shown in full.
var long = map[string]string{
	"too-long": strings.Repeat("damp or ", 300) + "damp",
	"too-deep": strings.Repeat("(", 40) + "damp" + strings.Repeat(")", 40),
}

// faultsOf reads an example of a code where it belongs.
func faultsOf(t *testing.T, small File, in, code, text string) diag.List {
	switch in {
	case "case":
		whole := "case = 1\ndate = 2025-10-14\n" + text
		if regexp.MustCompile(`(?m)^(case|date) =`).MatchString(text) {
			whole = "case = 1\n" + text
			if strings.HasPrefix(text, "case") {
				whole = text + "\ndate = 2025-10-14"
			}
		}
		_, faults := casefile.Read("x.toml", []byte(whole), Load([]File{small}).Book)
		return faults
	case "house":
		return Check([]File{small, {Name: "x.toml", Data: []byte(text), Layer: "house"}}).Diagnostics
	case "condition":
		text = conditionBook + "[[word]]\nid = 'w'\ntext = 'w'\nmeans = 'w'\n[settings]\ncare_when = [{ care = 'normal', when = '" + text + "' }]\n"
		return slices.DeleteFunc(check([]File{small, {Name: "x.toml", Data: []byte(text)}}, false).Diagnostics, func(d diag.Diagnostic) bool {
			return d.Code == "no-specimen" // the examples are of the language, not of proofs
		})
	}
	return check([]File{small, {Name: "x.toml", Data: []byte(text)}}, false).Diagnostics
}

// TestCodeExamples runs every example of every code: the wrong one must earn
// exactly that code, the right one nothing.
func TestCodeExamples(t *testing.T) {
	small := base(t)
	for _, c := range Codes() {
		assert.NotEmpty(t, c.Title, c.ID)
		if c.Wrong == "" {
			continue
		}
		wrong := c.Wrong
		if full := long[c.ID]; full != "" {
			wrong = full
		}
		codes := codesOf(faultsOf(t, small, c.In, c.ID, wrong))
		slices.Sort(codes)
		assert.Equal(t, []string{c.ID}, slices.Compact(codes), "%s\n%s", c.ID, c.Wrong)
		assert.Empty(t, faultsOf(t, small, c.In, c.ID, c.Right), "%s\n%s", c.ID, c.Right)
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
