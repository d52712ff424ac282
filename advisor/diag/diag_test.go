package diag

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNearest(t *testing.T) {
	names := []string{"climate", "clamate_x", "storage", "coolant", "coolant_loss", "years_laid_up"}
	for word, want := range map[string]string{
		"climat": "climate", "climaet": "climate", "CLIMATE": "climate", "coolnat": "coolant",
		"yers_laid_up": "years_laid_up", "colant_loss": "coolant_loss", "brakes": "", "x": "", "": "",
	} {
		assert.Equal(t, want, Nearest(word, names), word)
	}
	// The nearest counts, not the first that is near enough.
	assert.Equal(t, "engine_oil", Nearest("engine_oi", []string{"engine_all", "engine_on", "engine_oil"}))
	assert.Equal(t, "aa", Nearest("ab", []string{"ac", "aa"}), "equally near: the alphabet decides")
}

func TestDistance(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"a", "", 1}, {"ab", "ba", 1}, {"abc", "abd", 1}, {"kitten", "sitting", 3}, {"ca", "abc", 3}} {
		assert.Equal(t, tt.want, distance([]rune(tt.a), []rune(tt.b), 9), tt.a+" "+tt.b)
	}
	assert.Equal(t, 3, distance([]rune("kitten"), []rune("carpet"), 2), "gives up above the limit")
}

func TestDidYouMean(t *testing.T) {
	assert.Equal(t, `did you mean "owner"?`, DidYouMean("ownr", []string{"seen", "owner"}))
	assert.Equal(t, `allowed are "seen" and "owner"`, DidYouMean("heard", []string{"seen", "owner"}))
	assert.Empty(t, DidYouMean("heard", nil))
}

func TestWriteText(t *testing.T) {
	text := "id = 'x'\r\n\twhen = 'é climat' # \x1b[31m\n" + strings.Repeat("word ", 60) + "here\n"
	start := strings.Index(text, "climat")
	l := List{
		{Code: "unknown-name", Message: `unknown question "climat"`, Help: "did you mean \"climate\"?",
			At:      Span{File: "r.toml", Line: 2, Col: 12, EndLine: 2, EndCol: 18, Start: start, End: start + 6},
			Related: []Related{{Span{File: "q.toml", Line: 1, Col: 1}, "declared here"}}},
		{Severity: Warning, Code: "long", Message: "a long line", At: Span{File: "r.toml", Line: 3, Col: 301, EndLine: 3, EndCol: 305}},
		{Code: "gone", Message: "the file as a whole", At: Span{File: "r.toml"}},
		{Code: "end", Message: "at the end", At: Span{File: "r.toml", Line: 1, Col: 9, EndLine: 1, EndCol: 9}},
	}
	var b bytes.Buffer
	require.NoError(t, l.WriteText(&b, func(string) []byte { return []byte(text) }))
	want := `r.toml:2:12: error: unknown question "climat" [unknown-name]
    2 | ` + "\t" + `when = 'é climat' # ` + "\uFFFD" + `[31m
      | ` + "\t" + `          ^^^^^^
    help: did you mean "climate"?
    q.toml:1:1: declared here
`
	got := b.String()
	assert.True(t, strings.HasPrefix(got, want), got)
	lines := strings.Split(got, "\n")
	for _, line := range lines[6:8] {
		assert.LessOrEqual(t, len(line), 80)
	}
	assert.Equal(t, "here", lines[6][strings.Index(lines[7], "^"):strings.LastIndex(lines[7], "^")+1])
	assert.Contains(t, got, "r.toml: error: the file as a whole [gone]\nr.toml:1:9")
	assert.True(t, strings.HasSuffix(got, "    1 | id = 'x'\n      |         ^\n"), got)
	assert.Equal(t, "3 errors and 1 warning", l.Summary())
}

func TestPictureNeverLeavesTheLine(t *testing.T) {
	line := strings.Repeat("é", 400)
	for from := 0; from <= 400; from += 7 {
		for _, length := range []int{0, 1, 50, 300} {
			to := min(from+length, 400)
			p := picture([]byte(line+"\n"), Span{Line: 1, Col: from + 1, EndLine: 1, EndCol: to + 1})
			rows := strings.Split(p, "\n")
			require.Len(t, rows, 3)
			require.LessOrEqual(t, len([]rune(rows[0])), 80)
			require.LessOrEqual(t, len([]rune(rows[1])), 80)
			require.GreaterOrEqual(t, len([]rune(rows[0]))+1, len([]rune(rows[1])), "%d %d", from, to)
			require.Contains(t, rows[1], "^")
		}
	}
	assert.Empty(t, picture(nil, Span{Line: 3, Col: 1}))
}

func TestWriteJSON(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, List(nil).WriteJSON(&b, 0))
	assert.JSONEq(t, `{"diagnostics_version": 1, "diagnostics": [], "silenced": 0}`, b.String())
	b.Reset()
	l := List{{Code: "c", Message: "a < b", At: Span{File: "f", Line: 2, Col: 3, EndLine: 2, EndCol: 4},
		Related: []Related{{Span{File: "g", Line: 1, Col: 1}, "first"}}}}
	require.NoError(t, l.WriteJSON(&b, 2))
	var back map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &back))
	assert.Contains(t, b.String(), `"a < b"`)
	assert.Contains(t, b.String(), `"message": "first"`)
	assert.Contains(t, b.String(), `"column": 3`)
	assert.Contains(t, b.String(), `"silenced": 2`)
}

func TestWriteAnnotations(t *testing.T) {
	l := List{
		{Severity: Warning, Code: "w", Message: "100%", At: Span{File: "a,b.toml"}},
		{Code: "e", Message: "bad", Help: "do this", At: Span{File: "f", Line: 2, Col: 3, EndLine: 2, EndCol: 4}},
	}
	var b bytes.Buffer
	require.NoError(t, l.WriteAnnotations(&b, 0))
	assert.Equal(t, "::error file=f,line=2,col=3,endLine=2,endColumn=4,title=e::bad%0Ado this\n"+
		"::warning file=a%2Cb.toml,title=w::100%25\n1 error and 1 warning in all\n", b.String())
}

// TestTenAnnotations: what a hosted check does not show follows as plain lines.
func TestTenAnnotations(t *testing.T) {
	var l List
	for i := range 12 {
		l.Warnf(Span{File: "f", Line: 20 - i, Col: 1}, "w", "number %d", i)
	}
	l.Errorf(Span{File: "g", Line: 1, Col: 1}, "e", "the error")
	var b bytes.Buffer
	require.NoError(t, l.WriteAnnotations(&b, 3))
	lines := strings.Split(strings.TrimSpace(b.String()), "\n")
	require.Len(t, lines, 14)
	assert.Contains(t, lines[0], "::error file=g", "errors first")
	assert.Contains(t, lines[1], "::warning file=f,line=9", "then by place")
	assert.Contains(t, lines[9], "::warning file=f,line=17")
	assert.Equal(t, "f:18:1: warning: number 2 [w]", lines[10])
	assert.Equal(t, "1 error and 12 warnings, 3 warnings silenced in all", lines[13])
	assert.Equal(t, 10, strings.Count(b.String(), "::error")+strings.Count(b.String(), "::warning"))
}

func TestAccount(t *testing.T) {
	var l List
	assert.Empty(t, l.Account(0))
	assert.Equal(t, "1 warning silenced", l.Account(1))
	l.Errorf(Span{}, "e", "e")
	assert.Equal(t, "1 error, 2 warnings silenced", l.Account(2))
}
