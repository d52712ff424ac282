package report_test

import (
	"encoding/json"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// browse runs an installed Chromium on a page and gives its output; where there
// is none, or a tool named is missing, the test says so and is skipped.
func browse(t *testing.T, page string, args []string, tools ...string) string {
	browser := ""
	for _, name := range []string{os.Getenv("LONGSTAND_BROWSER"), "chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil && browser == "" {
			browser = path
		}
	}
	if browser == "" {
		t.Skip("skipped: no Chromium here (LONGSTAND_BROWSER, or on the path)")
	}
	for _, tool := range tools {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("skipped: no %s here", tool)
		}
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "letter.html")
	require.NoError(t, os.WriteFile(file, []byte(page), 0o600))
	args = append([]string{"--headless", "--disable-gpu", "--no-first-run", "--user-data-dir=" + filepath.Join(dir, "profile")}, args...)
	if os.Geteuid() == 0 {
		args = append(args, "--no-sandbox")
	}
	out, err := exec.Command(browser, append(args, "file://"+filepath.ToSlash(file))...).Output()
	require.NoError(t, err)
	return string(out)
}

// TestPrintedLetter prints on both papers: tagged, pages numbered, what matters
// on the first page alone, and no decision broken.
func TestPrintedLetter(t *testing.T) {
	for name, file := range map[string]string{"A4": "practice/P07.toml", "letter": "practice/P03.toml"} {
		t.Run(name, func(t *testing.T) {
			pdf := filepath.Join(t.TempDir(), "letter.pdf")
			page := strings.Replace(letterOf(t, file, "html"), "@page {", "@page { size: "+name+";", 1)
			browse(t, page, []string{"--no-pdf-header-footer", "--print-to-pdf=" + pdf}, "pdfinfo", "pdftotext")
			info, err := exec.Command("pdfinfo", pdf).Output()
			require.NoError(t, err)
			assert.Regexp(t, `Tagged: +yes`, string(info))
			text, err := exec.Command("pdftotext", pdf, "-").Output()
			require.NoError(t, err)
			pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
			checkPages(t, pages)
			assert.LessOrEqual(t, len(pages), 12, "an owner's letter is short")
		})
	}
}

func checkPages(t *testing.T, pages []string) {
	decisions := 0
	for i, p := range pages {
		assert.Regexp(t, regexp.MustCompile(`page `+fmt.Sprint(i+1)+` of `+fmt.Sprint(len(pages))), p)
		heads := len(regexp.MustCompile(`(?m)^(?:[1-8]\. [A-Z]|Routine work$)`).FindAllString(p, -1))
		asked := strings.Count(p, "Your answer, initials:")
		assert.Equal(t, heads, asked, "a decision breaks on page %d", i+1)
		decisions += asked
	}
	assert.Positive(t, decisions)
	for _, title := range []string{"The three things", "To agree today", "Likely ready"} {
		assert.Contains(t, pages[0], title)
	}
	assert.Regexp(t, `What must\s+not be done`, pages[0])
	assert.NotContains(t, pages[0], "What we looked at and found")
	assert.Contains(t, pages[1], "What we looked at and found", "the first page ends of itself")
}

// TestLetterHasNoBarriers runs axe-core, from the file that LONGSTAND_AXE names,
// on the letter with a photograph and on a later letter.
func TestLetterHasNoBarriers(t *testing.T) {
	if os.Getenv("LONGSTAND_AXE") == "" {
		t.Skip("skipped: LONGSTAND_AXE names no axe-core file")
	}
	axe, err := os.ReadFile(os.Getenv("LONGSTAND_AXE"))
	require.NoError(t, err)
	c := sent(t, `bubbles = "repeated"`)
	for i := range c.Answers {
		if c.Answers[i].Question == "brake_hose_look" {
			c.Answers[i].Photos = []advisor.Photo{{File: "hose.png"}}
		}
	}
	for _, since := range []int{0, 1} {
		page, err := report.Letter(shelf().Advise(c), shelf().Book(), report.LetterOptions{Format: "html", Since: since,
			Photos: map[string][]byte{"hose.png": pixel}})
		require.NoError(t, err)
		var found struct {
			Violations []struct{ ID, Help string }
			Passes     []struct{ ID string }
		}
		require.NoError(t, json.Unmarshal([]byte(judged(t, page, string(axe))), &found))
		assert.Empty(t, found.Violations)
		assert.Greater(t, len(found.Passes), 20)
	}
}

// judged opens a copy of a page with axe-core in it and gives its verdict.
func judged(t *testing.T, page, axe string) string {
	page = regexp.MustCompile(`<meta http-equiv="Content-Security-Policy"[^>]*>`).ReplaceAllString(page, "")
	run := `axe.run(document).then(r => { const p = document.createElement("pre"); p.id = "verdict";
		p.textContent = encodeURIComponent(JSON.stringify({violations: r.violations.map(v => ({id: v.id, help: v.help})), passes: r.passes.map(v => ({id: v.id}))}));
		document.body.append(p); })`
	page = strings.Replace(page, "</body>", "<script>"+strings.ReplaceAll(axe, "</script", `<\/script`)+"</script><script>"+run+"</script></body>", 1)
	dom := browse(t, page, []string{"--virtual-time-budget=30000", "--dump-dom"})
	_, rest, ok := strings.Cut(dom, `<pre id="verdict">`)
	require.True(t, ok, "axe-core gave no verdict")
	coded, _, _ := strings.Cut(rest, "</pre>")
	verdict, err := url.QueryUnescape(strings.ReplaceAll(coded, "+", "%2B"))
	require.NoError(t, err)
	return verdict
}
