package book

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// oracle compiles a schema with a judge that is not ours.
func oracle(t *testing.T, text []byte, err error) *jsonschema.Schema {
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("schema.json", doc))
	s, err := c.Compile("schema.json")
	require.NoError(t, err)
	return s
}

// TestShippedFilesFitTheSchemas: an editor marks nothing in what we ship.
func TestShippedFilesFitTheSchemas(t *testing.T) {
	files := builtIn(t)
	b := Load(files).Book
	for _, house := range []bool{false, true} {
		text, err := Schema(b, house)
		s := oracle(t, text, err)
		for _, f := range files {
			assert.NoError(t, s.Validate(plainTOML(t, f.Data)), f.Name)
		}
	}
	text, err := CaseSchema(b)
	s := oracle(t, text, err)
	var cases []string
	for _, pattern := range []string{"*.toml", "practice/*.toml", "facts/*.toml"} {
		more, err := filepath.Glob("../../testdata/cases/" + pattern)
		require.NoError(t, err)
		cases = append(cases, more...)
	}
	require.Greater(t, len(cases), 12)
	for _, name := range cases {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		assert.NoError(t, s.Validate(plainTOML(t, data)), name)
	}
}

// TestSchemasRefuse: slips of the pen are marked while typing.
func TestSchemasRefuse(t *testing.T) {
	b := Load([]File{base(t)}).Book
	text, err := CaseSchema(b)
	cases := oracle(t, text, err)
	text, err = SettingsSchema(b)
	settings := oracle(t, text, err)
	for _, row := range []struct {
		schema *jsonschema.Schema
		text   string
		good   bool
	}{
		{cases, "case = 1\ndate = 2025-10-14", true},
		{cases, "case = 1", false},
		{cases, "case = 3\ndate = 2025-10-14", false},
		{cases, "case = 2\ndate = 2025-10-14\n[closed]\non = 2025-11-20\n[looked]\ngasket_leak = 'sound'\n[hours]\nhead_off = { took = 3.5, estimate = [2, 3, 5] }", true},
		{cases, "case = 2\ndate = 2025-10-14\n[looked]\ngasket_leak = 'fine'", false},
		{cases, "case = 2\ndate = 2025-10-14\n[looked]\ngasket_laek = 'sound'", false},
		{cases, "case = 2\ndate = 2025-10-14\n[hours]\nhead_off = 'long'", false},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nclimate = 'damp'\nengine_turns = true\ncompression = [140, 138]\noil_finds = ['metal']\nyears_laid_up = '5 to 8'\nhose_look = \"can't tell\"", true},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nclimate = 'not dry'\nengine_turns = { is = true, how = 'owner' }", true},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nclimate = 'dmap'", false},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nclimat = 'damp'", false},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nengine_turns = 3", false},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nyears_laid_up = 1000", false},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nclimate = { is = 'damp', how = 'heard' }", false},
		{cases, "case = 1\ndate = 2025-10-14\n[decisions]\naccepted = ['head_off', { operation = 'brake_hoses', by = 'x' }]", true},
		{cases, "case = 1\ndate = 2025-10-14\n[decisions]\naccepted = ['head_of']", false},
		{cases, "case = 1\ndate = 2025-10-14\n[[overruled]]\noperation = 'head_off'\ncall = 'leave'\nby = 'x'\nwhy = 'so'", true},
		{cases, "case = 1\ndate = 2025-10-14\n[[overruled]]\noperation = 'head_off'\ncall = 'skip'\nby = 'x'\nwhy = 'so'", false},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nengine_turns = { is = true, photo = ['a.jpg'] }\n[[letter]]\nnumber = 1\ndate = 2025-10-14\ndo = ['head_off']", true},
		{cases, "case = 1\ndate = 2025-10-14\n[answers]\nengine_turns = { is = true, photo = 3 }", false},
		{cases, "case = 1\ndate = 2025-10-14\n[[letter]]\nnumber = 'one'\ndate = 2025-10-14", false},
		{settings, "[settings]\nhours_a_week = 12\nparts_days = 10", true},
		{settings, "[settings]\nrate = 70\nunits = 'imperial'", true},
		{settings, "[settings]\nunits = 'cubits'", false},
		{settings, "[settings]\nrates = 70", false},
		{settings, "[[word]]\nid = 'sump'", false},
	} {
		fault := row.schema.Validate(plainTOML(t, []byte(row.text)))
		assert.Equal(t, row.good, fault == nil, "%s\n%v", row.text, fault)
	}
}
