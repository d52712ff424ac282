package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/book"
	"longstand/advisor/diag"
)

// houseSchema compiles the schema of house rules as an editor that knows the
// house's own ids does.
func houseSchema(t *testing.T, house ...string) *jsonschema.Schema {
	e, err := (&door{house: house, errs: os.Stderr}).engine()
	require.NoError(t, err)
	text, err := book.Schema(e.Book(), true)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("rule.schema.json", doc))
	s, err := c.Compile("rule.schema.json")
	require.NoError(t, err)
	return s
}

// plainly decodes TOML by another reader than ours, into what JSON has.
func plainly(t *testing.T, data []byte) any {
	m := map[string]any{}
	require.NoError(t, toml.Unmarshal(data, &m))
	text, err := json.Marshal(m)
	require.NoError(t, err)
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	return v
}

// TestDraftsFitTheSchema: an editor marks nothing in a first text, and marks a
// first evening's mistakes.
func TestDraftsFitTheSchema(t *testing.T) {
	all := t.TempDir()
	kinds := draftKinds()
	assert.Equal(t, []string{"hold", "inspection", "operation", "question", "sign", "standing", "suspect", "type"}, kinds)
	for _, kind := range kinds {
		text, err := drafts.ReadFile("drafts/" + kind + ".toml")
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(all, kind+".toml"), text, 0o600))
	}
	s := houseSchema(t, all)
	for _, kind := range kinds {
		text, err := drafts.ReadFile("drafts/" + kind + ".toml")
		require.NoError(t, err)
		assert.NoError(t, s.Validate(plainly(t, text)), kind)
		assert.Contains(t, string(text), "\n[["+kind+"]]\n")
		assert.Contains(t, string(text), "#:schema ./rule.schema.json\n")
	}
	for _, house := range []string{"coast", "front_drive"} {
		dir := "../../testdata/house/" + house
		files, err := filepath.Glob(dir + "/*.toml")
		require.NoError(t, err)
		require.Len(t, files, 2)
		s := houseSchema(t, dir)
		for _, name := range files {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			assert.NoError(t, s.Validate(plainly(t, text)), name)
		}
	}
	text, err := os.ReadFile("../../testdata/house/mistakes/rules.toml")
	require.NoError(t, err)
	assert.Error(t, s.Validate(plainly(t, text)))
}

// TestARuleIsAskedFor: Enter keeps what is there, a refused answer is told and
// asked again, and an input that ends early leaves nothing.
func TestARuleIsAskedFor(t *testing.T) {
	ask := func(typed string) (*draftText, string, error) {
		var said bytes.Buffer
		d := &door{errs: &said}
		files, err := d.bookFiles()
		require.NoError(t, err)
		text, err := firstText("standing")
		require.NoError(t, err)
		text.judge = func(s string) diag.List { return d.judgeDraft(files, "", s) }
		text.tell = func(l diag.List) { _ = l.WriteText(&said, func(f string) []byte { return d.sources[f] }) }
		err = text.ask(strings.NewReader(typed), &said)
		return text, said.String(), err
	}
	text, said, err := ask("salt_eats\nexhuast\nexhaust, thermostat\n\nSalt \"eats\" it.\nthe foreman\n")
	require.NoError(t, err)
	assert.Contains(t, said, "says: in or out of the scope [in]\n> ")
	assert.Contains(t, said, `did you mean "exhaust"?`)
	assert.Equal(t, 2, strings.Count(said, "operations: "))
	assert.Empty(t, text.judge(text.text))
	for _, line := range []string{`id = "salt_eats" `, `operations = ["exhaust", "thermostat"] `, `says = "in" `, `because = "Salt \"eats\" it." `, `by = "the foreman"`} {
		assert.Contains(t, text.text, "\n"+line)
	}
	_, _, err = ask("salt_eats\nexhaust\n")
	assert.ErrorContains(t, err, "nothing is written")
}
