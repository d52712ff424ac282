package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/belief"
	"longstand/advisor/book"
	"longstand/advisor/engine"
)

var tensRow = regexp.MustCompile(`(?m)^\| (\d+) of (\d+) \| (\d+) of (\d+) \| (\d+) of (\d+) \| (\d+) of 100 \| (\d+) of 100 \|$`)

// TestManualTens reckons the table of chances anew.
func TestManualTens(t *testing.T) {
	rows := tensRow.FindAllStringSubmatch(manualPage(t), -1)
	require.Len(t, rows, 7)
	for _, row := range rows {
		var n [8]int
		for i := range n {
			_, err := fmt.Sscan(row[i+1], &n[i])
			require.NoError(t, err)
		}
		base, with, without := advisor.Count{N: n[0], Of: n[1]}, advisor.Count{N: n[2], Of: n[3]}, advisor.Count{N: n[4], Of: n[5]}
		for i, truth := range []advisor.Truth{advisor.True, advisor.False} {
			p, _, _ := belief.Update(base.Chance(), []belief.Evidence{{A: with.Chance(), B: without.Chance(), Truth: truth}}, [5]advisor.Trust{{Hit: 1}})
			assert.Equal(t, fmt.Sprintf("%.0f", 100*p), row[7+i], row[0])
		}
	}
}

// TestManualCommands runs the command lines of the manual among its files, in
// order. Three points stand for anything that comes out, on a line of their own
// for any lines; where nothing follows the command, nothing is compared.
func TestManualCommands(t *testing.T) {
	page := manualPage(t)
	t.Chdir(t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	t.Setenv(houseVariable, "") // put back at the end
	require.NoError(t, os.Unsetenv(houseVariable))
	ran := 0
	for _, e := range examples(page) {
		if e.wrong == nil && e.file != "" {
			require.NoError(t, os.MkdirAll(filepath.Dir(e.file), 0o700))
			require.NoError(t, os.WriteFile(e.file, []byte(e.text), 0o600))
		}
		if e.language != "console" {
			continue
		}
		command, want, _ := strings.Cut(e.text, "\n")
		args, ok := strings.CutPrefix(command, "$ longstand ")
		require.True(t, ok, "line %d", e.line)
		var out, errs bytes.Buffer
		require.Equal(t, exitDone, run(strings.Fields(args), nil, &out, &errs), "line %d: %s", e.line, errs.String())
		if want != "" && !regexp.MustCompile(elided(want)).MatchString(out.String()) {
			t.Errorf("line %d: %s prints otherwise:\n%.1500s", e.line, command, out.String())
		}
		assert.NotContains(t, out.String(), "house/hoses.toml:", "line %d: it has a fault", e.line)
		ran++
	}
	assert.Greater(t, ran, 3)
}

// elided is the pattern of what should come out.
func elided(want string) string {
	pattern := regexp.QuoteMeta(want)
	pattern = strings.ReplaceAll(pattern, `\.\.\.`+"\n", "(?s:.*)")
	return "^" + strings.ReplaceAll(pattern, `\.\.\.`, ".*") + "$"
}

// TestManualThresholds holds the table of if_left against the engine: beside
// each chance that it names the call turns.
func TestManualThresholds(t *testing.T) {
	t.Parallel()
	page := manualPage(t)
	var rules strings.Builder
	want := map[string]advisor.Call{}
	for i, row := range []struct {
		says, from   string
		left, chance float64
	}{
		{"half of what the work costs", "2 in 3", 50, 2. / 3},
		{"twice what it costs", "1 in 3", 200, 1. / 3},
		{"four times", "1 in 5", 400, 1. / 5},
	} {
		assert.Contains(t, page, "\n| "+row.says+" | "+row.from+" |\n")
		for _, side := range []struct {
			by   float64
			call advisor.Call
		}{{-0.01, advisor.Leave}, {0.01, advisor.Do}} {
			id := fmt.Sprintf("manual_%d_%s", i, strings.ReplaceAll(string(side.call), " ", "_"))
			want[id] = side.call
			fmt.Fprintf(&rules, "[[operation]]\nid = '%s'\nname = 'it'\npart = 'body'\nphase = 'repair'\nhours = [1, 1, 1]\nparts = [20, 20, 20]\nno_factor = true\n", id)
			fmt.Fprintf(&rules, "[[suspect]]\nid = 'of_%s'\nname = 'it'\npart = 'body'\ncured_by = ['%s']\nbase = [{ count = '%.0f of 1000' }]\nif_left = %v\nbecause = 'So.'\nsource = 'shop'\n",
				id, id, 1000*(row.chance+side.by), row.left)
		}
	}
	r := book.Load(append(builtIn(t), book.File{Name: "manual", Layer: "manual", Data: []byte(rules.String())}))
	require.Empty(t, about(r.Diagnostics, "manual"))
	got := map[string]advisor.Call{}
	advice := engine.New(r.Book, r.Program).Advise(&advisor.Case{Date: "2025-10-14"})
	for i := range advice.Operations {
		if o := &advice.Operations[i]; want[o.ID] != "" {
			got[o.ID] = o.Call
		}
	}
	assert.Equal(t, want, got)
}

var inlineCommand = regexp.MustCompile("`longstand ([^`\n]+)`")

// TestManualNamesCommands: a command named within a line is there, with its flags.
func TestManualNamesCommands(t *testing.T) {
	named := inlineCommand.FindAllStringSubmatch(manualPage(t), -1)
	require.Greater(t, len(named), 10)
	for _, m := range named {
		words := strings.Fields(m[1])
		d := &door{out: &bytes.Buffer{}, errs: &bytes.Buffer{}}
		c, rest, err := d.root().Find(words)
		require.NoError(t, err, m[0])
		require.False(t, c.HasSubCommands(), "%s is no whole command", m[0])
		for _, word := range rest {
			if flag, ok := strings.CutPrefix(word, "--"); ok {
				known := c.Flags().Lookup(flag) != nil || c.InheritedFlags().Lookup(flag) != nil
				assert.True(t, known, "%s: no flag --%s", m[0], flag)
			}
		}
	}
}

var heading = regexp.MustCompile(`(?m)^#+ (.*)$`)
var linked = regexp.MustCompile(`\]\(#([^)]+)\)`)

// TestManualLinks: every link within the page leads to one of its heads.
func TestManualLinks(t *testing.T) {
	page, anchors := manualPage(t), map[string]bool{}
	for _, m := range heading.FindAllStringSubmatch(page, -1) {
		anchor := regexp.MustCompile(`[^a-z0-9 -]`).ReplaceAllString(strings.ToLower(m[1]), "")
		anchors[strings.ReplaceAll(anchor, " ", "-")] = true
	}
	links := linked.FindAllStringSubmatch(page, -1)
	require.Greater(t, len(links), 8)
	for _, m := range links {
		assert.True(t, anchors[m[1]], "#%s leads nowhere", m[1])
	}
}
