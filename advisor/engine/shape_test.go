package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
)

// shapes adds to the small book what shapes a choice: a route, a chain, a
// variant, a saving and a risk.
const shapes = small + `
[[question]]
id = "low_car"
kind = "yesno"
ask = "Is it too low to work under?"
name = "too low"
station = "outside"

[[question]]
id = "gummed"
kind = "choice"
ask = "What does the carburettor look like?"
name = "carburettor"
station = "bonnet"
options = { clean = "clean", gum = "gummed", rot = "corroded" }

[[question]]
id = "kit"
kind = "yesno"
ask = "Is the modern kit wanted?"
name = "modern kit"
station = "story"

[[operation]]
id = "box_out"
name = "gearbox out"
part = "access"
phase = "strip"
who = "shop"
hours = [4, 4, 4]
parts = [0, 0, 0]
access = true
because = "from below"
source = "practice"

[[route]]
id = "behind"
name = "reach the flywheel end"
because = "two ways"
source = "practice"
ways = [
  { id = "above", name = "engine out", through = ["out"] },
  { id = "below", name = "gearbox out", through = ["box_out"], when = 'not low_car' },
]

[[operation]]
id = "seal"
name = "rear seal"
part = "engine"
phase = "repair"
who = "shop"
hours = [1, 1, 1]
parts = [10, 10, 10]
needs = ["behind"]
variants = [{ name = "modern kit", when = 'kit', parts = [60, 60, 60], because = "the kit" }]
savings = [{ with = "out", hours = [0.5, 0.5, 0.5], because = "on the stand" }]
risks = [{ count = "1 of 10", cost = 100, because = "a bolt shears" }]
because = "leaks"
source = "practice"

[[operation]]
id = "reseal"
name = "new seals in the carburettor"
part = "fuel"
phase = "repair"
who = "shop"
hours = [1, 1, 1]
parts = [20, 20, 20]
because = "dried"
source = "practice"

[[operation]]
id = "rebuild"
name = "rebuild the carburettor"
part = "fuel"
phase = "repair"
who = "shop"
hours = [2, 2, 2]
parts = [50, 50, 50]
upgrade_of = "reseal"
because = "corroded"
source = "practice"

[[suspect]]
id = "rotten_carb"
name = "corroded carburettor"
part = "fuel"
cured_by = ["rebuild"]
base = [{ count = "1 of 10" }]
if_left = 100
because = "water in it"
source = "practice"

[[sign]]
id = "rot_seen"
suspect = "rotten_carb"
name = "corroded"
when = 'gummed == "rot"'
with = "99 of 100"
without = "0 of 100"
because = "seen"
source = "practice"

[[suspect]]
id = "leaky_seal"
name = "leaky rear seal"
part = "engine"
cured_by = ["seal"]
base = [{ count = "1 of 10" }]
if_left = 100
because = "old"
source = "practice"
`

func TestRoutesTakeTheCheaperWay(t *testing.T) {
	e := open(t, shapes)
	way := func(body string) string {
		a := e.Advise(read(t, e, body))
		if len(a.Routes) == 0 {
			return ""
		}
		return a.Routes[0].Way
	}
	assert.Equal(t, "below", way("[decisions]\naccepted = [\"seal\"]"), "four hours against nine")
	assert.Equal(t, advisor.Do, call(e.Advise(read(t, e, "[answers]\nlow_car = true\n[decisions]\naccepted = [\"seal\"]")), "out").Call,
		"too low to work under: only the engine way is left")
	a := e.Advise(read(t, e, "[decisions]\naccepted = [\"seal\", \"out\"]"))
	assert.Equal(t, "above", a.Routes[0].Way, "the engine comes out anyway")
	assert.Equal(t, advisor.Leave, call(a, "box_out").Call)
}

func TestAChainContainsItsBase(t *testing.T) {
	e := open(t, shapes)
	a := e.Advise(read(t, e, "[answers]\ngummed = \"rot\""))
	assert.Equal(t, advisor.Do, call(a, "rebuild").Call)
	assert.Equal(t, advisor.Leave, call(a, "reseal").Call)
	assert.Equal(t, "rebuild", call(a, "reseal").ContainedIn)
}

func TestVariantsAndSavings(t *testing.T) {
	e := open(t, shapes)
	seal := func(body string) *advisor.OperationAdvice { return call(e.Advise(read(t, e, body)), "seal") }
	// 1 h at 60, parts 10, and a bolt that shears 1 time in 10 for 100.
	assert.EqualValues(t, 6000+1000+1000, seal("[answers]\nkit = false").Cost)
	assert.EqualValues(t, 6000+6000+1000, seal("[answers]\nkit = true").Cost)
	assert.EqualValues(t, 6000+6000+1000, seal("").Cost, "the dearest still possible")
	assert.Equal(t, "modern kit", seal("").Variant)
	with := seal("[answers]\nlow_car = true\n[decisions]\naccepted = [\"seal\"]")
	assert.EqualValues(t, 3000, with.Saved, "half an hour saved with the engine on the stand")
	assert.Zero(t, seal("[answers]\nlow_car = false\n[decisions]\naccepted = [\"seal\"]").Saved)
}

func TestRiskIsAMaybeLine(t *testing.T) {
	e := open(t, shapes)
	found := false
	for _, l := range e.Advise(read(t, e, "[decisions]\naccepted = [\"seal\"]")).Total.Lines {
		if l.Kind == "risk" && l.Operation == "seal" {
			found = true
			assert.InDelta(t, 0.1, l.Chance, 1e-12)
			assert.EqualValues(t, 10000, l.Mean)
		}
	}
	assert.True(t, found)
}

func TestWhatIsForcedAgainstWhatIsPutOut(t *testing.T) {
	e := open(t, shapes)
	a := e.Advise(read(t, e, "[answers]\nlow_car = true\n[decisions]\naccepted = [\"seal\"]\ndeclined = [\"out\"]"))
	assert.NotEqual(t, "accepted", call(a, "seal").Forced, "neither is forced")
	assert.NotEmpty(t, a.Notes, "and it is said")
}
