package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestWatch: each change is checked once, and an interrupt ends it.
func TestWatch(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	write := func(text string) { require.NoError(t, os.WriteFile(path, []byte(text), 0o644)) }
	good := "[[standing]]\nid = 'ours'\noperation = 'radiator'\nsays = 'in'\nwhen = 'years_laid_up > 90'\nbecause = 'So.'\nsource = 'shop'\n"
	write(good)

	var out bytes.Buffer
	d := &door{out: &out, errs: &out, house: []string{dir}}
	idle, again, ended := make(chan bool), make(chan bool), make(chan error)
	go func() { ended <- d.watch(func() bool { idle <- true; return <-again }) }()
	said := func() string {
		<-idle
		page := out.String()
		out.Reset()
		return page
	}
	tick := func() string { again <- true; return said() }
	assert.Contains(t, said(), "no fault found", "at the start")
	assert.Empty(t, tick(), "nothing changed")
	write(good + "sayz = 'in'\n")
	page := tick()
	assert.Contains(t, page, "a.toml:8:1: error: a standing has no key \"sayz\" [unknown-key]\n1 error")
	assert.NotContains(t, page, " | ", "one line for each fault")
	require.NoError(t, os.Remove(path))
	assert.Contains(t, tick(), "no fault found", "a file that goes is a change")
	require.NoError(t, os.Remove(dir))
	assert.Contains(t, tick(), "house rules: ", "told, and waited for")
	again <- false
	assert.NoError(t, <-ended)
}

func TestWatchUsage(t *testing.T) {
	var out, errs bytes.Buffer
	assert.Equal(t, exitUsage, run([]string{"rules", "check", t.TempDir(), "--watch", "--format", "json"}, nil, &out, &errs))
	assert.Contains(t, errs.String(), "--watch prints text")
}
