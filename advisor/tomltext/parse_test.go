package tomltext

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/diag"
)

// checkSpans demands that every span lies in the file and that its bytes are
// the value: a list in brackets, a text that its place repeats.
func checkSpans(t require.TestingT, data []byte, n *Node) {
	s := n.Span
	require.True(t, 0 <= s.Start && s.Start <= s.End && s.End <= len(data), "%+v", s)
	piece := string(data[s.Start:s.End])
	switch n.Kind {
	case Array:
		if n.made != repeated {
			require.True(t, strings.HasPrefix(piece, "[") && strings.HasSuffix(piece, "]"), piece)
		}
	case Table:
		require.LessOrEqual(t, n.Tail, len(data))
		if s.Line > 0 && strings.HasPrefix(piece, "{") {
			require.True(t, strings.HasSuffix(piece, "}"), piece)
		}
	case String:
		if n.Exact {
			in := n.Inside(0, len([]rune(n.Str)))
			require.Equal(t, n.Str, string(data[in.Start:in.End]))
		}
	}
	for _, f := range n.Fields {
		require.True(t, f.KeySpan.Start < f.KeySpan.End && f.KeySpan.End <= len(data))
		checkSpans(t, data, f.Value)
	}
	for _, item := range n.Items {
		checkSpans(t, data, item)
	}
}

func TestPlaces(t *testing.T) {
	tests := []struct {
		name, text string
		get        func(*Node) diag.Span
		want       string // line:col-line:col
		piece      string
	}{
		{"value", "a = 12\n", func(n *Node) diag.Span { return n.Get("a").Span }, "1:5-1:7", "12"},
		{"columns count characters", "é1 = 'x'\n'é' = 'ééé'\n", nil, "", ""},
		{"quoted key", "'é' = 'ééé' # x\n", func(n *Node) diag.Span { return n.Get("é").Span }, "1:7-1:12", "'ééé'"},
		{"key", "\n  key . sub = 1\n", func(n *Node) diag.Span { return n.Get("key").Field("sub").KeySpan }, "2:9-2:12", "sub"},
		{"list", "a = [ [1, 2], # ]\n [3] ]\n", func(n *Node) diag.Span { return n.Get("a").Span }, "1:5-2:7", "[ [1, 2], # ]\n [3] ]"},
		{"inner list", "a = [ [1, 2], # ]\n [3] ]\n", func(n *Node) diag.Span { return n.Get("a").Items[1].Span }, "2:2-2:5", "[3]"},
		{"inline", "a = [{x = 1 }, { y = {} } ]\n", func(n *Node) diag.Span { return n.Get("a").Items[1].Span }, "1:16-1:26", "{ y = {} }"},
		{"header", "\n[[ a . b ]]\nx=1\n", func(n *Node) diag.Span { return n.Get("a").Get("b").Items[0].Span }, "2:1-2:12", "[[ a . b ]]"},
		{"bom", bom + "a = 1\n", func(n *Node) diag.Span { return n.Get("a").Span }, "1:5-1:6", "1"},
		{"crlf", "a = 1\r\nb = 2\r\n", func(n *Node) diag.Span { return n.Get("b").Span }, "2:5-2:6", "2"},
		{"inside a literal", "a = 'é < 5'\n", func(n *Node) diag.Span { return n.Get("a").Inside(2, 5) }, "1:8-1:11", "< 5"},
		{"inside many lines", "a = '''\r\nx and\r\n  y'''\r\n", func(n *Node) diag.Span { return n.Get("a").Inside(9, 10) }, "3:3-3:4", "y"},
		{"inside a basic text", "a = \"b < 5\"\n", func(n *Node) diag.Span { return n.Get("a").Inside(0, 1) }, "1:6-1:7", "b"},
		{"an escape hides the inside", `a = "b \u003c 5"`, func(n *Node) diag.Span { return n.Get("a").Inside(0, 1) }, "1:5-1:17", `"b \u003c 5"`},
		{"a folded line hides the inside", "a = \"\"\"b \\\n  c\"\"\"", func(n *Node) diag.Span { return n.Get("a").Inside(0, 1) }, "1:5-2:7", "\"\"\"b \\\n  c\"\"\""},
		{"beyond the text", "a = 'b'\n", func(n *Node) diag.Span { return n.Get("a").Inside(0, 9) }, "1:5-1:8", "'b'"},
		{"the end of the text", "a = 'b'\n", func(n *Node) diag.Span { return n.Get("a").Inside(1, 1) }, "1:7-1:7", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			root, faults := Parse("f.toml", []byte(tt.text))
			if tt.get == nil {
				require.NotEmpty(t, faults)
				return
			}
			require.Empty(t, faults)
			s := tt.get(root)
			assert.Equal(t, tt.want, fmt.Sprintf("%d:%d-%d:%d", s.Line, s.Col, s.EndLine, s.EndCol))
			assert.Equal(t, tt.piece, tt.text[s.Start:s.End])
			checkSpans(t, []byte(tt.text), root)
		})
	}
}

func TestTail(t *testing.T) {
	text := "a = 1\nb = [2,\n3] # x\n\n[t]\n[u]\nc = 1\n\n"
	root, faults := Parse("f.toml", []byte(text))
	require.Empty(t, faults)
	assert.Equal(t, "3]", text[root.Tail-2:root.Tail])
	assert.Equal(t, "[t]", text[root.Get("t").Tail-3:root.Get("t").Tail])
	assert.Equal(t, "c = 1", text[root.Get("u").Tail-5:root.Get("u").Tail])
}

var refused = []struct{ text, want string }{
	{"a = 1\na = 2\n", `f.toml:2:1: error duplicate-key "a" is there already, first 1:1`},
	{"[t]\nx=1\n[t]\ny=2\n", `f.toml:3:2: error duplicate-key "t" is there already, first 1:2`},
	{"a.b = 1\n[a]\n", `f.toml:2:2: error duplicate-key "a" is there already, first 1:1`},
	{"a = 1\n[a.b]\n", `f.toml:2:2: error duplicate-key "a" is there already, first 1:1`},
	{"a = [1]\n[[a]]\n", `f.toml:2:3: error duplicate-key "a" is there already, first 1:1`},
	{"[[a]]\n[a]\n", `f.toml:2:2: error duplicate-key "a" is there already, first 1:3`},
	{"a = {b = 1}\na.c = 2\n", `f.toml:2:1: error duplicate-key "a" is there already, first 1:1`},
	{"a = {b.c = 1, b = 2}\n", `f.toml:1:15: error duplicate-key "b" is there already, first 1:6`},
	{"a = {b.c = 1}\n[a.b]\n", `f.toml:2:2: error duplicate-key "a" is there already, first 1:1`},
	{"a = 9223372036854775808\n", `f.toml:1:5: error bad-value 9223372036854775808 is too large for a whole number`},
	{"a = 1e999\n", `f.toml:1:5: error bad-value 1e999 is too large for a number`},
	{"a = 2025-02-30\n", `f.toml:1:5: error bad-value there is no such date: 2025-02-30`},
	{"a = 12:61:00\n", `f.toml:1:5: error bad-value there is no such date: 12:61:00`},
	{"ok = 1\na = yes\n", `f.toml:2:5: error toml-syntax this is not TOML: unexpected character U+0079 'y' at start of value`},
	{"é = 1\n", `f.toml:1:1: error toml-syntax this is not TOML: invalid character at start of key: U+00C3 'Ã'`},
	{"a = 'x", `f.toml:1:6: error toml-syntax this is not TOML: unterminated literal string`},
	{"a = \"\xff\"", `f.toml:1:6: error toml-syntax this is not TOML: invalid UTF-8 character in basic string`},
}

func TestRefused(t *testing.T) {
	for _, tt := range refused {
		root, faults := Parse("f.toml", []byte(tt.text))
		require.NotNil(t, root)
		require.NotEmpty(t, faults, tt.text)
		d := faults[0]
		got := fmt.Sprintf("%s: %s %s %s", d.At, d.Severity, d.Code, d.Message)
		for _, r := range d.Related {
			got += fmt.Sprintf(", first %d:%d", r.At.Line, r.At.Col)
		}
		assert.Equal(t, tt.want, got)
	}
}

// After a fault that the parser cannot pass, the reading goes on at the next
// table of a list, so that all the faults of a file are told at once.
func TestReadsOn(t *testing.T) {
	root, faults := Parse("f.toml", []byte("[[a]]\nx = \u201cb\u201d\ny = 1\n[[a]\nz = 1\n[[a]]\nv = 1\nv = 2\n[[a]]\nw = [1\n"))
	var got []string
	for _, d := range faults {
		got = append(got, fmt.Sprintf("%d:%d %s: %s", d.At.Line, d.At.Col, d.Code, d.Help))
	}
	assert.Equal(t, []string{
		`2:5 toml-syntax: these are printers' quotes; take the straight ones, " or '`,
		"4:4 toml-syntax: a table starts with two brackets on either side, as [[standing]]",
		"8:1 duplicate-key: a key stands once in a table: put both into one, or give the second another name",
		"10:7 toml-syntax: a list that opens with [ is never closed with ]",
	}, got)
	require.Len(t, root.Get("a").Items, 3)
	assert.Equal(t, int64(1), root.Get("a").Items[1].Get("v").Int)
	_, faults = Parse("f.toml", []byte("\xff\xfea\x00"))
	assert.Equal(t, "save the file as UTF-8", faults[0].Help)
	_, faults = Parse("f.toml", []byte(strings.Repeat("[[a\n", 1000)))
	assert.Len(t, faults, maxSyntax)
}

func TestHostile(t *testing.T) {
	for name, text := range map[string]string{
		"many values": strings.Repeat("[[a]]\n", MaxValues+9),
		"many keys":   manyKeys(MaxValues + 9),
		"deep lists":  "a = " + strings.Repeat("[", 1_000_000),
		"deep tables": "a = " + strings.Repeat("{a=", 500_000),
		"one list":    "a = [" + strings.Repeat("1,", 1_000_000) + "]",
		"one line":    "a = [" + strings.Repeat("[[1],'é'],", MaxValues/4-9) + "]]",
		"deep header": "[" + strings.Repeat("a.", 500_000) + "a]",
	} {
		_, faults := Parse("f.toml", []byte(text))
		assert.NotEmpty(t, faults, name)
	}
}

func manyKeys(n int) string {
	var b bytes.Buffer
	for i := range n {
		fmt.Fprintf(&b, "k%d = 1\n", i)
	}
	return b.String()
}

func BenchmarkParse(b *testing.B) {
	var text bytes.Buffer
	for i := range 600 {
		fmt.Fprintf(&text, "[[sign]]\nid = \"sign_%d\"\nsuspect = \"rear_crank_seal_leak\"\nwhen = 'years_laid_up > %d and climate == \"damp\"'\nwith = \"8 of 10\"\nwithout = \"1 of 10\"\nbecause = \"an invented line of ordinary length for the measurement\"\nsource = \"practice\"\nfires = [{ years_laid_up = 9, climate = \"damp\" }]\n\n", i, i)
	}
	b.SetBytes(int64(text.Len()))
	b.ReportAllocs()
	for b.Loop() {
		Parse("f.toml", text.Bytes())
	}
}
