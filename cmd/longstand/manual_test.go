package main

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/book"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// manual is the page for rule authors; every example on it is run here.
const manual = "../../rules/README.md"

// example is a fenced block of the manual: its language, the name of the file
// in which it belongs, the faults that it is an example of, and the line on
// which its text begins.
type example struct {
	language, file, text string
	wrong                []string // codes
	line                 int
}

// examples are the fenced blocks of a page, in order.
func examples(page string) (out []example) {
	open := false
	for i, line := range strings.Split(page, "\n") {
		info, fence := strings.CutPrefix(line, "```")
		switch {
		case fence && !open:
			words := append(strings.Fields(info), "", "", "", "")
			e := example{language: words[0], file: words[1], line: i + 2}
			if words[1] == "wrong" {
				e.wrong, e.file = strings.Split(words[2], ","), words[3]
			}
			out, open = append(out, e), true
		case fence:
			open = false
		case open:
			out[len(out)-1].text += line + "\n"
		}
	}
	return out
}

func manualPage(t *testing.T) string {
	data, err := os.ReadFile(manual)
	require.NoError(t, err)
	return string(data)
}

// TestManualIsUpToDate holds the generated parts against the program's tables.
func TestManualIsUpToDate(t *testing.T) {
	page := manualPage(t)
	now, err := book.Manual(page)
	require.NoError(t, err)
	now = withFaults(t, now)
	if *update {
		require.NoError(t, os.WriteFile(manual, []byte(now), 0o644))
	}
	assert.Equal(t, strings.Split(now, "\n"), strings.Split(manualPage(t), "\n"), "out of date: go test ./cmd/longstand -run Manual -update")
}

// withFaults writes behind each wrong example of a page what the check says of it.
func withFaults(t *testing.T, page string) string {
	all := examples(page)
	lines := strings.Split(page, "\n")
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].wrong == nil {
			continue
		}
		require.Less(t, i+1, len(all))
		told := all[i+1]
		require.Equal(t, "text", told.language, "line %d: behind a wrong example stands what is said of it", told.line)
		list := faultsOf(t, &all[i])
		var codes []string
		for _, d := range list {
			codes = append(codes, d.Code)
		}
		require.Equal(t, all[i].wrong, codes, "line %d", all[i].line)
		var said bytes.Buffer
		require.NoError(t, list.WriteText(&said, func(string) []byte { return []byte(all[i].text) }))
		end := told.line - 1 + strings.Count(told.text, "\n")
		lines = slices.Concat(lines[:told.line-1], strings.Split(strings.TrimRight(said.String(), "\n"), "\n"), lines[end:])
	}
	return strings.Join(lines, "\n")
}

// faultsOf is what the check says of one example as a house rule.
func faultsOf(t *testing.T, e *example) diag.List {
	files := append(builtIn(t), book.File{Name: e.file, Layer: "house", Data: []byte(e.text)})
	list := about(book.Load(files).Diagnostics, e.file)
	if len(list) == 0 {
		list = about(book.Check(files).Diagnostics, e.file)
	}
	return list
}

func builtIn(t *testing.T) []book.File {
	files, err := (&door{}).bookFiles()
	require.NoError(t, err)
	return files
}

var inlineSilence = regexp.MustCompile("`(silence = \\{ ([a-z-]+) = [^`]+\\})`")

// TestManualSilence: the line that silences a warning silences the example above it.
func TestManualSilence(t *testing.T) {
	t.Parallel()
	page := manualPage(t)
	line := inlineSilence.FindStringSubmatch(page)
	require.NotNil(t, line)
	for _, e := range examples(page) {
		if slices.Contains(e.wrong, line[2]) {
			e.text += line[1] + "\n"
			assert.Empty(t, faultsOf(t, &e))
			return
		}
	}
	t.Errorf("no example earns %s", line[2])
}

// TestManualRules: the rules of the manual, all together one house layer, are
// without fault and without warning.
func TestManualRules(t *testing.T) {
	t.Parallel()
	files := builtIn(t)
	for _, e := range examples(manualPage(t)) {
		if e.language == "toml" && e.wrong == nil && !strings.HasPrefix(e.file, "cases/") {
			files = append(files, book.File{Name: fmt.Sprintf("manual:%d", e.line), Layer: "manual", Data: []byte(e.text)})
		}
	}
	require.Greater(t, len(files), len(builtIn(t))+8)
	for _, d := range book.Check(files).Diagnostics {
		assert.False(t, strings.HasPrefix(d.At.File, "manual:") || d.Severity == diag.Error, "%s", d.Line())
	}
}

// TestManualConditions compiles every condition of the manual, and demands one
// with each operator, each function of the language and a function of the trade.
func TestManualConditions(t *testing.T) {
	t.Parallel()
	var rules, all strings.Builder
	for _, e := range examples(manualPage(t)) {
		if e.language != "condition" {
			continue
		}
		for i, line := range strings.Split(strings.TrimSpace(e.text), "\n") {
			fmt.Fprintf(&rules, "[[standing]]\nid = 'manual_%d'\noperation = 'exhaust'\nsays = 'in'\nwhen = '%s'\nbecause = 'So.'\nsource = 'shop'\n", e.line+i, line)
			all.WriteString(" " + line + "\n")
		}
	}
	files := append(builtIn(t), book.File{Name: "manual", Layer: "manual", Data: []byte(rules.String())})
	for _, d := range about(book.Load(files).Diagnostics, "manual") {
		t.Errorf("%s", d.Line())
	}
	for _, u := range condition.Operators() {
		assert.Contains(t, all.String(), " "+u.Name+" ", "no condition shows it")
	}
	trade := 0
	for _, u := range condition.Functions() {
		shown := strings.Contains(all.String(), " "+u.Name+"(")
		assert.True(t, shown || u.Source != "", "no condition shows %s", u.Name)
		if shown && u.Source != "" {
			trade++
		}
	}
	assert.Positive(t, trade)
}

// TestManualLanguages: no example passes unseen.
func TestManualLanguages(t *testing.T) {
	all := examples(manualPage(t))
	for i, e := range all {
		assert.Contains(t, []string{"toml", "condition", "console", "text"}, e.language, "line %d: no test runs this", e.line)
		if e.language == "text" {
			assert.NotEmpty(t, all[i-1].wrong, "line %d: no test compares this", e.line)
		}
	}
}
