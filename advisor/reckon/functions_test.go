package reckon

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// gridOf gives points over a range, ends included.
func gridOf(p Param, steps int) []float64 {
	points := make([]float64, steps+1)
	for i := range points {
		points[i] = p.Low + (p.High-p.Low)*float64(i)/float64(steps)
	}
	points[steps] = p.High
	return points
}

// onGrid visits every combination of grid points.
func onGrid(f Function, steps int, visit func(args []float64)) {
	args := make([]float64, len(f.Params))
	var fill func(i int)
	fill = func(i int) {
		if i == len(args) {
			visit(args)
			return
		}
		for _, x := range gridOf(f.Params[i], steps) {
			args[i] = x
			fill(i + 1)
		}
	}
	fill(0)
}

func TestFunctionsAreDescribed(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range Functions {
		assert.Regexp(t, `^[a-z][a-z_]*[a-z]$`, f.Name)
		assert.False(t, seen[f.Name], f.Name)
		seen[f.Name] = true
		assert.NotEmpty(t, f.Doc, f.Name)
		assert.NotEmpty(t, f.Source, f.Name)
		assert.NotEmpty(t, f.Params, f.Name)
		assert.Less(t, f.Low, f.High, f.Name)
		for _, p := range f.Params {
			assert.Less(t, p.Low, p.High, f.Name)
			for _, b := range p.Breaks {
				assert.True(t, p.Low < b && b < p.High, f.Name)
			}
		}
		found, ok := Find(f.Name)
		assert.True(t, ok)
		assert.Equal(t, f.Name, found.Name)
	}
	_, ok := Find("nothing")
	assert.False(t, ok)
}

func TestFunctionsKeepTheirOutputRange(t *testing.T) {
	for _, f := range Functions {
		answers := 0
		least, greatest := math.Inf(1), math.Inf(-1)
		onGrid(f, 40/len(f.Params), func(args []float64) {
			value, err := f.Call(args)
			if err != nil { // arguments that contradict one another, never a range narrower than stated
				var outside *RangeError
				require.NotErrorAs(t, err, &outside, f.Name)
				return
			}
			answers++
			require.False(t, math.IsNaN(value), f.Name)
			least, greatest = min(least, value), max(greatest, value)
			require.True(t, f.Low <= value && value <= f.High, "%s%v = %v", f.Name, args, value)
		})
		assert.Positive(t, answers, f.Name)
		span := f.High - f.Low
		assert.Less(t, least-f.Low, 0.2*span, "%s: lower bound is idle", f.Name)
		assert.Less(t, f.High-greatest, 0.2*span, "%s: upper bound is idle", f.Name)
	}
}

func TestFunctionsMoveAsStated(t *testing.T) {
	for _, f := range Functions {
		for i, p := range f.Params {
			moved := false
			onGrid(f, 12, func(args []float64) {
				before, err := f.Call(args)
				if err != nil {
					return
				}
				here := args[i]
				defer func() { args[i] = here }()
				args[i] = min(p.High, here+(p.High-p.Low)/97)
				after, err := f.Call(args)
				if err != nil {
					return
				}
				moved = moved || after != before
				switch p.Direction {
				case Rising:
					require.GreaterOrEqual(t, after, before-1e-12, "%s%v by %s", f.Name, args, p.Name)
				case Falling:
					require.LessOrEqual(t, after, before+1e-12, "%s%v by %s", f.Name, args, p.Name)
				}
			})
			assert.True(t, moved, "%s does not read %s", f.Name, p.Name)
		}
	}
}

func TestFunctionsRefuseOutsideTheirRange(t *testing.T) {
	for _, f := range Functions {
		args := make([]float64, len(f.Params))
		for i, p := range f.Params {
			args[i] = (p.Low + p.High) / 2
		}
		for i, p := range f.Params {
			here := args[i]
			for _, bad := range []float64{p.Low - 1, p.High + 1, math.NaN(), math.Inf(1), math.Inf(-1)} {
				args[i] = bad
				_, err := f.Call(args)
				refuses(t, err, p.Name)
			}
			args[i] = here
		}
		_, err := f.Call(append(args, 1))
		assert.ErrorContains(t, err, "takes")
		_, err = f.Call(nil)
		assert.ErrorContains(t, err, "takes")
	}
}

func TestOverHoldsEveryValueInside(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, f := range Functions {
		for range 200 {
			low, high, args := make([]float64, len(f.Params)), make([]float64, len(f.Params)), make([]float64, len(f.Params))
			for i, p := range f.Params {
				a, b := p.Low+random.Float64()*(p.High-p.Low), p.Low+random.Float64()*(p.High-p.Low)
				low[i], high[i] = min(a, b), max(a, b)
				args[i] = low[i] + random.Float64()*(high[i]-low[i])
			}
			least, greatest, err := f.Over(low, high)
			require.NoError(t, err)
			require.True(t, f.Low <= least && least <= greatest && greatest <= f.High, f.Name)
			if value, err := f.Call(args); err == nil {
				require.True(t, least-1e-9 <= value && value <= greatest+1e-9, "%s%v", f.Name, args)
			}
		}
	}
}

func TestOver(t *testing.T) {
	pedal, _ := Find("pedal_reserve")
	least, greatest, err := pedal.Over([]float64{100, 20}, []float64{120, 30})
	require.NoError(t, err)
	assert.InDelta(t, 100*20.0/120, least, 1e-9)
	assert.InDelta(t, 30, greatest, 1e-9)
	least, greatest, err = pedal.Over([]float64{20, 20}, []float64{120, 30})
	require.NoError(t, err)
	assert.Equal(t, []float64{0, 100}, []float64{least, greatest}, "a corner cannot answer")
	_, _, err = pedal.Over([]float64{20, 30}, []float64{20, 30})
	assert.ErrorContains(t, err, "cannot stand")
	_, _, err = pedal.Over([]float64{0, 30}, []float64{20, 30})
	refuses(t, err, "free pedal height")
	_, _, err = pedal.Over([]float64{20}, []float64{20, 30})
	assert.ErrorContains(t, err, "takes 2")

	steel, _ := Find("steel_loss")
	least, greatest, err = steel.Over([]float64{10, 75, 5, 3}, []float64{10, 75, 5, 3})
	require.NoError(t, err)
	assert.InDelta(t, 21.89, least, 0.01)
	assert.Equal(t, least, greatest)
	least, greatest, err = steel.Over([]float64{9, 75, 5, 3}, []float64{11, 75, 5, 3})
	require.NoError(t, err)
	assert.Equal(t, []float64{steel.Low, steel.High}, []float64{least, greatest}, "temperature has no one direction")

	hill := Function{
		Name: "hill", Params: []Param{{Name: "x", Low: 0, High: 4, Direction: Rising, Breaks: []float64{2}}}, Low: -4, High: 0,
		Call: func(a []float64) (float64, error) { return -(a[0] - 2) * (a[0] - 2), nil },
	}
	least, greatest, err = hill.Over([]float64{1}, []float64{4})
	require.NoError(t, err)
	assert.Equal(t, []float64{-4, 0}, []float64{least, greatest}, "the break is a corner")
}
