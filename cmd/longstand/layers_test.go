package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
)

// TestEveryCommandOnACaseKnowsItsFolder: where a usage line names CASE, that
// argument's folder is the one in which a longstand.toml counts.
func TestEveryCommandOnACaseKnowsItsFolder(t *testing.T) {
	d := &door{}
	found := 0
	var visit func(c *cobra.Command)
	visit = func(c *cobra.Command) {
		for _, sub := range c.Commands() {
			visit(sub)
		}
		words := strings.Fields(c.Use)[1:]
		args, want := make([]string, len(words)), "."
		for i, word := range words {
			args[i] = "other/" + word
			if strings.HasPrefix(word, "CASE") {
				args[i], want = "cars/of/june/car.toml", filepath.Join("cars", "of", "june")
				found++
			}
		}
		d.cases(c.Use, args)
		assert.Equal(t, want, d.folder, c.Use)
		d.cases(c.Use, nil)
		assert.Equal(t, ".", d.folder, c.Use)
	}
	visit(d.root())
	assert.GreaterOrEqual(t, found, 7)
}
