package scope

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEightOperationsLadder(t *testing.T) {
	p := problemOf(t, eight)
	s := NewSolver(len(eight), len(p.Arcs))
	steps, err := Ladder(s, p, Price{Num: 0, Den: 1}, Price{Num: 10, Den: 1})
	require.NoError(t, err)
	want := []Step{
		{Price: Price{Num: 0, Den: 1}, Enters: []int32{}},
		{Price: Price{Num: 3, Den: 5}, Enters: []int32{7}, Cost: 300, Benefit: 500},
		{Price: Price{Num: 181, Den: 156}, Enters: []int32{0, 1, 2, 3, 5}, Cost: 2110, Benefit: 2060},
		{Price: Price{Num: 2, Den: 1}, Enters: []int32{6}, Cost: 2290, Benefit: 2150},
		{Price: Price{Num: 3, Den: 1}, Enters: []int32{4}, Cost: 2410, Benefit: 2190},
	}
	assert.Equal(t, want, steps)

	// The values at the breakpoints, times the denominator.
	for i, v := range []int64{0, 0, 10925 * 4, 2010, 4160} {
		assert.Equal(t, v, s.Best(p, steps[i].Price).Value, "V at step %d", i)
	}
}

func TestLadderWithinTwoPrices(t *testing.T) {
	p := problemOf(t, eight)
	s := NewSolver(len(eight), len(p.Arcs))
	steps, err := Ladder(s, p, one, Price{Num: 2, Den: 1})
	require.NoError(t, err)
	require.Len(t, steps, 2, "the step at 2 is above the highest price")
	assert.Equal(t, one, steps[0].Price)
	assert.Equal(t, []int32{7}, steps[0].Enters)
	assert.Equal(t, Price{Num: 181, Den: 156}, steps[1].Price)
}

func TestLadderStepZeroIsWhatIsForcedIn(t *testing.T) {
	p := problemOf(t, eight)
	p.In = make([]bool, len(eight))
	p.In[eight.Find("mounts")] = true
	s := NewSolver(len(eight), len(p.Arcs))
	steps, err := Ladder(s, p, Price{Num: 0, Den: 1}, Price{Num: 10, Den: 1})
	require.NoError(t, err)
	assert.Equal(t, []int32{0, 6}, steps[0].Enters, "mounts and the engine out, whatever the price")
	assert.Equal(t, int64(1080), steps[0].Cost)
}

func TestAloneWithItsAccess(t *testing.T) {
	for name, want := range map[string]Price{
		"clutch": {Num: 31, Den: 18}, "rear_seal": {Num: 121, Den: 42}, "sump_clean": {Num: 35, Den: 8},
	} {
		p := problemOf(t, eight)
		for i := range eight {
			if eight[i].Name != name {
				p.Benefit[i] = 0
			}
		}
		steps, err := Ladder(NewSolver(8, 6), p, Price{Num: 0, Den: 1}, Price{Num: 10, Den: 1})
		require.NoError(t, err)
		assert.Equal(t, want, steps[1].Price, name)
	}
}

// Repair or replace as a chain, at the same breakpoints as the alternatives.
func TestChain(t *testing.T) {
	n := Network{{Name: "base", Cost: 3, Benefit: 6}, {Name: "upgrade", Cost: 4, Benefit: 4, Needs: []string{"base"}}}
	steps, err := Ladder(NewSolver(2, 1), problemOf(t, n), Price{Num: 0, Den: 1}, Price{Num: 5, Den: 1})
	require.NoError(t, err)
	require.Len(t, steps, 3)
	assert.Equal(t, Price{Num: 1, Den: 2}, steps[1].Price)
	assert.Equal(t, one, steps[2].Price)
}

// x: 3 - 5 price, y: 2 price - 1: {x}, {x, y}, {y}: not nested.
func TestNotNested(t *testing.T) {
	n := Network{{Name: "x", Cost: -3, Benefit: -5}, {Name: "y", Cost: 1, Benefit: 2}}
	steps, err := Ladder(NewSolver(2, 0), problemOf(t, n), Price{Num: 0, Den: 1}, Price{Num: 5, Den: 1})
	require.NoError(t, err)
	assert.Equal(t, []Step{
		{Price: Price{Num: 0, Den: 1}, Enters: []int32{0}, Cost: -3, Benefit: -5},
		{Price: Price{Num: 1, Den: 2}, Enters: []int32{1}, Cost: -2, Benefit: -3},
		{Price: Price{Num: 3, Den: 5}, Leaves: []int32{0}, Cost: 1, Benefit: 2},
	}, steps)
}

func TestFaults(t *testing.T) {
	for name, p := range map[string]*Problem{
		"differ in number":                    {Benefit: []int64{1}, Cost: []int64{1, 2}},
		"requires node 7":                     {Benefit: []int64{1}, Cost: []int64{1}, Arcs: [][2]int32{{0, 7}}},
		"benefits together exceed 1073741824": {Benefit: []int64{1 << 29, -1 << 29}, Cost: []int64{0, 0}},
		"costs together exceed 1073741824":    {Benefit: []int64{1}, Cost: []int64{-1 << 63}},
	} {
		assert.ErrorContains(t, p.Check(), name)
		_, err := Ladder(NewSolver(1, 1), p, one, one)
		assert.ErrorContains(t, err, name)
	}
	_, err := Ladder(NewSolver(8, 6), problemOf(t, eight), one, Price{Num: 1})
	assert.ErrorContains(t, err, "1/0 is not a price")
	_, err = Network{{Name: "a", Needs: []string{"b"}}}.Problem()
	assert.ErrorContains(t, err, "a needs b")
}

// Where one leaves and another enters at the same price, the scope that is best
// at that price alone is no step.
func TestNoStepForASinglePrice(t *testing.T) {
	n := Network{{Name: "x", Cost: -3, Benefit: -5}, {Name: "y", Cost: 3, Benefit: 5}}
	steps, err := Ladder(NewSolver(2, 0), problemOf(t, n), Price{Num: 0, Den: 1}, Price{Num: 5, Den: 1})
	require.NoError(t, err)
	assert.Equal(t, []Step{
		{Price: Price{Num: 0, Den: 1}, Enters: []int32{0}, Cost: -3, Benefit: -5},
		{Price: Price{Num: 3, Den: 5}, Enters: []int32{1}, Leaves: []int32{0}, Cost: 3, Benefit: 5},
	}, steps)
}

// A saving that rests on another saving is not taken for borne.
func TestSavingOnASaving(t *testing.T) {
	n := Network{{Name: "work", Cost: 5, Benefit: -1}, {Name: "saving", Cost: -4, Needs: []string{"work"}}, {Name: "more", Cost: -4, Needs: []string{"saving"}}}
	p := problemOf(t, n)
	s := NewSolver(3, 2)
	assert.False(t, s.nested(p))
	steps, err := Ladder(s, p, Price{Num: 0, Den: 1}, Price{Num: 5, Den: 1})
	require.NoError(t, err)
	require.Len(t, steps, 2)
	assert.Equal(t, []int32{0, 1, 2}, steps[1].Leaves)
	assert.Equal(t, Price{Num: 3, Den: 1}, steps[1].Price)
	p.Cost[2] = 0
	assert.True(t, s.nested(p))
}

// Sums just below the limit stay exact.
func TestLargestSums(t *testing.T) {
	n := Network{{Name: "dear", Cost: Limit - 3, Benefit: 1}, {Name: "cheap", Cost: 1, Benefit: Limit - 3, Needs: []string{"dear"}}, {Name: "free", Cost: 1, Benefit: 1}}
	p := problemOf(t, n)
	steps, err := Ladder(NewSolver(3, 1), p, Price{Num: 0, Den: 1}, Price{Num: 2*Limit - 1, Den: 1})
	require.NoError(t, err)
	require.Len(t, steps, 2, "a tie: all three enter at once")
	assert.Equal(t, one, steps[1].Price)
	assert.Equal(t, []int32{0, 1, 2}, steps[1].Enters)

	p.Benefit[1]--
	steps, err = Ladder(NewSolver(3, 1), p, Price{Num: 0, Den: 1}, Price{Num: 2*Limit - 1, Den: 1})
	require.NoError(t, err)
	require.Len(t, steps, 3)
	assert.Equal(t, Price{Num: Limit - 2, Den: Limit - 3}, steps[2].Price)

	p.Cost[2]++
	p.Benefit[1] += 2
	_, err = Ladder(NewSolver(3, 1), p, one, one)
	assert.ErrorContains(t, err, "benefits together exceed")
	p.Benefit[1] -= 2
	p.Cost[2]++
	_, err = Ladder(NewSolver(3, 1), p, one, one)
	assert.ErrorContains(t, err, "costs together exceed")
}
