package diag

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWriteErrors(t *testing.T) {
	var b strings.Builder
	require.NoError(t, List(nil).WriteErrors(&b))
	assert.JSONEq(t, `{"errors": []}`, b.String(), "never null")

	var l List
	d := l.Errorf(Span{File: "a<b.toml", Line: 3, Col: 7, EndLine: 3, EndCol: 9}, "unknown-key", "there is no key %q", "x")
	d.Help = "did you mean y?"
	d.Related = []Related{{At: Span{File: "c.toml", Line: 1, Col: 1, EndLine: 1, EndCol: 2}, Message: "the first one"}}
	l.Warnf(Span{File: "c.toml"}, "old", "old")
	b.Reset()
	require.NoError(t, l.WriteErrors(&b))
	assert.JSONEq(t, `{"errors": [
		{"code": "unknown-key", "severity": "error", "file": "a<b.toml", "line": 3, "column": 7, "message": "there is no key \"x\"",
		 "help": "did you mean y?", "related": [{"file": "c.toml", "line": 1, "column": 1, "end_line": 1, "end_column": 2, "message": "the first one"}]},
		{"code": "old", "severity": "warning", "file": "c.toml", "line": 0, "column": 0, "message": "old", "help": "", "related": []}]}`, b.String())
	assert.Contains(t, b.String(), "a<b.toml", "readable, not escaped for a web page")
}
