package tomltext

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plain turns the tree into what the oracle decodes to.
func plain(n *Node) any {
	switch n.Kind {
	case Table:
		m := map[string]any{}
		for _, f := range n.Fields {
			m[f.Key] = plain(f.Value)
		}
		return m
	case Array:
		s := []any{}
		for _, item := range n.Items {
			s = append(s, plain(item))
		}
		return s
	case String:
		return n.Str
	case Integer:
		return n.Int
	case Float:
		return fmt.Sprint(n.Float) // so that NaN equals NaN
	case Bool:
		return n.Bool
	}
	return "a date"
}

// levelled brings the oracle's own types to those of plain. Dates are only
// compared in being dates: the walk keeps them as written.
func levelled(v any) any {
	switch v := v.(type) {
	case map[string]any:
		m := map[string]any{}
		for k, x := range v {
			m[k] = levelled(x)
		}
		return m
	case []map[string]any:
		s := []any{}
		for _, x := range v {
			s = append(s, levelled(x))
		}
		return s
	case []any:
		s := []any{}
		for _, x := range v {
			s = append(s, levelled(x))
		}
		return s
	case float64:
		return fmt.Sprint(v)
	case time.Time:
		return "a date"
	}
	return v
}

func oracle(t require.TestingT, data []byte) any {
	m := map[string]any{}
	_, err := toml.Decode(string(data), &m)
	require.NoError(t, err)
	return levelled(m)
}

// TestWalkEqualsOracle reads every TOML file of the repository both ways.
func TestWalkEqualsOracle(t *testing.T) {
	read := 0
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".toml" {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		root, faults := Parse(path, data)
		m := map[string]any{}
		_, oracleErr := toml.Decode(string(data), &m)
		if oracleErr != nil || len(faults) > 0 {
			assert.Equal(t, oracleErr != nil, len(faults) > 0, "%s: %v / %v", path, oracleErr, faults)
			return nil
		}
		assert.Equal(t, levelled(m), plain(root), path)
		read++
		return nil
	})
	require.NoError(t, err)
	assert.Positive(t, read)
}

// tricky are texts that a walk may get wrong.
var tricky = []string{
	"a = 1\nb = -17\n", "x = 0xDEAD_BEEF\ny = 0o17\nz = 0b101\nw = +1_000\n",
	"f = 1.5e-3\ng = -inf\nh = +nan\ni = 1_0.5\n",
	"a.b.c = 1\na.b.d = 2\na.e = [1, [2, 3], {x = 1}]\n",
	"[a.b]\nx=1\n[a]\ny=2\n[a.c]\nz=3\n",
	"[[a]]\nx=1\n[[a.b]]\ny=2\n[[a.b]]\ny=3\n[[a]]\nx=4\n[a.c]\nz=5\n",
	"s = \"\"\"\nfirst \\\n   second\"\"\"\nt = '''\nliteral\n'''\nu = '''x'''\nv = \"\"\nw = ''\n",
	"s = \"tab\\t \\u00e9 \\\" end\"\n", "s = '''it''s'''''\n", "s = \"\"\"a\"\"\"\"\"\n",
	"list = [ # one\n  1, # , ] \n  2,\n]\n", "list = [ 'a', \"]\", '''#''', ]\nnext = 1\n",
	"t = { a = { b = [ { c = 1 }, { c = 2 } ] }, d = \"}\" }\nnext = 1\n",
	"t = {}\nl = []\nm = [[],[{}]]\n", "t = { a.b = 1, a.c = 2 }\n",
	"\"quoted key\".'other' = 1\n\"\" = 2\n", "d = 2025-10-14\ne = 10:20:30.5\nf = 2025-10-14 10:20:30Z\ng = 1979-05-27T07:32:00.999-07:00\n",
	"\xef\xbb\xbfa = 1\r\nb = 'x'\r\n[t]\r\nc = [1,\r\n2]\r\n", "# only a comment", "", "a = 1 # no line end",
	"[ spaced . 'header' ]\nx = 1\n[[  rows  ]]\ny = 2\n", "é = 1\n",
}

func TestTricky(t *testing.T) {
	for _, text := range tricky {
		root, faults := Parse("t.toml", []byte(text))
		if strings.HasPrefix(text, "é") {
			require.NotEmpty(t, faults)
			continue
		}
		require.Empty(t, faults, text)
		assert.Equal(t, oracle(t, []byte(strings.TrimPrefix(text, bom))), plain(root), text)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range tricky {
		f.Add([]byte(text))
	}
	for _, c := range refused {
		f.Add([]byte(c.text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		root, faults := Parse("f.toml", data)
		checkSpans(t, data, root)
		for _, d := range faults {
			require.LessOrEqual(t, d.At.End, len(data))
			require.LessOrEqual(t, d.At.Start, d.At.End)
		}
		if len(faults) > 0 {
			return
		}
		m := map[string]any{}
		if _, err := toml.Decode(string(data), &m); err == nil {
			require.Equal(t, levelled(m), plain(root))
		}
	})
}
