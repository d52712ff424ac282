package book

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// validate is a small judge of the part of JSON schema that Schema uses.
func validate(root, s map[string]any, v any, at string) (faults []string) {
	if ref, ok := s["$ref"].(string); ok {
		s = root["definitions"].(map[string]any)[strings.TrimPrefix(ref, "#/definitions/")].(map[string]any)
	}
	if ways, ok := s["anyOf"].([]any); ok {
		for _, one := range ways {
			if len(validate(root, one.(map[string]any), v, at)) == 0 {
				return nil
			}
		}
		return []string{at + ": none of anyOf"}
	}
	if want, ok := s["type"]; ok && !hasType(want, v) {
		return []string{fmt.Sprintf("%s: %v is no %v", at, v, want)}
	}
	if enum, ok := s["enum"].([]any); ok && !slices.Contains(enum, v) {
		return []string{fmt.Sprintf("%s: %v is not among the words", at, v)}
	}
	if p, ok := s["pattern"].(string); ok && !regexp.MustCompile(p).MatchString(v.(string)) {
		return []string{at + ": pattern"}
	}
	switch v := v.(type) {
	case []any:
		items, _ := s["items"].(map[string]any)
		for i, x := range v {
			faults = append(faults, validate(root, items, x, fmt.Sprintf("%s[%d]", at, i))...)
		}
	case map[string]any:
		properties, _ := s["properties"].(map[string]any)
		for k, x := range v {
			if p, ok := properties[k].(map[string]any); ok {
				faults = append(faults, validate(root, p, x, at+"."+k)...)
			} else if s["additionalProperties"] == false {
				faults = append(faults, at+": no key "+k)
			}
		}
		required, _ := s["required"].([]any)
		for _, k := range required {
			if _, ok := v[k.(string)]; !ok {
				faults = append(faults, at+": misses "+k.(string))
			}
		}
	}
	return faults
}

func hasType(want, v any) bool {
	if list, ok := want.([]any); ok {
		return slices.ContainsFunc(list, func(one any) bool { return hasType(one, v) })
	}
	is := ""
	switch v := v.(type) {
	case string:
		is = "string"
	case float64:
		return want == "number" || want == "integer" && v == math.Trunc(v)
	case bool:
		is = "boolean"
	case []any:
		is = "array"
	case map[string]any:
		is = "object"
	}
	return want == is
}

func plainTOML(t *testing.T, data []byte) any {
	m := map[string]any{}
	_, err := toml.Decode(string(data), &m)
	require.NoError(t, err)
	text, err := json.Marshal(m)
	require.NoError(t, err)
	dec := json.NewDecoder(strings.NewReader(string(text)))
	var v any
	require.NoError(t, dec.Decode(&v))
	return v
}

func schemaOf(t *testing.T, files []File, house bool) map[string]any {
	text, err := Schema(Load(files).Book, house)
	require.NoError(t, err)
	var s map[string]any
	require.NoError(t, json.Unmarshal(text, &s))
	return s
}

// TestShippedRulesFitTheSchema: what Check takes, an editor must take too.
func TestShippedRulesFitTheSchema(t *testing.T) {
	files := builtIn(t)
	s := schemaOf(t, files, false)
	for _, f := range files {
		assert.Empty(t, validate(s, s, plainTOML(t, f.Data), f.Name))
	}
	data, err := os.ReadFile("../../testdata/check/ok/every_table.toml")
	require.NoError(t, err)
	small := []File{base(t), {Name: "x.toml", Data: data}}
	s = schemaOf(t, small, false)
	assert.Empty(t, validate(s, s, plainTOML(t, data), "every_table"))
}

// TestSchemaRefuses: what no key allows, an editor marks as well.
func TestSchemaRefuses(t *testing.T) {
	s := schemaOf(t, []File{base(t)}, false)
	for _, name := range []string{"unknown", "kinds"} {
		data, err := os.ReadFile(filepath.Join("../../testdata/check/err", name+".toml"))
		require.NoError(t, err)
		assert.Greater(t, len(validate(s, s, plainTOML(t, data), name)), 5)
	}
	adjust := []byte("[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'\n")
	assert.NotEmpty(t, validate(s, s, plainTOML(t, adjust), "adjust"))
	s = schemaOf(t, []File{base(t)}, true)
	assert.Empty(t, validate(s, s, plainTOML(t, adjust), "adjust"))
}

// TestEveryKeyIsExplained: editors show these words over a key.
func TestEveryKeyIsExplained(t *testing.T) {
	for _, table := range Tables() {
		assert.NotEmpty(t, table.Doc, table.Name)
		for _, k := range table.Keys {
			assert.NotEmpty(t, k.Doc, table.Name+"."+k.Name)
			assert.NotEmpty(t, k.Type, table.Name+"."+k.Name)
			assert.NotContains(t, k.Doc, "\n")
		}
	}
}
