package main

import (
	"encoding/json"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// allowed says which rooms a room may import. A room that is not listed may
// import none; cmd may import all.
var allowed = map[string][]string{
	"advisor":                  {"advisor/diag"},
	"advisor/diag":             {},
	"advisor/tomltext":         {"advisor/diag"},
	"advisor/reckon":           {},
	"advisor/condition":        {"advisor", "advisor/diag", "advisor/reckon"},
	"advisor/book":             {"advisor", "advisor/diag", "advisor/tomltext", "advisor/condition", "advisor/casefile"},
	"advisor/belief":           {"advisor"},
	"advisor/scope":            {"advisor"},
	"advisor/worth":            {},
	"advisor/engine":           {"advisor", "advisor/condition", "advisor/belief", "advisor/scope", "advisor/worth", "advisor/reckon"},
	"advisor/interview":        {"advisor", "advisor/diag", "advisor/engine", "advisor/casefile", "advisor/reckon"},
	"advisor/casefile":         {"advisor", "advisor/diag", "advisor/tomltext", "advisor/reckon"},
	"advisor/terminal":         {"advisor", "advisor/interview"},
	"advisor/casefile/illdisk": {"advisor/casefile"},
	"advisor/report":           {"advisor", "advisor/diag", "advisor/calibration"},
	"advisor/calibration":      {},
	"rules":                    {},
}

// home says in which rooms a library from outside may be imported; tests aside.
var home = map[string][]string{
	"github.com/expr-lang/expr":                  {"advisor/condition"},
	"github.com/pelletier/go-toml":               {"advisor/tomltext"},
	"github.com/BurntSushi/toml":                 {"advisor/casefile"},
	"github.com/spf13/cobra":                     {"cmd/longstand"},
	"golang.org/x/term":                          {"advisor/terminal"},
	"golang.org/x/text":                          {"advisor/report"},
	"github.com/rogpeppe/go-internal/lockedfile": {"advisor/casefile"},
}

// forbidden are packages of the standard library that the pure rooms do without.
var forbidden = map[string][]string{
	"advisor/engine":    {"os", "math/rand", "math/rand/v2"},
	"advisor/condition": {"os"},
	"advisor/book":      {"os"},
	"advisor/report":    {"os"},
	"advisor/reckon":    {"os"},
	"advisor/scope":     {"os"},
	"advisor/belief":    {"os"},
	"advisor/worth":     {"os"},

	"advisor/calibration": {"os", "math/rand", "math/rand/v2"},
}

func TestImportLaw(t *testing.T) {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "longstand/...").Output()
	require.NoError(t, err)
	dec := json.NewDecoder(strings.NewReader(string(out)))
	rooms := 0
	for dec.More() {
		var p struct {
			ImportPath string
			Imports    []string
		}
		require.NoError(t, dec.Decode(&p))
		room := strings.TrimPrefix(p.ImportPath, "longstand/")
		rooms++
		for _, i := range p.Imports {
			checkImport(t, room, i)
		}
	}
	assert.Greater(t, rooms, 10)
}

func checkImport(t *testing.T, room, i string) {
	if inner, ok := strings.CutPrefix(i, "longstand/"); ok {
		if room != "cmd/longstand" {
			assert.Contains(t, allowed[room], inner, "%s must not import %s", room, inner)
		}
		return
	}
	assert.NotContains(t, forbidden[room], i, "%s must not import %s", room, i)
	if !strings.Contains(strings.Split(i, "/")[0], ".") {
		return
	}
	for lib, rooms := range home {
		if strings.HasPrefix(i, lib) {
			assert.True(t, slices.Contains(rooms, room), "%s must not import %s", room, i)
			return
		}
	}
	t.Errorf("%s imports %s, which has no home", room, i)
}
