package engine_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/engine"
)

// TestALaterStepPaysTheEngineLiftAgain has the engine out for a seal that the
// owner wants; the clutch behind it is a step of its own, and done on another
// visit it costs the lift once more.
func TestALaterStepPaysTheEngineLiftAgain(t *testing.T) {
	e := open(t, shapes)
	a := e.Advise(read(t, e, "[answers]\nlow_car = true\n[decisions]\naccepted = [\"seal\"]"))
	i := slices.IndexFunc(a.Ladder.Steps, func(s advisor.Step) bool { return slices.Contains(s.Enters, "clutch") })
	require.Positive(t, i, "the clutch is worth a step, but not whatever the price")
	step := a.Ladder.Steps[i]
	assert.Equal(t, []string{"out"}, step.Again)
	assert.Equal(t, call(a, "out").Cost, step.AgainCost)
	assert.Zero(t, step.After, "what it needs is in from step 0 on")
	assert.Empty(t, a.Ladder.Steps[0].Again, "nothing was open before")
}

// TestWhatIsPaidAgainWasOpenBefore holds on every practice car: what a step
// pays again entered earlier, is access or brought by something opened, and adds
// up; and what its work needs is in by the step it names.
func TestWhatIsPaidAgainWasOpenBefore(t *testing.T) {
	e := builtin(t, nil)
	some := 0
	for _, path := range []string{"demo.toml", "practice/P01.toml", "practice/P05.toml", "practice/P08.toml", "practice/P12.toml"} {
		a := e.Advise(onDisk(t, e, path))
		entered := map[string]int{}
		for i, step := range a.Ladder.Steps {
			var cost, alone int64
			for _, id := range step.Again {
				at, ok := entered[id]
				assert.True(t, ok && at < i, "%s step %d: %s was not open before", path, i, id)
				cost += call(a, id).Cost
			}
			for _, id := range step.Enters {
				entered[id] = i
				alone += call(a, id).Cost
			}
			after := 0
			for _, id := range step.Enters {
				for _, need := range call(a, id).Needs {
					if at := entered[need]; at != i {
						after = max(after, at)
					}
				}
			}
			assert.Equal(t, cost, step.AgainCost, "%s step %d", path, i)
			assert.Equal(t, alone, step.Alone, "%s step %d", path, i)
			assert.Equal(t, after, step.After, "%s step %d", path, i)
			some += len(step.Again)
		}
	}
	assert.Greater(t, some, 20)
}

func TestABudgetHasItsPlaceOnTheLadder(t *testing.T) {
	l := &advisor.Ladder{Steps: []advisor.Step{
		{Cost: 1000, Alone: 1000}, {Cost: 1500, Alone: 500}, {Cost: 1600, Alone: 120, After: 1}, {Cost: 1900, Alone: 300}}}
	for _, c := range []struct {
		sum  int64
		want advisor.Budget
	}{
		{999, advisor.Budget{Sum: 999, Within: -1, Short: 1}},
		{1000, advisor.Budget{Sum: 1000, Short: 500}},
		{1300, advisor.Budget{Sum: 1300, Left: 300, Short: 200, Fits: []int{3}}},
		{1599, advisor.Budget{Sum: 1599, Within: 1, Left: 99, Short: 1}},
		{1700, advisor.Budget{Sum: 1700, Within: 2, Left: 100, Short: 200}},
		{2000, advisor.Budget{Sum: 2000, Within: 3, Left: 100}},
	} {
		assert.Equal(t, c.want, engine.Place(l, c.sum), "%d", c.sum)
	}
}
