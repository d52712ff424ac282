package engine_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

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
