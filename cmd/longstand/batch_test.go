package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/book"
	"longstand/advisor/casefile"
)

// inLine is a case file as one line of JSON.
func inLine(t testing.TB, path string) []byte {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	var c map[string]any
	require.NoError(t, toml.Unmarshal(data, &c))
	c["id"] = strings.TrimSuffix(filepath.Base(path), ".toml")
	for key, v := range c {
		c[key] = withoutClock(v)
	}
	line, err := json.Marshal(c)
	require.NoError(t, err)
	return append(line, '\n')
}

// withoutClock writes days, which JSON does not have, as the case file does.
func withoutClock(v any) any {
	switch x := v.(type) {
	case interface{ Format(string) string }:
		return x.Format("2006-01-02")
	case map[string]any:
		for key, in := range x {
			x[key] = withoutClock(in)
		}
	case []any:
		for i, in := range x {
			x[i] = withoutClock(in)
		}
	case []map[string]any:
		for _, in := range x {
			withoutClock(in)
		}
	}
	return v
}

func practiceCars(t testing.TB) []string {
	paths, err := filepath.Glob("../../testdata/cases/practice/*.toml")
	require.NoError(t, err)
	require.Len(t, paths, 12)
	closed, err := filepath.Glob("../../testdata/cases/closed/*.toml")
	require.NoError(t, err)
	return append(paths, closed...)
}

// TestBatchIsAdvise: a line out is what advise says of the same case, in the
// order of the lines; and each line in holds to the schema of a line.
func TestBatchIsAdvise(t *testing.T) {
	e, err := (&door{}).engine()
	require.NoError(t, err)
	text, err := book.LineSchema(e.Book())
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("line.json", doc))
	schema, err := c.Compile("line.json")
	require.NoError(t, err)
	var in, out, errs bytes.Buffer
	paths := practiceCars(t)
	for _, path := range paths {
		line := inLine(t, path)
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(line))
		require.NoError(t, err)
		assert.NoError(t, schema.Validate(v), path)
		in.Write(line)
	}
	require.Equal(t, exitDone, run([]string{"batch"}, &in, &out, &errs), errs.String())
	lines := bytes.Split(bytes.TrimSuffix(out.Bytes(), []byte("\n")), []byte("\n"))
	require.Len(t, lines, len(paths))
	for i, path := range paths {
		var page, want bytes.Buffer
		require.Equal(t, exitDone, run([]string{"advise", path, "--format", "json"}, nil, &page, &errs))
		require.NoError(t, json.Compact(&want, bytes.TrimSpace(page.Bytes())))
		assert.True(t, bytes.Equal(want.Bytes(), lines[i]), "%s: the batch says otherwise", path)
	}
}

// TestBatchKeepsItsLines: whatever is in them, as many lines come out as went
// in, each in its place.
func TestBatchKeepsItsLines(t *testing.T) {
	const good = `{"case": 1, "date": "2025-10-14", "id": "car%d"}` + "\n"
	var in strings.Builder
	for i := 1; i <= 60; i++ {
		switch i % 6 {
		case 0:
			in.WriteString(strings.Repeat("x", casefile.MaxBytes+i) + "\n")
		case 1:
			in.WriteString("\r\n")
		case 2:
			in.WriteString("\"\\ud800\x00\n")
		default:
			fmt.Fprintf(&in, good, i)
		}
	}
	var out, errs bytes.Buffer
	require.Equal(t, exitFault, run([]string{"batch"}, strings.NewReader(strings.TrimSuffix(in.String(), "\n")), &out, &errs))
	assert.Contains(t, errs.String(), "at fault: 30 of 60 lines")
	for i, line := range strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n") {
		var v struct {
			Line   int
			Case   struct{ ID string }
			Errors []lineFault
		}
		require.NoError(t, json.Unmarshal([]byte(line), &v), line)
		if v.Case.ID == "" {
			assert.Equal(t, i+1, v.Line)
			assert.NotEmpty(t, v.Errors)
		} else {
			assert.Equal(t, fmt.Sprint("car", i+1), v.Case.ID)
		}
	}
}

// full takes some bytes and then no more.
type full struct{ room int }

func (f *full) Write(p []byte) (int, error) {
	if f.room -= len(p); f.room < 0 {
		return 0, errors.New("the disk is full")
	}
	return len(p), nil
}

// endless gives the same line for ever.
type endless struct{ line []byte }

func (e endless) Read(p []byte) (int, error) { return copy(p, e.line), nil }

// TestBatchStopsWhenItCannotWrite: an input without an end ends with the output.
func TestBatchStopsWhenItCannotWrite(t *testing.T) {
	var errs bytes.Buffer
	assert.Equal(t, exitFailure, run([]string{"batch"}, endless{[]byte("{}\n")}, &full{2000}, &errs))
	assert.Contains(t, errs.String(), "the disk is full")
}

// broken fails after some bytes.
type broken struct{ io.Reader }

func (b broken) Read(p []byte) (int, error) {
	n, err := b.Reader.Read(p)
	if errors.Is(err, io.EOF) {
		err = errors.New("the line is dead")
	}
	return n, err
}

func TestBatchTellsABrokenInput(t *testing.T) {
	var out, errs bytes.Buffer
	assert.Equal(t, exitFailure, run([]string{"batch"}, broken{strings.NewReader("{}\n{}")}, &out, &errs))
	assert.Equal(t, 1, strings.Count(out.String(), "\n"), "what was read whole is answered")
	assert.Contains(t, errs.String(), "the line is dead")
}

func TestFieldsOfFaults(t *testing.T) {
	e, err := (&door{}).engine()
	require.NoError(t, err)
	l := &lines{e: e, name: "x"}
	for _, tt := range []struct{ text, field string }{
		{`{"date": "2025-10-14"}`, ""},
		{`{"case": 1, "date": "soon"}`, "date"},
		{`{"case": 1, "date": "2025-10-14", "id": 3}`, "id"},
		{`{"case": 1, "date": "2025-10-14", "nmae": "x"}`, "nmae"},
		{`{"case": 1, "date": "2025-10-14", "answers": {"compression": [140, -3]}}`, "answers.compression[1]"},
		{`{"case": 1, "date": "2025-10-14", "decisions": {"done": [{"operation": "batery"}]}}`, "decisions.done[0].operation"},
		{`{"case": 1, "date": "2025-10-14", "answers": {"years_laid_up": {"is": 5, "hwo": "seen"}}}`, "answers.years_laid_up.hwo"},
	} {
		_, line := l.read(&slot{number: 4, data: []byte(tt.text)})
		var v struct{ Errors []lineFault }
		require.NoError(t, json.Unmarshal(line, &v), tt.text)
		require.Len(t, v.Errors, 1, tt.text)
		assert.Equal(t, tt.field, v.Errors[0].Field, tt.text)
		assert.Equal(t, 4, v.Errors[0].Line)
	}
}

// BenchmarkBatch advises on the practice cars a line each; ns/op is of a line.
func BenchmarkBatch(b *testing.B) {
	e, err := (&door{}).engine()
	require.NoError(b, err)
	var all [][]byte
	for _, path := range practiceCars(b) {
		all = append(all, inLine(b, path))
	}
	b.ReportAllocs()
	b.ResetTimer()
	var in bytes.Buffer
	for i := range b.N {
		in.Write(all[i%len(all)])
	}
	d := &door{out: io.Discard, errs: io.Discard}
	require.NoError(b, d.adviseLines(&lines{e: e, name: "input"}, &in))
}
