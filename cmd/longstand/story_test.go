package main

import (
	"flag"
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite golden files and stories")

func TestMain(m *testing.M) {
	testscript.Main(away{m}, map[string]func(){"longstand": main})
}

// away runs the tests away from the house rules of whoever runs them. Stories
// have a home of their own.
type away struct{ m *testing.M }

// Run runs the tests.
func (a away) Run() int {
	if err := os.Setenv(houseVariable, ""); err != nil {
		panic(err)
	}
	return a.m.Run()
}

// TestStories runs whole commands, one story a file, named by subject.
func TestStories(t *testing.T) {
	root, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/script",
		UpdateScripts: *update,
		Cmds:          captureCommands,
		Setup: func(env *testscript.Env) error {
			env.Setenv("REPO", root+"/../..")
			return nil
		},
	})
}
