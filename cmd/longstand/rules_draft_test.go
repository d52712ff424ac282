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
	want := []string{"adjust"}
	for _, table := range book.Tables() {
		want = append(want, table.Name)
	}
	assert.ElementsMatch(t, want, kinds, "a draft for every kind")
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
		if kind != "adjust" && kind != "settings" {
			assert.Contains(t, string(text), "\n[["+kind+"]]\n")
		}
		assert.NotEmpty(t, asked[kind], kind)
		assert.Contains(t, string(text), "#:schema ./rule.schema.json\n")
	}
	assert.Len(t, asked, len(kinds))
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
	ask := func(kind, typed string) (*draftText, string, error) {
		var said bytes.Buffer
		d := &door{errs: &said}
		files, err := d.bookFiles()
		require.NoError(t, err)
		text, err := firstText(kind)
		require.NoError(t, err)
		text.judge = func(s string) diag.List { return d.judgeDraft(files, "", s) }
		text.tell = func(l diag.List) { _ = l.WriteText(&said, func(f string) []byte { return d.sources[f] }) }
		err = text.ask(strings.NewReader(typed), &said)
		return text, said.String(), err
	}
	text, said, err := ask("standing", "salt_eats\nexhuast\nexhaust, thermostat\n\nSalt \"eats\" it.\nthe foreman\n")
	require.NoError(t, err)
	assert.Contains(t, said, "says: in or out of the scope [in]\n> ")
	assert.Contains(t, said, `did you mean "exhaust"?`)
	assert.Equal(t, 2, strings.Count(said, "operations: "))
	assert.Empty(t, text.judge(text.text))
	for _, line := range []string{`id = "salt_eats" `, `operations = ["exhaust", "thermostat"] `, `says = "in" `, `because = "Salt \"eats\" it." `, `by = "the foreman"`} {
		assert.Contains(t, text.text, "\n"+line)
	}
	_, _, err = ask("standing", "salt_eats\nexhaust\n")
	assert.ErrorContains(t, err, "nothing is written")

	text, said, err = ask("adjust", "operatoin\noperation\n\nexhuast\nexhaust\nhours\nhours = 1, 2, 4\n\n\n")
	require.NoError(t, err)
	assert.Contains(t, said, "did you mean operation")
	assert.Contains(t, said, "only you can say which\n")
	assert.Contains(t, said, `did you mean "exhaust"?`)
	assert.Equal(t, 2, strings.Count(said, "\nchange: ")+strings.Count(said, "> change: "))
	assert.Empty(t, text.judge(text.text))
	assert.Contains(t, text.text, "\n[[operation]] ")
	assert.Contains(t, text.text, "\nid = \"exhaust\" ")
	assert.Contains(t, text.text, "\nhours = [1, 2, 4] ")
	assert.NotContains(t, text.text, "\nif_left")

	text, _, err = ask("withdraw", "caution\nunder_rust\n\n\n")
	require.NoError(t, err)
	assert.Empty(t, text.judge(text.text))
	assert.Contains(t, text.text, "\nid = \"under_rust\" ")

	text, said, err = ask("settings", "the yard\nminus\n72\n\n\n\nimperial\n")
	require.NoError(t, err)
	assert.Equal(t, 2, strings.Count(said, "rate: "))
	assert.Contains(t, text.text, "\nrate = 72 ")
	assert.Contains(t, text.text, "\nunits = \"imperial\" ")
}
