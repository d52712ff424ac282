package main

import (
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestExamplesAreValid: every command shows how it is called, with options and
// arguments that it takes.
func TestExamplesAreValid(t *testing.T) {
	each(new(door).root(), func(c *cobra.Command) {
		if assert.NotEmpty(t, c.Example, c.CommandPath()) {
			for line := range strings.Lines(c.Example) {
				line, _, _ = strings.Cut(strings.TrimSpace(line), " > ")
				valid(t, line)
			}
		}
	})
}

// each visits a command and all below it that do something themselves.
func each(c *cobra.Command, visit func(*cobra.Command)) {
	if len(c.Commands()) == 0 || !c.HasParent() {
		visit(c)
	}
	for _, sub := range c.Commands() {
		each(sub, visit)
	}
}

var word = regexp.MustCompile(`(?:[^\s']|'[^']*')+`)

// valid reads a line as the command it names would.
func valid(t *testing.T, line string) {
	args := word.FindAllString(strings.ReplaceAll(line, `"`, ""), -1)
	root := (&door{out: io.Discard, errs: io.Discard}).root()
	c, rest, err := root.Find(args[1:])
	require.NoError(t, err, line)
	assert.NoError(t, c.ParseFlags(rest), line)
	assert.NoError(t, c.ValidateArgs(c.Flags().Args()), line)
}
