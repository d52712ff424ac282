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
	"longstand/advisor/engine"
)

// small is a book of a few rules for the calls: a clutch behind an engine, a
// danger with its hold, a standing rule, a look.
const small = `
[settings]
rate = 60
currency = "GBP"
minor_digits = 2
tax = "0.20"
locale = "en-GB"
care = { thrifty = "0.7", normal = "1", thorough = "1.5" }

[[source]]
id = "practice"
kind = "practice"
cite = "common practice, no source"

[[question]]
id = "slips"
kind = "yesno"
ask = "Does the clutch slip?"
name = "clutch slips"
station = "underneath"
minutes = 5

[[question]]
id = "hose"
kind = "choice"
ask = "What do the hoses look like?"
name = "hoses"
station = "underneath"
options = { sound = "sound", cracked = "cracked" }

[[question]]
id = "turned"
kind = "yesno"
ask = "Was it turned by hand?"
name = "turned by hand"
station = "bonnet"

[[question]]
id = "years"
kind = "number"
ask = "How many years?"
name = "years"
station = "story"
range = [0, 50]

[[question]]
id = "felt"
kind = "choice"
ask = "How does the flywheel feel?"
name = "flywheel"
station = "inspection"
options = { smooth = "smooth", scored = "scored" }

[[operation]]
id = "out"
name = "engine out"
part = "access"
phase = "strip"
who = "shop"
hours = [9, 9, 9]
parts = [0, 0, 0]
access = true
because = "to get at the clutch"
source = "practice"

[[operation]]
id = "clutch"
name = "clutch"
part = "clutch"
phase = "repair"
who = "shop"
hours = [1, 1, 1]
parts = [100, 100, 100]
needs = ["out"]
because = "slips"
source = "practice"

[[operation]]
id = "skim"
name = "flywheel"
part = "clutch"
phase = "repair"
who = "shop"
hours = [1, 1, 1]
parts = [0, 0, 0]
needs = ["out"]
because = "scored"
source = "practice"

[[operation]]
id = "hoses"
name = "hoses"
part = "brakes"
phase = "repair"
who = "shop"
hours = [1, 1, 1]
parts = [50, 50, 50]
because = "they burst"
source = "practice"

[[operation]]
id = "oil"
name = "oil"
part = "engine"
phase = "wake"
who = "shop"
hours = [0.5, 0.5, 0.5]
parts = [30, 30, 30]
because = "old oil"
source = "practice"

[[suspect]]
id = "worn_clutch"
name = "worn clutch"
part = "clutch"
cured_by = ["clutch"]
base = [{ count = "1 of 10" }]
if_left = 300
because = "it slips"
source = "practice"

[[sign]]
id = "clutch_slips"
suspect = "worn_clutch"
name = "it slips"
when = 'slips'
with = "9 of 10"
without = "0 of 10"
because = "a sound clutch bites"
source = "practice"

[[suspect]]
id = "scored_wheel"
name = "scored flywheel"
part = "clutch"
cured_by = ["skim"]
base = [{ count = "3 of 10" }]
if_left = 0
because = "wears"
source = "practice"

[[sign]]
id = "wheel_scored"
suspect = "scored_wheel"
name = "scored"
when = 'felt == "scored"'
with = "9 of 10"
without = "0 of 10"
because = "felt"
source = "practice"

[[suspect]]
id = "bad_hose"
name = "bad hose"
part = "brakes"
cured_by = ["hoses"]
base = [{ count = "1 of 10" }]
if_left = 0
danger = { kind = "brakes", good = 'hose == "sound"', because = "a hose that bursts", source = "practice" }
because = "rubber ages"
source = "practice"

[[inspection]]
id = "look_hose"
name = "bend the hoses"
where = "underneath"
minutes = 10
answers = ["hose"]
because = "cracks show when bent"
source = "practice"

[[inspection]]
id = "feel_wheel"
name = "feel the flywheel"
where = "bench"
minutes = 5
access = ["out"]
answers = ["felt"]
because = "scores are felt"
source = "practice"

[[standing]]
id = "oil_first"
operation = "oil"
says = "in"
routine = true
when = 'years >= 1'
because = "old oil holds acid and water"
source = "practice"

[[hold]]
id = "hose_hold"
name = "the hoses are seen to be sound"
stops = ["moved"]
when = 'hose != "sound"'
until = 'hose == "sound" or done(hoses)'
because = "no brakes"
source = "practice"
`

// open makes an engine of rule text.
func open(t testing.TB, text string) *engine.Engine {
	r := book.Load([]book.File{{Name: "small.toml", Data: []byte(text)}})
	for _, d := range r.Diagnostics {
		require.NotEqual(t, "error", d.Severity.String(), "%s %s", d.At, d.Message)
	}
	return engine.New(r.Book, r.Program)
}

// shelf loads the built-in book.
func shelf(t testing.TB, order func([]book.File)) *book.Result {
	names, err := filepath.Glob("../../rules/*.toml")
	require.NoError(t, err)
	var files []book.File
	for _, n := range names {
		data, err := os.ReadFile(n)
		require.NoError(t, err)
		files = append(files, book.File{Name: filepath.Base(n), Data: data})
	}
	if order != nil {
		order(files)
	}
	r := book.Load(files)
	require.False(t, r.Diagnostics.HasErrors(), "rules check")
	return r
}

// builtin makes an engine of the built-in book.
func builtin(t testing.TB, order func([]book.File)) *engine.Engine {
	r := shelf(t, order)
	return engine.New(r.Book, r.Program)
}

// read reads a case from its answers.
func read(t testing.TB, e *engine.Engine, body string) *advisor.Case {
	c, l := casefile.Read("case.toml", []byte("case = 1\ndate = 2025-01-01\n"+body), e.Book())
	for _, d := range l {
		require.Fail(t, d.Message, d.At.String())
	}
	return c
}

func call(a *advisor.Advice, id string) *advisor.OperationAdvice {
	i := slices.IndexFunc(a.Operations, func(o advisor.OperationAdvice) bool { return o.ID == id })
	return &a.Operations[i]
}

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
