package worth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"longstand/advisor/scope"
	"pgregory.net/rapid"
)

// drawWays are two to four ways that add up to 1 on either side; some cannot be.
func drawWays(t *rapid.T) []Way {
	ways := make([]Way, rapid.IntRange(2, 4).Draw(t, "ways"))
	var with, without float64
	for i := range ways {
		ways[i] = Way{float64(rapid.IntRange(0, 40).Draw(t, "with")), float64(rapid.IntRange(0, 40).Draw(t, "without"))}
		with, without = with+ways[i].With, without+ways[i].Without
	}
	if with == 0 || without == 0 {
		return []Way{{0.5, 0.25}, {0.5, 0.75}}
	}
	for i := range ways {
		ways[i].With, ways[i].Without = ways[i].With/with, ways[i].Without/without
	}
	return ways
}

// drawLook gives chances, of which the last two exclude one another, and faces
// of moves, at most one of a suspect or of the family on each.
func drawLook(t *rapid.T) ([]float64, []Face) {
	now := make([]float64, rapid.IntRange(3, 6).Draw(t, "suspects"))
	for k := range now {
		now[k] = float64(rapid.IntRange(1, 999).Draw(t, "chance")) / 1000
	}
	n := len(now)
	if total := now[n-2] + now[n-1]; total > 1 {
		now[n-2], now[n-1] = now[n-2]/total, now[n-1]/total
	}
	faces := make([]Face, rapid.IntRange(0, 3).Draw(t, "faces"))
	for i := range faces {
		faces[i].ID = string(rune('a' + i))
		for k := range n - 1 {
			if !rapid.Bool().Draw(t, "moves") {
				continue
			}
			m := Move{Suspect: k, Ways: drawWays(t)}
			if k == n-2 {
				m.Rivals = []int{n - 1}
			}
			faces[i].Moves = append(faces[i].Moves, m)
		}
	}
	return now, faces
}

// The chances of outcomes add up to 1, and each suspect's mean after the look is
// its chance now: nobody can expect to become surer of a fault, or less sure.
func TestMeanAfterIsChanceNow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now, faces := drawLook(t)
		out := Outcomes(now, faces, Limit)
		assert.LessOrEqual(t, len(out), Limit)
		assert.InDelta(t, 1, Mean(out, func([]Change) float64 { return 1 }), 1e-12)
		for k := range now {
			mean := 0.0
			for _, o := range out {
				p := o.chance(now, k)
				assert.True(t, p >= 0 && p <= 1+1e-12)
				mean += o.Chance * p
			}
			assert.InDelta(t, now[k], mean, 1e-12, "suspect %d", k)
		}
	})
}

// A move by two chances comes out at just these.
func TestBetweenComesOutAtBothChances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minus := rapid.Float64Range(0, 0.9).Draw(t, "minus")
		plus := rapid.Float64Range(minus+0.05, 1).Draw(t, "plus")
		now := minus + (plus-minus)*rapid.Float64Range(0.05, 0.95).Draw(t, "share")
		ways, ok := Between(now, plus, minus)
		if !assert.True(t, ok) {
			return
		}
		out := Outcomes([]float64{now}, []Face{{Moves: []Move{{Ways: ways}}}}, Limit)
		assert.Len(t, out, 2)
		assert.InDelta(t, plus, out[0].Changes[0].Chance, 1e-9)
		assert.InDelta(t, minus, out[1].Changes[0].Chance, 1e-9)
	})
}

// Without access to pay, looking is never worth less than nothing: the value is
// the greatest of many that are linear in the chances. One unit for each suspect
// is what rounding the benefits may cost.
func TestWorthIsNeverNegative(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now, faces := drawLook(t)
		n := len(now)
		p := &scope.Problem{Benefit: make([]int64, n+2), Cost: make([]int64, n+2)}
		loss := make([]int64, n)
		for i := range p.Cost {
			p.Cost[i] = rapid.Int64Range(1, 50_000).Draw(t, "cost")
		}
		for k := range loss {
			loss[k] = rapid.Int64Range(0, 200_000).Draw(t, "loss")
			if rapid.Bool().Draw(t, "door") {
				p.Arcs = append(p.Arcs, [2]int32{int32(k), int32(n + k%2)})
			}
		}
		p.Benefit[n] = -rapid.Int64Range(0, 20_000).Draw(t, "overlap")
		s := scope.NewSolver(n+2, n)
		value := func(changes []Change) float64 {
			o := Outcome{Changes: changes}
			for k := range loss {
				p.Benefit[k] = scope.Benefit(o.chance(now, k), loss[k])
			}
			return float64(s.Best(p, one).Value)
		}
		before := value(nil)
		assert.GreaterOrEqual(t, Mean(Outcomes(now, faces, Limit), value), before-float64(n)-1e-6)
	})
}

// Outcomes are the same however the faces are listed.
func TestFacesFollowOneAnotherByID(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now, faces := drawLook(t)
		assert.Equal(t, Outcomes(now, faces, Limit), Outcomes(now, rapid.Permutation(faces).Draw(t, "order"), Limit))
	})
}

func BenchmarkOutcomes(b *testing.B) {
	now := make([]float64, 12)
	faces := make([]Face, 6)
	for k := range now {
		now[k] = 0.1 + float64(k)/20
		f := &faces[k%6]
		f.ID = string(rune('a' + k%6))
		f.Moves = append(f.Moves, test(f.ID, k, 0.8, 0.2))
	}
	b.ReportAllocs()
	for b.Loop() {
		Outcomes(now, faces, Limit)
	}
}
