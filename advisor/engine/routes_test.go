package engine_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
	"longstand/advisor/engine"
)

// nested adds to the shapes a route that an operation needs which is itself what
// a way of another route goes through.
const nested = shapes + `
[[question]]
id = "behind_axle"
kind = "yesno"
ask = "Is the engine behind?"
name = "engine behind"
station = "papers"

[[operation]]
id = "up"
name = "on a crane"
part = "access"
phase = "strip"
who = "shop"
hours = [1, 1, 1]
parts = [0, 0, 0]
fitted = 'not behind_axle'
access = true
because = "up"
source = "practice"

[[operation]]
id = "down"
name = "on a trolley"
part = "access"
phase = "strip"
who = "shop"
hours = [2, 2, 2]
parts = [0, 0, 0]
access = true
because = "down"
source = "practice"

[[route]]
id = "which_way"
name = "up or down"
because = "two ways"
source = "practice"
ways = [
  { id = "upwards", name = "upwards", through = ["up"], tools = ["crane"] },
  { id = "downwards", name = "downwards", through = ["down"], tools = ["lift"] },
]
`

// behindRoutes is the small book with the nested route, in a shop with these tools.
func behindRoutes(t *testing.T, tools string) *engine.Engine {
	text := strings.Replace(nested, "id = \"out\"\n", "id = \"out\"\nneeds = [\"which_way\"]\n", 1)
	return open(t, strings.Replace(text, "[settings]\n", "[settings]\ntools = ["+tools+"]\n", 1))
}

// ways are the ways picked, by route.
func ways(a *advisor.Advice) map[string]string {
	out := map[string]string{}
	for _, r := range a.Routes {
		out[r.Route] = r.Way
	}
	return out
}

// TestARouteBehindARoute: the way to the seal goes through "out", and "out" goes
// one of two ways itself. All combinations are tried, and the best is said.
func TestARouteBehindARoute(t *testing.T) {
	const both = `"crane", "lift"`
	for _, c := range []struct {
		name, tools, answers string
		want                 map[string]string
		in                   []string
		why                  string // of the last route
	}{
		{"five hours below against eleven above", both, "low_car = false", map[string]string{"behind": "below"}, []string{"box_out"}, "cheapest for all that is wanted there, now and later"},
		{"too low: above, and upwards is cheaper", both, "low_car = true", map[string]string{"behind": "above", "which_way": "upwards"}, []string{"out", "up"}, "cheapest for all that is wanted there, now and later"},
		{"too low, no crane: above, downwards", `"lift"`, "low_car = true", map[string]string{"behind": "above", "which_way": "downwards"}, []string{"out", "down"}, "the shop lacks the tools for any other way"},
		{"neither tool: the cheaper way, and what is lacking", `"awl"`, "low_car = true", map[string]string{"behind": "above", "which_way": "upwards"}, []string{"out", "up"}, "cheapest for all that is wanted there, now and later"},
		{"engine behind: only downwards", both, "low_car = true\nbehind_axle = true", map[string]string{"behind": "above", "which_way": "downwards"}, []string{"out", "down"}, "the only way on this car"},
		{"engine behind and no lift: the car has no other way", `"crane"`, "low_car = true\nbehind_axle = true", map[string]string{"behind": "above", "which_way": "downwards"}, []string{"out", "down"}, "the only way on this car"},
	} {
		t.Run(c.name, func(t *testing.T) {
			e := behindRoutes(t, c.tools)
			a := e.Advise(read(t, e, "[answers]\n"+c.answers+"\n[decisions]\naccepted = [\"seal\"]"))
			assert.Equal(t, c.want, ways(a))
			last := a.Routes[len(a.Routes)-1]
			assert.Equal(t, c.why, last.Why)
			assert.Equal(t, c.tools == `"awl"` || c.tools == `"crane"` && last.Way == "downwards", len(last.Lacks) > 0, "%v", last.Lacks)
			for _, id := range []string{"box_out", "out", "up", "down"} {
				assert.Equal(t, slices.Contains(c.in, id), call(a, id).Call == advisor.Do, id)
			}
		})
	}
}

// TestAWayAroundWhatIsPutOut: the cheaper way goes through what the owner
// declined, the other does not; the other is gone and nothing clashes.
func TestAWayAroundWhatIsPutOut(t *testing.T) {
	e := behindRoutes(t, `"crane", "lift"`)
	a := e.Advise(read(t, e, "[decisions]\naccepted = [\"seal\"]\ndeclined = [\"box_out\"]"))
	assert.Equal(t, "above", ways(a)["behind"])
	assert.Equal(t, "accepted", call(a, "seal").Forced)
	assert.Empty(t, a.Notes)
}

// TestWhatIsDoneNeedsNothing: with the engine out already, nothing is hoisted for
// a look at what lies behind it, and no way is said.
func TestWhatIsDoneNeedsNothing(t *testing.T) {
	e := behindRoutes(t, `"crane", "lift"`)
	a := e.Advise(read(t, e, "[answers]\nlow_car = true\n[decisions]\naccepted = [\"seal\"]\ndone = [\"out\"]"))
	assert.Equal(t, map[string]string{"behind": "above"}, ways(a))
	assert.Equal(t, advisor.Leave, call(a, "up").Call)
	assert.Equal(t, advisor.Leave, call(a, "down").Call)
}

// TestAWayIsSaidOnlyWhereItIsGone: an operation that a way goes through may be
// wanted for another reason.
func TestAWayIsSaidOnlyWhereItIsGone(t *testing.T) {
	e := behindRoutes(t, `"crane", "lift"`)
	assert.Empty(t, ways(e.Advise(read(t, e, "[decisions]\naccepted = [\"box_out\"]"))))
}

// TestTheEngineGoesTheWayOfItsLayout reads the built-in book: where the engine
// comes out, which way, and with or without its gearbox.
func TestTheEngineGoesTheWayOfItsLayout(t *testing.T) {
	e := builtin(t, nil)
	for _, c := range []struct{ name, layout, more, decisions, way, company string }{
		{"in front, lengthwise: up", "front_rear", "", "accepted = [\"engine_out\"]\ndeclined = [\"gearbox_out\"]", "upwards", "alone"},
		{"behind the axle: down", "rear_rear", "", "accepted = [\"engine_out\"]\ndeclined = [\"gearbox_out\"]", "downwards", "alone"},
		{"amidships: whichever is less work", "mid_rear", "", "accepted = [\"engine_out\"]\ndeclined = [\"gearbox_out\"]", "downwards", "alone"},
		{"front drive: whichever is less work", "front_front", "", "accepted = [\"engine_out\"]\ndeclined = [\"gearbox_out\"]", "upwards", "alone"},
		{"front drive whose manual says down", "front_front", "engine_way_out = \"down\"", "accepted = [\"engine_out\"]\ndeclined = [\"gearbox_out\"]", "downwards", "alone"},
		{"lengthwise and yet let down", "front_rear", "engine_way_out = \"down\"", "accepted = [\"engine_out\"]\ndeclined = [\"gearbox_out\"]", "downwards", "alone"},
		{"behind the axle, nothing else known: the gearbox comes too", "rear_rear", "", "accepted = [\"engine_out\"]", "downwards", "with_gearbox"},
		{"the gearbox is wanted too: as one", "front_rear", "", "accepted = [\"engine_out\", \"gearbox_out\"]", "upwards", "with_gearbox"},
		{"the gearbox is out already: no joint to part", "front_rear", "", "accepted = [\"engine_out\"]\ndone = [\"gearbox_out\"]", "upwards", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := e.Advise(read(t, e, "[answers]\nlayout = \""+c.layout+"\"\n"+c.more+"\n[decisions]\n"+c.decisions))
			got := ways(a)
			assert.Equal(t, c.way, got["engine_way"])
			assert.Equal(t, c.company, got["engine_company"])
			assert.Equal(t, c.way == "upwards", call(a, "engine_upwards").Call == advisor.Do)
			assert.Equal(t, c.way == "downwards", call(a, "engine_downwards").Call == advisor.Do)
			assert.Equal(t, c.company == "alone", call(a, "engine_parted").Call == advisor.Do)
			hazard := map[string]string{"upwards": "hoist", "downwards": "let_down"}[c.way]
			assert.True(t, slices.ContainsFunc(call(a, "engine_"+c.way).Cautions, func(k advisor.CautionAdvice) bool { return k.Hazard == hazard }))
		})
	}
}
