package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/book"
	"longstand/advisor/casefile/illdisk"
	"longstand/advisor/engine"
)

// ordeal is one command of which each operation on the disk is to fail once.
type ordeal struct {
	name  string
	args  []string // CASE stands for the case, FOLDER for its folder
	typed string
	begin string // the case before; "" for none
	grows bool   // a second try adds to what a first one wrote
	makes string // a file that it makes beside the case
	holds string // what the case holds in the end
}

const halfway = `# the red one
case = 1
date = 2025-10-14 # the day it came

[answers]
years_laid_up = 11 # from the last tax disc
`

// ordeals are the paths by which commands touch a case.
func ordeals(answered string) []ordeal {
	ended := answered + "\n[decisions]\ndone = [\"brake_hoses\"]\n"
	return []ordeal{
		{name: "advice", args: []string{"advise", "CASE"}, begin: halfway},
		{name: "record", args: []string{"record", "CASE", "climate=damp", "years_laid_up=9 @paper", "accepted:head_off", "done:brake_hoses", "overruled:head_gasket=leave", "--by", "foreman", "--why", "new", "--on", "2025-10-15"}, begin: halfway},
		{name: "record from a file", args: []string{"record", "CASE", "--from", "FOLDER/readings.csv"}, begin: halfway},
		{name: "a correction", args: []string{"record", "CASE", "years_laid_up=9", "--replace"}, begin: halfway},
		{name: "a new case", args: []string{"intake", "CASE", "--date", "2025-10-14"}, typed: "q\n"},
		{name: "answers at intake", args: []string{"intake", "CASE"}, typed: "c\nc # so\nq\n", begin: halfway, grows: true},
		{name: "answers from a file", args: []string{"intake", "CASE", "--answers", "FOLDER/answers.txt"}, begin: halfway},
		{name: "a once-over at intake", args: []string{"intake", "CASE"}, typed: "station underneath\nc\n2 c 3\nq\n", begin: halfway, grows: true,
			holds: "pipe_look = \"can't tell\"\nseam_look = \"can't tell\"\n"},
		{name: "work done, and its hours", args: []string{"record", "CASE", "done:brake_hoses", "--hours", "2.5", "--on", "2025-10-15"}, begin: answered, holds: "\n[hours]\n"},
		{name: "the end of a job", args: []string{"close", "CASE", "hoses_perished=found", "hours:brake_hoses=2", "--by", "AB", "--on", "2025-10-20"}, begin: ended, holds: "\n[looked]\n"},
		{name: "the end of a job, asked", args: []string{"close", "CASE", "--on", "2025-10-20"}, typed: "found\n2.5\n", begin: ended, holds: "\n[closed]\n"},
		{name: "the forecast", args: []string{"intake", "CASE"}, begin: answered},
		{name: "a letter", args: []string{"letter", "CASE", "--send", "--format", "text", "-o", "FOLDER/letter.txt"}, begin: halfway, grows: true, makes: "letter.txt"},
	}
}

// try runs an ordeal's command on a disk.
func (o *ordeal) try(e *engine.Engine, folder string, d *illdisk.Disk) (code int, talk string) {
	at := strings.NewReplacer("CASE", filepath.Join(folder, "case.toml"), "FOLDER", folder)
	var args []string
	for _, a := range o.args {
		args = append(args, at.Replace(a))
	}
	var errs bytes.Buffer
	code = (&door{in: strings.NewReader(o.typed), out: &bytes.Buffer{}, errs: &errs, loaded: e, disk: d}).run(args)
	return code, errs.String()
}

func (o *ordeal) folder(t *testing.T) string {
	folder := t.TempDir()
	if o.begin != "" {
		require.NoError(t, os.WriteFile(filepath.Join(folder, "case.toml"), []byte(o.begin), 0o640))
	}
	require.NoError(t, os.WriteFile(filepath.Join(folder, "readings.csv"), []byte("compression,140,138,142,136\nclimate,damp\n"), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "answers.txt"), []byte("tyre_code = 2309\nengine_turns = yes\noil_finds = none\nhose_look = 1\nbelow = c\n"), 0o600))
	return folder
}

// stages are the case's bytes before the command and after each of its saves,
// and those of the file that it makes.
func (o *ordeal) stages(t *testing.T, e *engine.Engine) (out []string, made string) {
	folder := o.folder(t)
	out = append(out, o.begin)
	d := &illdisk.Disk{Renamed: func(path string) {
		if filepath.Base(path) == "case.toml" {
			data, err := os.ReadFile(path)
			require.NoError(t, err)
			out = append(out, string(data))
		}
	}}
	code, talk := o.try(e, folder, d)
	require.Zero(t, code, talk)
	require.Contains(t, out[len(out)-1], o.holds)
	if o.makes != "" {
		data, err := os.ReadFile(filepath.Join(folder, o.makes))
		require.NoError(t, err)
		made = string(data)
	}
	return out, made
}

// TestEveryFailingOperation fails each operation on the disk of each command in
// turn, in four ways. The case is then, byte for byte, as it was before the
// command or after one of its saves, and holds every acknowledged answer; a
// failure is told in one line and ends with 3; and a second try goes through
// whatever was left behind and leaves the case alone in its folder.
func TestEveryFailingOperation(t *testing.T) {
	e := smallBook(t)
	var failed atomic.Int64
	for _, o := range ordeals(answered(t, e)) {
		t.Run(o.name, func(t *testing.T) {
			t.Parallel()
			stages, made := o.stages(t, e)
			for way := range illdisk.Ways {
				n := o.failEach(t, e, stages, made, way)
				assert.Greater(t, n, 3, "too few operations were failed")
				failed.Add(int64(n))
			}
		})
	}
	t.Cleanup(func() { t.Logf("%d failed operations", failed.Load()) })
}

// failEach fails the operations of one command in one way, and counts them.
func (o *ordeal) failEach(t *testing.T, e *engine.Engine, stages []string, made string, way illdisk.Way) int {
	for k := 1; ; k++ {
		folder := o.folder(t)
		d := &illdisk.Disk{K: k, Way: way}
		code, talk := o.try(e, folder, d)
		if !d.Hit {
			require.Zero(t, code, talk)
			return k - 1
		}
		where := fmt.Sprintf("%s, operation %d of %v:\n%s", way, k, o.args, talk)
		at := o.stage(t, folder, stages, where)
		if code == exitDone {
			assert.Equal(t, len(stages)-1, at, where)
		} else {
			assert.Equal(t, exitFailure, code, where)
			assert.Equal(t, 1, strings.Count(talk, "longstand: "), where)
			assert.Contains(t, talk, folder, where)
		}
		acknowledged := strings.Count(talk, "  kept: ")
		assert.GreaterOrEqual(t, at, acknowledged, "an acknowledged answer is lost; "+where)
		if data, err := os.ReadFile(filepath.Join(folder, o.makes)); o.makes != "" && !os.IsNotExist(err) {
			assert.Equal(t, made, string(data), where)
		}
		if lock, _ := os.ReadFile(filepath.Join(folder, "case.toml.lock")); len(lock) > 0 {
			assert.Equal(t, exitFailure, code, "a lock is left, and nothing said; "+where)
		}
		o.again(t, e, folder, stages, where)
		if t.Failed() {
			return k
		}
	}
}

// stage finds which of its stages the case is at; -1 for none.
func (o *ordeal) stage(t *testing.T, folder string, stages []string, where string) int {
	data, err := os.ReadFile(filepath.Join(folder, "case.toml"))
	if !os.IsNotExist(err) {
		require.NoError(t, err)
	}
	for i := len(stages) - 1; i >= 0; i-- {
		if stages[i] == string(data) {
			return i
		}
	}
	t.Errorf("the case is torn; %s\n%s", where, data)
	return -1
}

// again tries the command a second time, on a disk that is well.
func (o *ordeal) again(t *testing.T, e *engine.Engine, folder string, stages []string, where string) {
	lock, _ := os.ReadFile(filepath.Join(folder, "case.toml.lock"))
	_, err := os.Stat(filepath.Join(folder, ".case.toml.new"))
	writes := o.args[0] != "advise"
	code, talk := o.try(e, folder, &illdisk.Disk{})
	assert.Zero(t, code, "a second try fails; %s\n%s", where, talk)
	if writes {
		assert.Equal(t, len(lock) > 0, strings.Contains(talk, "its lock is taken over"), where+talk)
		assert.Equal(t, err == nil, strings.Contains(talk, "was interrupted; what it left is removed"), where+talk)
		assert.NoFileExists(t, filepath.Join(folder, "case.toml.lock"), where)
	}
	names, _ := filepath.Glob(filepath.Join(folder, ".*"))
	assert.Empty(t, names, where)
	if !o.grows {
		assert.Equal(t, len(stages)-1, o.stage(t, folder, stages, where), where)
	}
}

// oneLook is a once-over of three questions, each of which a hold reads.
const oneLook = `
[[question]]
id = "pipe_look"
kind = "yesno"
name = "pipes"
ask = "Are the pipes bright?"
station = "underneath"

[[question]]
id = "bush_look"
kind = "yesno"
name = "bushes"
ask = "Are the bushes whole?"
station = "underneath"

[[question]]
id = "seam_look"
kind = "yesno"
name = "seams"
ask = "Are the seams dry?"
station = "underneath"

[[hold]]
id = "looked_below"
name = "it was looked at from below"
stops = ["road"]
until = 'pipe_look and bush_look and seam_look'
because = "Nobody drives what nobody has seen."
source = "practice"

[[once_over]]
id = "below"
name = "seen from below"
station = "underneath"
ask = "From below: what can be told?"
questions = ["pipe_look", "bush_look", "seam_look"]
`

// smallBook is a book that is worked out in an instant, since commands are run
// by the hundred.
func smallBook(t *testing.T) *engine.Engine {
	const file = "../../testdata/check/base.toml"
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	r := book.Load([]book.File{{Name: file, Data: data}, {Name: "one_look.toml", Data: []byte(oneLook)}})
	require.False(t, r.Diagnostics.HasErrors(), "%v", r.Diagnostics)
	return engine.New(r.Book, r.Program)
}

// answered is a case in which nothing is left to ask, with no forecast yet.
func answered(t *testing.T, e *engine.Engine) string {
	o := ordeal{args: []string{"intake", "CASE"}, typed: strings.Repeat("c\n", len(e.Book().Questions)), begin: halfway}
	folder := o.folder(t)
	code, talk := o.try(e, folder, &illdisk.Disk{})
	require.Zero(t, code, talk)
	data, err := os.ReadFile(filepath.Join(folder, "case.toml"))
	require.NoError(t, err)
	before, _, found := strings.Cut(string(data), "\n[forecast]")
	require.True(t, found)
	return before
}
