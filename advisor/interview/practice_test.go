package interview_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/interview"
)

// TestPracticeCarsAreAskedLess answers for each practice car what its case
// says, and "can't tell" where it says nothing, and counts: a person who can
// tell is asked less. LONGSTAND_CARS=1 (any figure) counts for all cars.
func TestPracticeCarsAreAskedLess(t *testing.T) {
	e := workshop(t)
	files, err := filepath.Glob("../../testdata/cases/practice/*.toml")
	require.NoError(t, err)
	if os.Getenv("LONGSTAND_CARS") == "" {
		files = files[:min(2, len(files))] // all of them take half a minute
	}
	vocabulary := len(whole(e))
	total, brief := 0, 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		cs, faults := casefile.Read(file, data, e.Book())
		require.False(t, faults.HasErrors(), "%s", file)
		c := car{}
		for i := range cs.Answers {
			c[cs.Answers[i].Question] = cs.Answers[i]
		}
		for _, id := range whole(e) {
			if _, ok := c[id]; !ok {
				c[id] = advisor.Answer{Question: id, Value: advisor.Value{State: advisor.CantTell}}
			}
		}
		_, n := held(e, c, interview.Options{})
		_, b := held(e, c, interview.Options{Brief: true})
		total, brief = total+n, brief+b
		t.Logf("%-28s %3d asked, %3d brief, of %d", filepath.Base(file), n, b, vocabulary)
		assert.LessOrEqual(t, b, n, "%s: a brief intake asks more", filepath.Base(file))
	}
	require.NotEmpty(t, files)
	t.Logf("mean %d asked, %d brief, of %d", total/len(files), brief/len(files), vocabulary)
	assert.Less(t, 2*total, vocabulary*len(files), "more than half of the vocabulary")
}

func BenchmarkAdvise(b *testing.B) {
	e := workshop(b)
	c := draw(rand.New(rand.NewPCG(7, 1)), e.Book(), e.Program())
	cs, _ := held(e, c, interview.Options{})
	empty := &advisor.Case{Date: "2025-10-14", Day: 2025.79}
	b.Run("answered", func(b *testing.B) {
		for b.Loop() {
			e.Advise(cs)
		}
	})
	b.Run("empty", func(b *testing.B) {
		for b.Loop() {
			e.Advise(empty)
		}
	})
}

// BenchmarkNextQuestion is what an interview works out after every answer: all
// questions that can still matter, with the worth of each.
func BenchmarkNextQuestion(b *testing.B) {
	e := workshop(b)
	cs, _ := held(e, draw(rand.New(rand.NewPCG(7, 1)), e.Book(), e.Program()), interview.Options{})
	for _, answers := range []int{0, len(cs.Answers) / 2, len(cs.Answers)} {
		c := *cs
		c.Answers = cs.Answers[:answers]
		b.Run(strconv.Itoa(answers)+" answers", func(b *testing.B) {
			for b.Loop() {
				e.Open(&c)
			}
		})
	}
}
