package report_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
	"longstand/advisor/report"
)

const cases = "../../testdata/cases"

var rewrite = flag.Bool("update", false, "rewrite golden pages")

func advised(t testing.TB, e *engine.Engine, path, more string) *advisor.Advice {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	c, l := casefile.Read(filepath.Base(path), append(data, more...), e.Book())
	require.False(t, l.HasErrors(), "%s: %v", path, l)
	return e.Advise(c)
}

// adviceSchema compiles the published schema; draft and keywords are checked
// against the draft's own schema as it does so.
func adviceSchema(t testing.TB) *jsonschema.Schema {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(report.Schema()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("advice.schema.json", doc))
	s, err := c.Compile("advice.schema.json")
	require.NoError(t, err)
	return s
}

func decoded(t testing.TB, a *advisor.Advice) any {
	page, err := report.JSON(a)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(page))
	require.NoError(t, err)
	return doc
}

// foreman is a decision of every kind, so that no part of the schema goes untried.
const foreman = `
[[overruled]]
operation = "axle_oil_seals"
call = "leave"
by = "foreman"
why = "to be \"seen\" again"
on = 2025-10-14
`

func TestEveryAdviceHoldsToItsSchema(t *testing.T) {
	e, schema := shelf(), adviceSchema(t)
	n := 0
	require.NoError(t, filepath.WalkDir(cases, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".toml" {
			return err
		}
		n++
		assert.NoError(t, schema.Validate(decoded(t, advised(t, e, path, ""))), path)
		return nil
	}))
	assert.GreaterOrEqual(t, n, 60)
	over := advised(t, e, cases+"/facts/09_by_the_book.toml", foreman)
	assert.NoError(t, schema.Validate(decoded(t, over)))
}

// TestTheSchemaIsStrict takes every key out of every object of an advice, and
// puts one in that is not known: the schema must refuse each.
func TestTheSchemaIsStrict(t *testing.T) {
	e, schema := shelf(), adviceSchema(t)
	doc := decoded(t, advised(t, e, cases+"/facts/09_by_the_book.toml", foreman))
	eachObject(doc, "", func(_ string, o map[string]any) { // a dozen of each will do
		for key, v := range o {
			if items, ok := v.([]any); ok {
				o[key] = items[:min(12, len(items))]
			}
		}
	})
	require.NoError(t, schema.Validate(doc))
	tried := map[string]bool{}
	eachObject(doc, "", func(at string, o map[string]any) {
		if tried[at] {
			return
		}
		tried[at] = true
		for key, value := range o {
			delete(o, key)
			assert.Error(t, schema.Validate(doc), "%s without %s", at, key)
			o[key] = value
		}
		o["not_known"] = 1
		assert.Error(t, schema.Validate(doc), "%s with a key more", at)
		delete(o, "not_known")
	})
	assert.GreaterOrEqual(t, len(tried), 15)
	require.NoError(t, schema.Validate(doc), "all is put back")
}

// eachObject visits every object, named by its keys without list indices.
func eachObject(v any, at string, visit func(string, map[string]any)) {
	switch v := v.(type) {
	case map[string]any:
		visit(at, v)
		for key, value := range v {
			eachObject(value, at+"/"+key, visit)
		}
	case []any:
		for _, item := range v {
			eachObject(item, at, visit)
		}
	}
}

func TestTheSchemaClosesItsLists(t *testing.T) {
	e, schema := shelf(), adviceSchema(t)
	page, err := report.JSON(advised(t, e, cases+"/demo.toml", ""))
	require.NoError(t, err)
	for old, put := range map[string]string{`"call": "do"`: `"call": "mend"`, `"cranked"`: `"flown"`, `"how": "seen"`: `"how": "guessed"`,
		`"advice": 1`: `"advice": 2`, `"kind": "firm"`: `"kind": "hard"`} {
		require.True(t, strings.Contains(string(page), old), old)
		var doc any
		require.NoError(t, json.Unmarshal([]byte(strings.Replace(string(page), old, put, 1)), &doc))
		assert.Error(t, schema.Validate(doc), put)
	}
}
