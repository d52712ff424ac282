package belief

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"longstand/advisor"
)

// Three causes of which exactly one is there.
func TestExactlyOne(t *testing.T) {
	p, none := ExactlyOne([]float64{0.2, 0.3, 0.5}, []float64{0.9, 0.1, 0.4})
	assert.InDeltaSlice(t, []float64{18.0 / 41, 3.0 / 41, 20.0 / 41}, p, 1e-15)
	assert.InDelta(t, 0, none, 1e-15)

	p, none = ExactlyOne([]float64{0.25, 0.25}, []float64{2, 1})
	assert.InDeltaSlice(t, []float64{0.4, 0.2}, p, 1e-15)
	assert.InDelta(t, 0.4, none, 1e-15)

	p, none = ExactlyOne([]float64{0.8, 0.8}, []float64{1, 1})
	assert.Equal(t, []float64{0.5, 0.5}, p, "bases beyond 1 are shared out")
	assert.Zero(t, none)
}

func TestExactlyOneDecisive(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name     string
		bases, r []float64
		p        []float64
		none     float64
		conflict bool
	}{
		{"sure", []float64{0.2, 0.3}, []float64{inf, 5}, []float64{1, 0}, 0, false},
		{"ruled out", []float64{0.25, 0.25}, []float64{0, 1}, []float64{0, 1.0 / 3}, 2.0 / 3, false},
		{"two sure", []float64{0.25, 0.25}, []float64{inf, inf}, []float64{0.25, 0.25}, 0.5, true},
		{"all ruled out", []float64{0.5, 0.5}, []float64{0, 0}, []float64{0.5, 0.5}, 0, true},
		{"all ruled out, but it may be none", []float64{0.25, 0.25}, []float64{0, 0}, []float64{0, 0}, 1, false},
		{"nobody", nil, nil, []float64{}, 1, false},
	} {
		p := make([]float64, len(c.bases))
		none, conflict := ExactlyOneInto(p, c.bases, c.r)
		assert.InDeltaSlice(t, c.p, p, 1e-15, c.name)
		assert.InDelta(t, c.none, none, 1e-15, c.name)
		assert.Equal(t, c.conflict, conflict, c.name)
	}
}

func TestLevels(t *testing.T) {
	// Of ten cars: dry, damp, wet; smoothed by hand, the sums exceed 1.
	levels := []Level{{1.5 / 11, 7.5 / 11}, {3.5 / 11, 2.5 / 11}, {6.5 / 11, 1.5 / 11}}
	const T, F, U = advisor.True, advisor.False, advisor.Unknown
	for _, c := range []struct {
		name   string
		truths []advisor.Truth
		ratio  float64
		open   int
	}{
		{"nothing known", []advisor.Truth{U, U, U}, 1, 3},
		{"wet", []advisor.Truth{F, F, T}, 6.5 / 1.5, 0},
		{"wet, the rest not said", []advisor.Truth{U, U, T}, 6.5 / 1.5, 0},
		{"not dry", []advisor.Truth{F, U, U}, 10.0 / 4, 2},
		{"only wet is left", []advisor.Truth{F, F, U}, 6.5 / 1.5, 0},
		{"none", []advisor.Truth{F, F, F}, 1, 0},
	} {
		a, b, truth, open := Levels(levels, c.truths, nil)
		assert.InDelta(t, c.ratio, Report(a, b, truth, usual[0]), 1e-14, c.name)
		assert.Len(t, open, c.open, c.name)
	}

	// Levels that leave "none of these".
	levels = []Level{{0.2, 0.1}, {0.4, 0.1}}
	a, b, truth, open := Levels(levels, []advisor.Truth{F, F}, nil)
	assert.InDelta(t, 0.4/0.8, Report(a, b, truth, usual[0]), 1e-14)
	assert.Empty(t, open)
	a, b, truth, open = Levels(levels, []advisor.Truth{F, U}, nil)
	assert.InDelta(t, 0.8/0.9, Report(a, b, truth, usual[0]), 1e-14)
	assert.Len(t, open, 2)
	_, _, truth, open = Levels(levels, []advisor.Truth{U, U}, nil)
	assert.Equal(t, U, truth)
	assert.Len(t, open, 3)
}
