package report_test

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// pounds reads a sum of money as a page writes it.
func pounds(s string) int {
	n, _ := strconv.Atoi(strings.NewReplacer("£", "", ",", "").Replace(s))
	return n
}

// rowsOf gives the cells of the table with a caption.
func rowsOf(t *testing.T, page, caption string) [][]string {
	_, rest, found := strings.Cut(page, "<caption>"+caption)
	require.True(t, found, caption)
	body, _, _ := strings.Cut(rest, "</table>")
	var rows [][]string
	for _, line := range strings.Split(body, "\n") {
		if cells := strings.Split(line, "</t"); strings.HasPrefix(line, "<tr>") {
			var row []string
			for _, c := range cells[:len(cells)-1] {
				row = append(row, c[strings.LastIndex(c, ">")+1:])
			}
			rows = append(rows, row[:4])
		}
	}
	return rows
}

// TestDecisionsMakeUpTheSum checks that what is asked for, with the routine, the
// ways in and the looks, adds up to the total, within a unit of rounding a row.
func TestDecisionsMakeUpTheSum(t *testing.T) {
	for name, file := range letterCases {
		t.Run(name, func(t *testing.T) {
			rows := rowsOf(t, letterOf(t, file, "html"), "How the decisions make up")
			last := rows[len(rows)-1]
			require.LessOrEqual(t, len(rows), 8+4, "eight decisions at most")
			for col := 1; col < 4; col++ {
				sum := 0
				for _, r := range rows[:len(rows)-1] {
					sum += pounds(r[col])
				}
				assert.InDelta(t, pounds(last[col]), sum, float64(len(rows)), "column %d", col)
			}
			a := shelf().Advise(readCase(t, file))
			assert.Equal(t, report.Money(int64(float64(a.Total.Likely)*(1+a.Settings.Tax)+0.5), a.Settings), last[3])
		})
	}
}

// TestEveryDecisionHasItsAnswers counts the three answers and what "no" means.
func TestEveryDecisionHasItsAnswers(t *testing.T) {
	for name, file := range letterCases {
		page := letterOf(t, file, "html")
		n := strings.Count(page, `<article class="decision">`)
		require.Positive(t, n, name)
		assert.Equal(t, n, strings.Count(page, "What &#34;no&#34; means:"), name)
		assert.GreaterOrEqual(t, strings.Count(page, "<li>Ring me "), n, name)
	}
}

// TestTradeWordsAreExplainedOnce checks that a word of the trade that stands in
// the letter is said in plain words, once.
func TestTradeWordsAreExplainedOnce(t *testing.T) {
	page := strings.Join(strings.Fields(letterOf(t, "demo.toml", "markdown")), " ")
	for _, w := range []string{"Core plug", "Carburettor", "Head gasket", "Flywheel", "Caliper"} {
		if strings.Contains(strings.ToLower(page), strings.ToLower(w)) {
			assert.Equal(t, 1, strings.Count(page, w+": "+meaning(w)), w)
		}
	}
	assert.NotContains(t, page, "Centre: the middle")
}

// TestEveryTradeWordIsInTheGlossary reads the letters for words of the trade,
// from a list that knows nothing of the book's own.
func TestEveryTradeWordIsInTheGlossary(t *testing.T) {
	data, err := os.ReadFile("../../testdata/trade_words.txt")
	require.NoError(t, err)
	explained := map[string]bool{}
	for _, w := range shelf().Book().Words {
		for _, f := range append([]string{w.Text}, w.Forms...) {
			explained[strings.ToLower(f)] = true
		}
	}
	all := ""
	for _, file := range letterCases {
		all += strings.ToLower(letterOf(t, file, "text")) + " "
	}
	all = strings.Join(strings.Fields(all), " ")
	met := 0
	for _, word := range strings.Split(strings.TrimSpace(string(data)), "\n")[1:] {
		stands := regexp.MustCompile(`\b` + regexp.QuoteMeta(word) + `s?\b`).MatchString(all)
		if stands {
			met++
			words := strings.Fields(word)
			ok := explained[word] || explained[word+"s"] || len(words) == 2 && (explained[words[0]] || explained[words[1]])
			assert.True(t, ok, "a letter says %q and no [[word]] explains it", word)
		}
	}
	assert.Greater(t, met, 60)
}

func meaning(text string) string {
	for _, w := range shelf().Book().Words {
		if strings.EqualFold(w.Text, text) {
			return w.Means
		}
	}
	return "not in the book"
}

// TestUnitsOfTheShop checks that figures are shown in the shop's own units.
func TestUnitsOfTheShop(t *testing.T) {
	c := readCase(t, "demo.toml")
	for i := range c.Answers {
		if c.Answers[i].Question == "winter_low" {
			c.Answers[i].Value = advisor.NumberRange(-10, 0)
		}
	}
	a := shelf().Advise(c)
	there := *a.Settings
	there.Units = "imperial"
	a.Settings = &there
	page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: "text"})
	require.NoError(t, err)
	assert.Contains(t, page, "Lowest winter temperature: 14 to 32 °F")
	assert.Contains(t, page, "56,793 miles")
	assert.Contains(t, page, "0.24 in")
	assert.Contains(t, letterOn(t, c, "text"), "Lowest winter temperature: -10 to 0 °C")
}
