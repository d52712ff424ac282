package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/reckon"
)

const reckonRoom = "advisor/reckon"

// declared is an exported name of a room, with its comment.
type declared struct {
	name, doc string
	function  bool
}

// exported lists what a file declares for other rooms, methods too.
func exported(f *ast.File) (out []declared) {
	add := func(id *ast.Ident, doc string, function bool) {
		if id.IsExported() {
			out = append(out, declared{id.Name, doc, function})
		}
	}
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			add(d.Name, d.Doc.Text(), true)
		case *ast.GenDecl:
			for _, s := range d.Specs {
				switch s := s.(type) {
				case *ast.TypeSpec:
					add(s.Name, "", false)
				case *ast.ValueSpec:
					for _, id := range s.Names {
						add(id, "", false)
					}
				}
			}
		}
	}
	return out
}

// countNames counts the names in a file, those declared there too.
func countNames(f *ast.File, uses map[string]int) {
	ast.Inspect(f, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok {
			uses[id.Name]++
		}
		return true
	})
}

// programFiles parses the Go files of the repository that are no tests. Only
// those that import the room of arithmetic, and its own, are of interest.
func programFiles(t *testing.T) map[string]*ast.File {
	files, set := map[string]*ast.File{}, token.NewFileSet()
	require.NoError(t, filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(set, path, nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		wanted := f.Name.Name == "reckon"
		for _, i := range f.Imports {
			wanted = wanted || i.Path.Value == `"longstand/`+reckonRoom+`"`
		}
		if wanted {
			files[path] = f
		}
		return nil
	}))
	return files
}

// TestNoArithmeticIsForTestsAlone: whatever the room of arithmetic offers is
// used by the program, and every function of it says its source.
func TestNoArithmeticIsForTestsAlone(t *testing.T) {
	uses, offered := map[string]int{}, []declared{}
	for _, f := range programFiles(t) {
		countNames(f, uses)
		if f.Name.Name == "reckon" {
			offered = append(offered, exported(f)...)
		}
	}
	require.Greater(t, len(offered), 30)
	for _, d := range offered {
		if d.name != "Error" { // errors are printed by whoever gets one
			assert.Greater(t, uses[d.name], 1, "%s.%s is used by tests alone: let a rule or a page call it, or take it out", reckonRoom, d.name)
		}
		if d.function && !slices.Contains([]string{"Error", "Measure", "Typed"}, d.name) {
			assert.Contains(t, d.doc, "Source:", "%s.%s", reckonRoom, d.name)
		}
	}
}

// conditionText is a condition in a rule file: a string in single quotes.
var conditionText = regexp.MustCompile(`'[^'\n]*'`)

// TestEveryFunctionIsCalledByARule: each function that conditions may call is
// called by a condition of the built-in book.
func TestEveryFunctionIsCalledByARule(t *testing.T) {
	paths, err := filepath.Glob("../../rules/*.toml")
	require.NoError(t, err)
	var all strings.Builder
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, text := range conditionText.FindAllString(string(data), -1) {
			all.WriteString(text + "\n")
		}
	}
	require.NotEmpty(t, reckon.Functions)
	for _, f := range reckon.Functions {
		assert.Regexp(t, `\b`+f.Name+`\(`, all.String(), "no rule calls %s", f.Name)
	}
}
