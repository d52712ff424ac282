package engine_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// TestNothingIsDoneBehindAnUndecidedDoor holds for every stored car: what needs
// work that waits for a look waits with it, unless something forces it.
func TestNothingIsDoneBehindAnUndecidedDoor(t *testing.T) {
	e := builtin(t, nil)
	files, err := filepath.Glob("../../testdata/cases/*/*.toml")
	require.NoError(t, err)
	undecided := 0
	for _, file := range files {
		a := advise(t, e, "../"+strings.TrimSuffix(strings.TrimPrefix(file, "../../testdata/cases/"), ".toml"))
		for i := range a.Operations {
			o := &a.Operations[i]
			if o.Forced != "" || o.Call != advisor.Do && o.Call != advisor.DoOpen {
				continue
			}
			for _, id := range o.Needs {
				assert.NotEqual(t, advisor.LookFirst, a.Operation(id).Call, "%s: %s is %s, and needs %s", file, o.ID, o.Call, id)
			}
		}
		for i := range a.Operations {
			if a.Operations[i].Call == advisor.LookFirst && a.Operations[i].Access {
				undecided++
			}
		}
	}
	assert.Positive(t, undecided, "some door waits for a look")
}

// TestClashingAnswersInAnyOrder: once two answers disagree all stay possible,
// however often one of them is said again.
func TestClashingAnswersInAnyOrder(t *testing.T) {
	e := open(t, small)
	for _, said := range []string{"sound cracked sound", "sound sound cracked", "cracked sound sound", "sound cracked", "cracked cracked sound"} {
		var body strings.Builder
		for _, is := range strings.Fields(said) {
			body.WriteString("[[answers.hose]]\nis = \"" + is + "\"\nhow = \"seen\"\n")
		}
		a := e.Advise(read(t, e, body.String()))
		assert.Len(t, a.Conflicts, 1, said)
		danger := slices.IndexFunc(a.Suspects, func(k advisor.SuspectAdvice) bool { return k.Danger != "" })
		require.GreaterOrEqual(t, danger, 0)
		assert.Equal(t, advisor.Unknown, a.Suspects[danger].Looked, "%s: neither sound nor bad is known", said)
	}
}

// TestALookOpensAPlaceByTheWayTaken: a look at what lies behind a route costs
// what its way costs.
func TestALookOpensAPlaceByTheWayTaken(t *testing.T) {
	e := open(t, shapes+`
[[question]]
id = "track"
kind = "yesno"
ask = "Is the track grooved?"
name = "track"
station = "inspection"

[[inspection]]
id = "track_look"
name = "look at the seal's track"
where = "bench"
minutes = 5
access = ["behind"]
answers = ["track"]
because = "a new lip on a groove leaks"
source = "practice"

[[sign]]
id = "grooved"
suspect = "leaky_seal"
name = "the track is grooved"
when = 'track'
with = "9 of 10"
without = "1 of 10"
because = "felt"
source = "practice"
`)
	ways := func(body string) []string {
		a := e.Advise(read(t, e, body))
		return a.Inspection("track_look").Access
	}
	assert.Equal(t, []string{"box_out"}, ways(""))
	assert.Equal(t, []string{"out"}, ways("[answers]\nlow_car = true"))
}

// TestWhatALookOpensIsOpenForAll: once a look has the engine out, the rear seal
// is reached that way, and no longer pays for it.
func TestWhatALookOpensIsOpenForAll(t *testing.T) {
	const track = `
[[question]]
id = "crack"
kind = "yesno"
ask = "Is the block cracked behind the flywheel?"
name = "crack"
station = "inspection"

[[operation]]
id = "block"
name = "mend the block"
part = "engine"
phase = "repair"
who = "shop"
hours = [10, 10, 10]
parts = [0, 0, 0]
needs = ["out"]
because = "cracked"
source = "practice"

[[suspect]]
id = "cracked_block"
name = "cracked block"
part = "engine"
cured_by = ["block"]
base = [{ count = "2 of 10" }]
if_left = 2000
because = "froze"
source = "practice"

[[sign]]
id = "crack_seen"
suspect = "cracked_block"
name = "a crack is seen"
when = 'crack'
with = "99 of 100"
without = "1 of 100"
because = "seen"
source = "practice"

[[question]]
id = "weeps"
kind = "yesno"
ask = "Is the block damp below the flywheel?"
name = "damp block"
station = "underneath"

[[sign]]
id = "damp_block"
suspect = "cracked_block"
name = "the block is damp"
when = 'weeps'
with = "5 of 10"
without = "4 of 10"
because = "it may come from anywhere"
source = "practice"

[[inspection]]
id = "crack_look"
name = "look at the block from behind"
where = "bench"
minutes = 5
access = ["out"]
answers = ["crack"]
because = "only the stand shows it"
source = "practice"
`
	dear := strings.Replace(shapes, `if_left = 100
because = "old"`, `if_left = 1500
because = "old"`, 1)
	shut := open(t, dear).Advise(read(t, open(t, dear), ""))
	require.Equal(t, advisor.Leave, call(shut, "seal").Call, "1 of 10 does not pay for the gearbox")
	e := open(t, dear+track)
	c := read(t, e, "[answers]\nlow_car = false\nweeps = true")
	a := e.Advise(c)
	require.Equal(t, "to look", call(a, "out").Forced)
	assert.Equal(t, advisor.DoOpen, call(a, "seal").Call)
	assert.Equal(t, advisor.Leave, call(a, "box_out").Call, "nobody takes the gearbox out beside an engine on the stand")
	assert.Equal(t, "above", a.Routes[0].Way)
	for _, op := range []string{"seal", "out", "box_out", "block"} {
		checkTurns(t, e, c, op)
	}
	quiet := e.Advise(read(t, e, "[answers]\nlow_car = false\nweeps = false"))
	assert.False(t, quiet.Inspection("crack_look").Advised, "nothing speaks for a crack: no engine is lifted to look for one")
	assert.Equal(t, advisor.Leave, call(quiet, "out").Call)
}
