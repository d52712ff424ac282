package report_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/engine"
	"longstand/advisor/report"
)

// cars are the cases whose pages the tests read: the demo and every practice car.
func cars(t testing.TB) []string {
	out, err := filepath.Glob(cases + "/practice/*.toml")
	require.NoError(t, err)
	return append(out, cases+"/demo.toml")
}

var word = regexp.MustCompile(`[\p{L}\p{N}£.,]*[\p{L}\p{N}£]`)

// words are the words and numbers of a page, in order, without its marks.
func words(page string) []string {
	page = strings.NewReplacer(`\`, "", "**Caution:**", "", "&gt;", ">", "&lt;", "<", "&amp;", "&").Replace(page)
	return word.FindAllString(page, -1)
}

// TestMarkdownSaysWhatTheTextSays holds the two forms of each page together,
// word by word and number by number.
func TestMarkdownSaysWhatTheTextSays(t *testing.T) {
	e := shelf()
	for i, path := range cars(t) {
		a := advised(t, e, path, "")
		same(t, path, report.Text(a), report.Markdown(a))
		b := engine.Place(&a.Ladder, 500000)
		same(t, path, report.Ladder(a, &b), report.LadderMarkdown(a, &b))
		if i%7 == 0 {
			w := e.Why(a.Case, "head_off")
			same(t, path, report.Why(a, &w), report.WhyMarkdown(a, &w))
		}
	}
}

func same(t *testing.T, path, text, markdown string) {
	t.Helper()
	a, b := words(text), words(markdown)
	for i := range min(len(a), len(b)) {
		if !assert.Equal(t, a[i], b[i], "%s: after %s", path, strings.Join(a[max(0, i-8):i], " ")) {
			return
		}
	}
	assert.Len(t, b, len(a), path)
}

// TestPagesKeepToTheTerminal looks at every line of every page: its width, the
// words a page never says, and figures that went astray.
func TestPagesKeepToTheTerminal(t *testing.T) {
	e := shelf()
	never := regexp.MustCompile(`(?i)\b(margin|concern|advisory|amber|traffic.light)\b|%!|NaN|\+Inf`)
	for i, path := range cars(t) {
		a := advised(t, e, path, "")
		b := engine.Place(&a.Ladder, 400000)
		pages := []string{report.Text(a), report.Ladder(a, &b), report.Sheet(a, e.Book()), report.Handback(a)}
		for j, o := range a.Operations {
			if (i+j)%300 == 0 {
				w := e.Why(a.Case, o.ID)
				pages = append(pages, report.Why(a, &w))
			}
		}
		for _, page := range pages {
			for n, line := range strings.Split(page, "\n") {
				assert.LessOrEqual(t, len([]rune(line)), 80, "%s line %d: %s", path, n+1, line)
				assert.NotRegexp(t, never, line, "%s line %d", path, n+1)
				assert.Equal(t, strings.TrimRight(line, " "), line, "%s line %d", path, n+1)
			}
		}
	}
}

// TestTextAndJSONAgree looks up the figures of the JSON on the text page.
func TestTextAndJSONAgree(t *testing.T) {
	for _, path := range cars(t) {
		a := advised(t, shelf(), path, "")
		doc := decoded(t, a).(map[string]any)
		text := strings.Join(strings.Fields(report.Text(a)), " ")
		money := func(v any) string { return report.Money(whole(t, v), a.Settings) }
		for _, o := range doc["operations"].([]any) {
			o := o.(map[string]any)
			if call := o["call"]; call == "do" || call == "do while open" || call == "look first" {
				cost := report.Money(whole(t, o["cost"])-whole(t, o["saved"]), a.Settings)
				assert.Contains(t, text, fmt.Sprintf("[%s], %s", o["id"], cost), path)
			}
		}
		total := doc["total"].(map[string]any)
		assert.Contains(t, text, "firm work and looks "+money(total["firm"])+" of which looking "+money(total["looking"]), path)
		assert.Contains(t, text, "may be needed "+money(total["maybe"]), path)
		assert.Contains(t, text, "likely "+money(total["likely"]), path)
		steps := strings.Join(strings.Fields(report.Ladder(a, nil)), " ")
		for i, s := range doc["ladder"].(map[string]any)["steps"].([]any) {
			s := s.(map[string]any)
			assert.Contains(t, steps, fmt.Sprintf("Adds %s and is expected to save %s later. The whole scope: %s.",
				money(s["add_cost"]), money(s["add_benefit"]), money(s["cost"])), "%s step %d", path, i)
			if again := whole(t, s["again_cost"]); again > 0 {
				assert.Contains(t, steps, fmt.Sprintf("Done later instead it costs %s more", money(s["again_cost"])), "%s step %d", path, i)
			}
		}
	}
}

// whole reads a whole number of the JSON.
func whole(t testing.TB, v any) int64 {
	n, err := v.(interface{ Int64() (int64, error) }).Int64()
	require.NoError(t, err)
	return n
}

// TestGoldenWhyAndLadder shows why the head comes off a car that boiled and stays
// on one with nothing against it, and how far to go with either.
func TestGoldenWhyAndLadder(t *testing.T) {
	e := shelf()
	for name, path := range map[string]string{"demo": "/demo.toml", "boiled": "/practice/P05.toml"} {
		a := advised(t, e, cases+path, "")
		w := e.Why(a.Case, "head_off")
		a, said := report.Spoken(a, e.Book()), report.SpokenWhy(a, e.Book(), &w)
		for file, page := range map[string]string{"why_head_" + name: report.Why(a, said), "ladder_" + name: report.Ladder(a, nil)} {
			golden := "../../testdata/golden/" + file + ".txt"
			if *rewrite {
				require.NoError(t, os.WriteFile(golden, []byte(page), 0o644))
				continue
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err, "run `go test ./advisor/report -update`")
			assert.Equal(t, string(want), page)
		}
	}
}

// TestEveryIdIsExplained asks why of everything that a why may be asked of.
func TestEveryIdIsExplained(t *testing.T) {
	e := shelf()
	a := advised(t, e, cases+"/practice/P05.toml", "")
	n := 0
	for i, it := range e.Book().Items() {
		asked := slices.Contains([]string{"operation", "suspect", "inspection", "hold", "question"}, it.Kind)
		w := advisor.Why{ID: it.ID}
		switch {
		case !asked:
			continue
		case it.Kind == "question" && i%20 == 0 || i%90 == 0:
			w = e.Why(a.Case, it.ID)
		default:
			continue
		}
		n++
		page := report.Why(a, &w)
		assert.Greater(t, len(strings.Fields(page)), 30, "%s %s", it.Kind, it.ID)
		assert.Contains(t, page, report.Closing[:30])
	}
	assert.Greater(t, n, 8)
}
