package reckon

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// gridOf gives points over a range, ends included, or the codes.
func gridOf(p Param, steps int) []float64 {
	if p.Codes != nil {
		return p.Codes
	}
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
			if p.Codes != nil {
				assert.True(t, slices.IsSorted(p.Codes), f.Name)
				assert.Equal(t, []float64{p.Low, p.High}, []float64{p.Codes[0], p.Codes[len(p.Codes)-1]}, f.Name)
				_, err := f.Call([]float64{p.Low + 0.5})
				assert.ErrorContains(t, err, "there is no", f.Name)
			}
		}
	}
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

// next is a little more than a value, or the next code.
func next(p Param, here float64) float64 {
	for _, code := range p.Codes {
		if code > here {
			return code
		}
	}
	return min(p.High, here+(p.High-p.Low)/97)
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
				args[i] = next(p, here)
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
			if p.Codes != nil {
				args[i] = p.Low
			}
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
