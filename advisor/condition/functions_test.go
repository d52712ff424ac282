package condition

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
)

// testFunctions are functions of every sort of direction.
var testFunctions = []function{
	{name: "rising", low: 0, high: 10, params: []param{{"a", 0, 5, 1, nil}, {"b", 0, 5, 1, nil}},
		call: func(a []float64) (float64, error) { return a[0] + a[1], nil }},
	{name: "falling", low: -5, high: 5, params: []param{{"a", 0, 5, 1, nil}, {"b", 0, 5, -1, nil}},
		call: func(a []float64) (float64, error) { return a[0] - a[1], nil }},
	{name: "jagged", low: 0, high: 3, params: []param{{"a", 0, 5, 1, []float64{2, 4}}},
		call: func(a []float64) (float64, error) { return math.Mod(a[0], 2), nil }},
	{name: "either", low: 0, high: 7, params: []param{{"a", 0, 5, 0, nil}},
		call: func(a []float64) (float64, error) { return math.Abs(a[0] - 2.5), nil }},
	{name: "refusing", low: 0, high: 5, params: []param{{"a", 0, 5, 1, nil}},
		call: func(a []float64) (float64, error) {
			if a[0] > 4 {
				return 0, errors.New("too much")
			}
			return a[0], nil
		}},
	{name: "narrow", low: 0, high: 5, params: []param{{"a", 1, 4, 1, nil}},
		call: func(a []float64) (float64, error) { return a[0], nil }},
}

func TestCallBounds(t *testing.T) {
	for _, row := range []struct {
		source string
		x      advisor.Value
		lo, hi float64
	}{
		{"rising(x, 1)", advisor.NumberRange(1, 3), 2, 4},
		{"rising(x, y)", advisor.Number(1), 1, 6},
		{"falling(1, x)", advisor.NumberRange(1, 3), -2, 0},
		{"jagged(x)", advisor.NumberRange(1, 1.5), 1, 1.5},
		{"jagged(x)", advisor.NumberRange(1.5, 2.5), 0, math.Nextafter(2, 0)},
		{"jagged(x)", advisor.Number(2.5), 0.5, 0.5},
		{"either(x)", advisor.NumberRange(1, 2), 0, 7},
		{"either(x)", advisor.Number(1), 1.5, 1.5},
		{"refusing(x)", advisor.NumberRange(3, 5), 0, 5},
		{"refusing(x)", advisor.Number(5), 0, 5},
		{"refusing(x)", advisor.NumberRange(3, 4), 3, 4},
		{"narrow(x)", advisor.NumberRange(0, 2), 0, 5},
		{"narrow(x)", advisor.NumberRange(2, 3), 2, 3},
	} {
		c := newCompiler(formulaQuestions(), nil, testFunctions)
		require.Empty(t, c.Derive("out", placed(row.source)), row.source)
		v := c.Program().NewView()
		v.Set(5, row.x)
		lo, hi := v.Number(0)
		assert.Equal(t, [2]float64{row.lo, row.hi}, [2]float64{lo, hi}, "%s of %v to %v", row.source, row.x.Low, row.x.High)
	}
}

// Every value within the arguments' ranges gives a result within the bounds.
func TestCallHoldsEveryValue(t *testing.T) {
	for _, source := range []string{"rising(x, y)", "falling(x, y)", "jagged(x)", "either(x)", "falling(rising(x, 0), jagged(y))"} {
		c := newCompiler(formulaQuestions(), nil, testFunctions)
		require.Empty(t, c.Derive("out", placed(source)))
		p := c.Program()
		rapid.Check(t, func(rt *rapid.T) {
			v := p.NewView()
			var at [2]float64
			for i := range at {
				lo := rapid.Float64Range(0, 5).Draw(rt, "lo")
				hi := rapid.Float64Range(lo, 5).Draw(rt, "hi")
				at[i] = rapid.Float64Range(lo, hi).Draw(rt, "at")
				v.Set(5+i, advisor.NumberRange(lo, hi))
			}
			lo, hi := v.Number(0)
			for i := range at {
				v.Set(5+i, advisor.Number(at[i]))
			}
			x, same := v.Number(0)
			require.Equal(rt, x, same)
			require.True(rt, lo <= x && x <= hi, "%v not in %v to %v", x, lo, hi)
		})
	}
}

// Every function of the trade can be called from conditions, and none takes
// more arguments than a view has room for.
func TestTradeFunctionsFit(t *testing.T) {
	require.NotEmpty(t, trade)
	for _, f := range trade {
		assert.LessOrEqual(t, len(f.params), maxParams, f.name)
		assert.LessOrEqual(t, f.low, f.high, f.name)
		assert.False(t, reserved[f.name], f.name)
		args := ""
		for i := range f.params {
			args += []string{"", ", "}[min(i, 1)] + "x"
		}
		c := NewCompiler(formulaQuestions(), nil)
		assert.Empty(t, c.Derive("d", placed(f.name+"("+args+")")), f.name)
	}
}

// TestTradeFunctionsHoldEveryValue: whatever an argument turns out to be within
// its range, the trade's functions give what was said to be possible.
func TestTradeFunctionsHoldEveryValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := &trade[rapid.IntRange(0, len(trade)-1).Draw(t, "function")]
		v := &View{args: make([]float64, len(f.params))}
		inside, places := make([]float64, len(f.params)), make([]int32, len(f.params))
		for i, p := range f.params {
			ends := rapid.Float64Range(p.low, p.high)
			a, b := ends.Draw(t, "end"), ends.Draw(t, "end")
			if rapid.Bool().Draw(t, "known") {
				b = a
			}
			v.figures = append(v.figures, interval{min(a, b), max(a, b)})
			inside[i] = rapid.Float64Range(min(a, b), max(a, b)).Draw(t, "inside")
			places[i] = int32(i)
		}
		got := v.call(f, places)
		require.True(t, f.low <= got.lo && got.lo <= got.hi && got.hi <= f.high, f.name)
		if y, err := f.call(inside); err == nil {
			require.True(t, got.lo-1e-9 <= y && y <= got.hi+1e-9, "%s%v", f.name, inside)
		}
	})
}

// TestCodesAreAllOrNothing: an argument that stands for one of a list is known
// where its range begins and ends with one of them, else nothing is.
func TestCodesAreAllOrNothing(t *testing.T) {
	for _, row := range []struct{ lo, hi, from, to float64 }{
		{3, 3, 140, 140}, {3, 5, 140, 180}, {4, 5.1, 155, 180}, {3.5, 5, 140, 180}, {3.5, 3.5, 140, 180},
	} {
		for i := range trade {
			if f := &trade[i]; f.name == "brake_fluid_wet_boils" {
				v := &View{args: make([]float64, 1), figures: []interval{{row.lo, row.hi}}}
				assert.Equal(t, interval{row.from, row.to}, v.call(f, []int32{0}))
			}
		}
	}
}
