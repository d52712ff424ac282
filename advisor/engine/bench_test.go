package engine_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"longstand/advisor/casefile"
)

// BenchmarkAdvise is the whole advice, warm, on the demo car.
func BenchmarkAdvise(b *testing.B) {
	e := builtin(b, nil)
	data, err := os.ReadFile("../../testdata/cases/demo.toml")
	require.NoError(b, err)
	c, l := casefile.Read("demo.toml", data, e.Book())
	require.False(b, l.HasErrors())
	b.ReportAllocs()
	for b.Loop() {
		e.Advise(c)
	}
}

// BenchmarkBrief is the advice without its ladder and open questions, as the
// weighing of many cases takes it.
func BenchmarkBrief(b *testing.B) {
	e := builtin(b, nil)
	data, err := os.ReadFile("../../testdata/cases/demo.toml")
	require.NoError(b, err)
	c, l := casefile.Read("demo.toml", data, e.Book())
	require.False(b, l.HasErrors())
	b.ReportAllocs()
	for b.Loop() {
		e.Brief(c)
	}
}

// BenchmarkNextQuestion is what an interview asks after every answer.
func BenchmarkNextQuestion(b *testing.B) {
	e := builtin(b, nil)
	c := onDisk(b, e, "demo.toml")
	b.ReportAllocs()
	for b.Loop() {
		e.Open(c)
	}
}
