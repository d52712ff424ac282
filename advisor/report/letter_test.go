package report_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
	"longstand/advisor/report"
	"longstand/rules"
)

// letterCases are the demonstration car, a car that is nearly ready, one whose
// head must come off and one that stood outdoors by the sea.
var letterCases = map[string]string{"demo": "demo.toml", "ready": "practice/P02.toml", "boiled": "practice/P05.toml", "seaside": "practice/P04.toml"}

// extensions are the endings of files, by form.
var extensions = map[string]string{"html": "html", "markdown": "md", "text": "txt"}

var shelf = sync.OnceValue(func() *engine.Engine {
	names, err := rules.Files.ReadDir(".")
	if err != nil {
		panic(err)
	}
	var files []book.File
	for _, n := range names {
		if filepath.Ext(n.Name()) == ".toml" {
			data, err := rules.Files.ReadFile(n.Name())
			if err != nil {
				panic(err)
			}
			files = append(files, book.File{Name: n.Name(), Data: data})
		}
	}
	r := book.Load(files)
	if r.Diagnostics.HasErrors() {
		panic(r.Diagnostics)
	}
	return engine.New(r.Book, r.Program)
})

func readCase(t *testing.T, file string) *advisor.Case {
	path := "../../testdata/cases/" + file
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	c, faults := casefile.Read(path, data, shelf().Book())
	require.False(t, faults.HasErrors(), path)
	return c
}

func letterOn(t *testing.T, c *advisor.Case, format string) string {
	page, err := report.Letter(shelf().Advise(c), shelf().Book(), report.LetterOptions{Format: format})
	require.NoError(t, err)
	return page
}

// written keeps the letters on cases as they stand in the repository.
var written = map[string]string{}

func letterOf(t *testing.T, file, format string) string {
	key := file + " " + format
	if written[key] == "" {
		written[key] = letterOn(t, readCase(t, file), format)
	}
	return written[key]
}

// TestGoldenLetters compares letters with those that were read and approved.
func TestGoldenLetters(t *testing.T) {
	for name, file := range letterCases {
		for _, format := range report.LetterFormats {
			if name != "demo" && format != "text" {
				continue // the forms say the same; one car shows all three
			}
			t.Run(name+"."+format, func(t *testing.T) {
				page := letterOf(t, file, format)
				golden := "../../testdata/golden/letter_" + name + "." + extensions[format]
				if *rewrite {
					require.NoError(t, os.WriteFile(golden, []byte(page), 0o644))
				}
				want, err := os.ReadFile(golden)
				require.NoError(t, err, "run `go test ./advisor/report -update`")
				assert.True(t, string(want) == page, "%s: first differs at %q", golden, firstDifference(string(want), page))
			})
		}
	}
}

// firstDifference is the first line of a page that is not as it was.
func firstDifference(want, got string) string {
	was := strings.Split(want, "\n")
	for i, line := range strings.Split(got, "\n") {
		if i >= len(was) || was[i] != line {
			return line
		}
	}
	return "its end"
}

// forbiddenWords never stand in a letter: words and marks that pass judgement
// without saying anything.
var forbiddenWords = regexp.MustCompile(`(?i)\b(margin|concern|advisory)\b|[✓✔✗✘★☆🟢🟡🔴]`)

func TestWordsOfTheLetter(t *testing.T) {
	for name, file := range letterCases {
		t.Run(name, func(t *testing.T) {
			text := letterOf(t, file, "text")
			assert.NotRegexp(t, forbiddenWords, text)
			assert.NotContains(t, text, "<no value>")
			for _, line := range strings.Split(text, "\n") {
				assert.LessOrEqual(t, len([]rune(line)), 80, line)
			}
			words, sentences := count(letterOf(t, file, "html"))
			require.Greater(t, sentences, 100)
			assert.Less(t, float64(words)/float64(sentences), 18.0, "words to a sentence")
		})
	}
}

// count gives the words and sentences in the running text of a page: what stands
// in paragraphs, items and cells of more than three words.
func count(page string) (words, sentences int) {
	page = regexp.MustCompile(`</?(?:strong|span|dt|div)[^>]*>`).ReplaceAllString(page, "")
	for _, m := range regexp.MustCompile(`(?s)<(?:p|li|td|dd)(?: [^>]*)?>(.*?)</`).FindAllStringSubmatch(page, -1) {
		for _, s := range regexp.MustCompile(`[.?!:;]+(?:\s|$)`).Split(m[1], -1) {
			if n := len(strings.Fields(s)); n > 3 {
				words, sentences = words+n, sentences+1
			}
		}
	}
	return words, sentences
}

// TestLetterSaysTheFirstThings looks for what the first page must hold, before
// the page ends.
func TestLetterSaysTheFirstThings(t *testing.T) {
	c := readCase(t, "demo.toml")
	a := shelf().Advise(c)
	front, _, found := strings.Cut(letterOn(t, c, "text"), "====")
	require.True(t, found)
	for _, want := range []string{c.Name, "The three things that matter", "To agree today", "Likely in the end", "Do not "} {
		assert.Contains(t, front, want)
	}
	taxed := int64(float64(a.Total.Firm)*(1+a.Settings.Tax) + 0.5)
	assert.Contains(t, front, report.Money(taxed, a.Settings))
	assert.LessOrEqual(t, strings.Count(front, "\n"), 60, "it is one page")
}

// TestTheOwnersWord checks what an owner said of money and what was declined.
func TestTheOwnersWord(t *testing.T) {
	c := readCase(t, "demo.toml")
	c.Answers = append(c.Answers, advisor.Answer{Question: "ring_sum", Value: advisor.Number(1500), How: advisor.Owner},
		advisor.Answer{Question: "stop_sum", Value: advisor.Number(4000), How: advisor.Owner})
	c.Declined = append(c.Declined, advisor.Decision{Operation: "brake_pipes"})
	text := strings.Join(strings.Fields(letterOn(t, c, "text")), " ")
	assert.Contains(t, text, "We ring you before passing £1,500.")
	assert.Contains(t, text, "You told us to stop at £4,000.")
	assert.Contains(t, text, "I have declined this work: renew rigid brake pipes.")
	assert.Contains(t, text, "It leaves on a trailer.")
	assert.NotContains(t, strings.Join(strings.Fields(letterOn(t, readCase(t, "demo.toml"), "text")), " "), "I have declined")
}
