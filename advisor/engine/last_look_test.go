package engine_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
)

// afterWork are the answers that only a trial after the work gives.
const afterWork = `runs_now = "even"
oil_pressure_starter = 3
pedal_steady = { is = true, on = 2025-12-01 }
brakes_tried = { is = "good", on = 2025-12-01 }
track_set = { is = "right", on = 2025-12-01 }
welding_looked_at = { is = "good", on = 2025-12-01 }
`

// waked is a car of the facts that runs, with work done.
func waked(t *testing.T, e *engine.Engine, done []string) *advisor.Case {
	data, err := os.ReadFile(facts + "92_dry_carpets.toml")
	require.NoError(t, err)
	body := strings.Replace(string(data), "[answers]\n", "[answers]\n"+afterWork, 1)
	for _, id := range done {
		body += "\n[[decisions.done]]\noperation = \"" + id + "\"\non = 2025-11-01\n"
	}
	c, l := casefile.Read("waked.toml", []byte(body), e.Book())
	require.False(t, l.HasErrors(), "%v", l)
	return c
}

// TestTheRoadTestIsTheLastLook: it is advised when the engine has run and no hold
// stops driving or the road, and not before; no work is put off for it.
func TestTheRoadTestIsTheLastLook(t *testing.T) {
	e := builtin(t, nil)
	var done []string
	seenBlocked := false
	for range 12 {
		a := e.Advise(waked(t, e, done))
		test := a.Inspection("road_test")
		require.NotNil(t, test, "it runs")
		assert.Contains(t, test.Before, "first_start")
		assert.Empty(t, test.Settles)
		var lift []string
		for _, h := range a.Holds {
			if !slices.Contains(h.Stops, "driven") && !slices.Contains(h.Stops, "road") {
				continue
			}
			assert.Contains(t, test.Blocked, h.ID)
			for _, by := range h.LiftedBy {
				if by.Kind == "operation" && !slices.Contains(lift, by.ID) {
					lift = append(lift, by.ID)
				}
			}
		}
		assert.Equal(t, len(test.Blocked) == 0, test.Advised)
		if len(test.Blocked) == 0 {
			assert.True(t, seenBlocked, "it waited for something before")
			for _, hazard := range []string{"alone", "road_test"} {
				assert.True(t, slices.ContainsFunc(test.Cautions, func(c advisor.CautionAdvice) bool { return c.Hazard == hazard }), hazard)
			}
			return
		}
		seenBlocked = true
		require.NotEmpty(t, lift, "%v cannot be lifted by work", test.Blocked)
		done = append(done, lift...)
	}
	require.Fail(t, "the road test never comes")
}

// TestNoRoadTestBeforeItRuns: a car that was not started has none.
func TestNoRoadTestBeforeItRuns(t *testing.T) {
	e := builtin(t, nil)
	for _, runs := range []string{"", "runs_now = \"no\""} {
		assert.Nil(t, e.Advise(read(t, e, "[answers]\n"+runs)).Inspection("road_test"))
	}
}

// TestTwoPeople: the first start, the hoist and the road test are not done alone.
func TestTwoPeople(t *testing.T) {
	b := builtin(t, nil).Book()
	var alone []string
	for i := range b.Inspections {
		if slices.Contains(b.Inspections[i].Hazards, "alone") {
			alone = append(alone, b.Inspections[i].ID)
		}
	}
	for i := range b.Operations {
		if slices.Contains(b.Operations[i].Hazards, "alone") {
			alone = append(alone, b.Operations[i].ID)
		}
	}
	assert.Subset(t, alone, []string{"first_start", "road_test", "engine_out", "engine_upwards", "engine_downwards", "gearbox_out"})
}
