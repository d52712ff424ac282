package engine_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/casefile"
)

func TestCalls(t *testing.T) {
	e := open(t, small)
	for _, c := range []struct {
		name, body, op string
		call           advisor.Call
		forced         string
	}{
		{"a base chance does not pay the engine out", "", "clutch", advisor.Leave, ""},
		{"a clutch seen to slip pays for it", "[answers]\nslips = true", "clutch", advisor.Do, ""},
		{"access comes with it", "[answers]\nslips = true\nfelt = \"smooth\"", "out", advisor.Do, ""},
		{"the flywheel is worth feeling once it is open", "[answers]\nslips = true", "skim", advisor.LookFirst, ""},
		{"two that carry the door together are both done", "[answers]\nslips = true\nfelt = \"scored\"", "skim", advisor.Do, ""},
		{"with the door open anyway it is done while open", "[answers]\nfelt = \"scored\"\n[decisions]\naccepted = [\"clutch\"]", "skim", advisor.DoOpen, ""},
		{"a scored flywheel alone is left shut", "[answers]\nfelt = \"scored\"", "skim", advisor.Leave, ""},
		{"a danger not looked at", "", "hoses", advisor.LookFirst, ""},
		{"a danger found bad is forced in", "[answers]\nhose = \"cracked\"", "hoses", advisor.Do, "danger"},
		{"hearsay of bad is enough to force", "[answers]\nhose = { is = \"cracked\", how = \"owner\" }", "hoses", advisor.Do, "danger"},
		{"hearsay never makes safe", "[answers]\nhose = { is = \"sound\", how = \"owner\" }", "hoses", advisor.LookFirst, ""},
		{"seen sound", "[answers]\nhose = \"sound\"", "hoses", advisor.Leave, ""},
		{"a declined danger is left", "[answers]\nhose = \"cracked\"\n[decisions]\ndeclined = [\"hoses\"]", "hoses", advisor.Leave, "declined"},
		{"a standing rule", "[answers]\nyears = 3", "oil", advisor.Do, "standing rule"},
		{"an unknown condition does not act", "", "oil", advisor.Leave, ""},
		{"a range that decides", "[answers]\nyears = \"2 to 9\"", "oil", advisor.Do, "standing rule"},
		{"accepted work is in", "[decisions]\naccepted = [\"clutch\"]", "clutch", advisor.Do, "accepted"},
		{"and brings what it needs", "[decisions]\naccepted = [\"clutch\"]", "out", advisor.Do, "needed"},
		{"done work is left", "[answers]\nyears = 3\n[decisions]\ndone = [\"oil\"]", "oil", advisor.Leave, "done"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := call(e.Advise(read(t, e, c.body)), c.op)
			assert.Equal(t, c.call, o.Call)
			assert.Equal(t, c.forced, o.Forced)
		})
	}
}

func TestHoldsStandUntilSeen(t *testing.T) {
	e := open(t, small)
	stands := func(body string) bool { return len(e.Advise(read(t, e, body)).Holds) > 0 }
	assert.True(t, stands(""), "not known is not fine")
	assert.True(t, stands("[answers]\nhose = { is = \"sound\", how = \"owner\" }"), "a word lifts nothing")
	assert.False(t, stands("[answers]\nhose = \"sound\""))
	assert.False(t, stands("[answers]\nhose = \"cracked\"\n[decisions]\ndone = [\"hoses\"]"))
	h := e.Advise(read(t, e, "")).Holds[0]
	assert.Equal(t, []string{"moved", "driven", "road"}, h.Stops, "each stop with what it stops in turn")
	assert.Contains(t, h.LiftedBy, advisor.Settle{Kind: "inspection", ID: "look_hose"})
	assert.Contains(t, h.LiftedBy, advisor.Settle{Kind: "operation", ID: "hoses"})
}

func TestMarginsAndBreakEven(t *testing.T) {
	e := open(t, small)
	a := e.Advise(read(t, e, ""))
	clutch := call(a, "clutch")
	// Worked by hand. Chances 1.5/11 and 3.5/11; the clutch's loss is 300 + 160 +
	// 540 = 1000, so r = 136.36; the flywheel's 60 + 540 = 600, so r = 190.91. Both
	// need the engine out: overlap 540 x (5/11 - (1 - 9.5/11 x 7.5/11)) = 23.43.
	// With the clutch forced in the flywheel pays as well: 136.36 - 160 - 540 -
	// 23.43 + 190.91 - 60 = -456.16; without it nothing pays.
	assert.EqualValues(t, -45616, *clutch.Margin)
	assert.InDelta(t, 0.5925, *clutch.BreakEven, 1e-4, "(136.36 + 456.16) / 1000")
	assert.EqualValues(t, 16000, clutch.Cost)
	assert.EqualValues(t, 70000, clutch.Alone)
}

func TestFileOrderChangesNothing(t *testing.T) {
	a := builtin(t, nil)
	b := builtin(t, slices.Reverse[[]book.File])
	data, err := os.ReadFile("../../testdata/cases/demo.toml")
	require.NoError(t, err)
	ca, la := casefile.Read("demo.toml", data, a.Book())
	cb, _ := casefile.Read("demo.toml", data, b.Book())
	require.False(t, la.HasErrors())
	one, two := a.Advise(ca), b.Advise(cb)
	assert.Equal(t, one.Operations, two.Operations)
	assert.Equal(t, one.Inspections, two.Inspections)
	assert.Equal(t, one.Open, two.Open)
	assert.Equal(t, one.Total, two.Total)
	again := a.Advise(ca)
	assert.Equal(t, one, again, "the same case twice gives the same advice")
}

// onFindings are the holds that a finding sets although not having looked does
// not: a car that runs now would otherwise be stopped by what nobody asked. Each
// says so in the book, where it silences the warning of it.
func onFindings(t *testing.T) map[string]bool {
	out := map[string]bool{}
	for _, s := range shelf(t, nil).Silences() {
		if s.Kind == "hold" && s.Code == "unasked-is-fine" {
			out[s.ID] = true
		}
	}
	require.NotEmpty(t, out)
	return out
}

// TestForgettingNeverLiftsAHold is the relation that a hold never disappears
// when an answer is removed.
func TestForgettingNeverLiftsAHold(t *testing.T) {
	e := builtin(t, nil)
	files, err := filepath.Glob("../../testdata/cases/practice/P*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	random := rand.New(rand.NewPCG(3, 4))
	finding := onFindings(t)
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		c, l := casefile.Read(f, data, e.Book())
		require.False(t, l.HasErrors(), f)
		held := map[string]bool{}
		for _, h := range e.Advise(c).Holds {
			held[h.ID] = true
		}
		for range 12 {
			less := *c
			less.Answers = slices.Clone(c.Answers)
			gone := random.IntN(len(less.Answers))
			name := less.Answers[gone].Question
			less.Answers = slices.DeleteFunc(less.Answers, func(a advisor.Answer) bool { return a.Question == name })
			now := map[string]bool{}
			for _, h := range e.Advise(&less).Holds {
				now[h.ID] = true
			}
			for id := range held {
				if finding[id] {
					continue
				}
				assert.True(t, now[id], fmt.Sprintf("%s: %s lifted by forgetting %s", f, id, name))
			}
		}
	}
}
