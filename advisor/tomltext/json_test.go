package tomltext

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestJSONLikeTOML(t *testing.T) {
	j, faults := ParseJSON("x.jsonl", 7, []byte(` {"case": 1, "low": -2.5, "on": "2025-10-14", "é": "a\"b", "t": {"is": [1, true, []], "n": 1e2}, "e": {}} `))
	require.Empty(t, faults)
	n, faults := Parse("x.toml", []byte("case = 1\nlow = -2.5\non = \"2025-10-14\"\n\"é\" = 'a\"b'\nt = {is = [1, true, []], n = 1e2}\ne = {}\n"))
	require.Empty(t, faults)
	assert.Equal(t, plainly(n), plainly(j))
	assert.Equal(t, "x.jsonl:7:21", j.Get("low").Span.String())
	assert.Equal(t, "x.jsonl:7:27", j.Field("on").KeySpan.String())
	assert.Equal(t, "x.jsonl:7:52", j.Field("é").Value.Span.String(), "columns count characters")
	assert.Equal(t, "[1, true, []]", j.Get("t").Get("is").Raw())
	assert.Equal(t, "x.jsonl:7:34", j.Get("on").Inside(0, 4).String())
	assert.False(t, j.Get("é").Exact, "what has an escape is not the file's own bytes")
}

// plainly is a tree without its places.
func plainly(n *Node) string {
	switch n.Kind {
	case Table:
		var b strings.Builder
		for _, f := range n.Fields {
			fmt.Fprintf(&b, "%s=%s,", f.Key, plainly(f.Value))
		}
		return "{" + b.String() + "}"
	case Array:
		var b strings.Builder
		for _, i := range n.Items {
			b.WriteString(plainly(i) + ",")
		}
		return "[" + b.String() + "]"
	}
	return fmt.Sprint(n.Kind, n.Str, n.Int, n.Float, n.Bool)
}

func TestJSONFaults(t *testing.T) {
	for text, want := range map[string]string{
		``:                      `x:3:1 json-syntax`,
		`{`:                     `x:3:2 json-syntax`,
		`{"a": 1`:               `x:3:8 json-syntax`,
		`[1]`:                   `x:3:1 wrong-kind`,
		`7`:                     `x:3:1 wrong-kind`,
		`{"a": 1} {}`:           `x:3:10 json-syntax`,
		`{"a": 1, "a": 2}`:      `x:3:10 duplicate-key`,
		`{"a": null}`:           `x:3:7 bad-value`,
		`{"a": 1e999}`:          `x:3:7 bad-value`,
		`{"a": tru}`:            `x:3:7 json-syntax`,
		`{"a" 1}`:               `x:3:6 json-syntax`,
		`{a: 1}`:                `x:3:2 json-syntax`,
		"{\"a\": \"\xff\"}":     `x:3:1 json-syntax`,
		`{"a": [1,]}`:           `x:3:10 json-syntax`,
		strings.Repeat("[", 90): `x:3:17 json-syntax`,
	} {
		n, faults := ParseJSON("x", 3, []byte(text))
		require.NotNil(t, n, text)
		require.Len(t, faults, 1, text)
		assert.Equal(t, want, faults[0].At.String()+" "+faults[0].Code, "%s: %s", text, faults[0].Message)
	}
}

func FuzzJSON(f *testing.F) {
	f.Add([]byte(`{"case": 1, "answers": {"a": [1, "x", {"is": true}]}}`))
	f.Add([]byte("{\"a\"\xef\xbb\xbf: {}}"))
	f.Fuzz(func(t *testing.T, data []byte) {
		n, faults := ParseJSON("x", 1, data)
		require.NotNil(t, n)
		for i := range faults {
			require.LessOrEqual(t, faults[i].At.End, len(data))
		}
	})
}

// TestJSONBehindAByteOrderMark: some editors begin a file with one; within it,
// it is a fault.
func TestJSONBehindAByteOrderMark(t *testing.T) {
	n, faults := ParseJSON("cases.jsonl", 1, []byte("\ufeff{\"case\": 1}"))
	assert.Empty(t, faults)
	assert.Equal(t, int64(1), n.Get("case").Int)
	_, faults = ParseJSON("cases.jsonl", 2, []byte("\ufeff{\"case\": 1}"))
	assert.Len(t, faults, 1)
}
