package scope

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// scanned finds the breakpoints of V by the crossing of all pairs of lines.
func scanned(p *Problem, low, high Price) []Price {
	sets := closures(p)
	cost := func(set []bool) int64 { return -valueOf(p, Price{Num: 0, Den: 1}, set) }
	benefit := func(set []bool) int64 { return valueOf(p, Price{Num: 1, Den: 1}, set) + cost(set) }
	_, atLow, _ := brute(p, low, sets)
	var found []Price
	for _, a := range sets {
		for _, b := range sets {
			dc, db := cost(b)-cost(a), benefit(b)-benefit(a)
			if dc < 0 || db <= 0 {
				continue
			}
			at := ratio(dc, db)
			if Less(at, low) || !Less(at, high) || slices.Contains(found, at) || at == low && benefit(b) <= benefit(atLow) {
				continue
			}
			if best, _, _ := brute(p, at, sets); valueOf(p, at, a) == best && valueOf(p, at, b) == best {
				found = append(found, at)
			}
		}
	}
	slices.SortFunc(found, func(a, b Price) int { return cmp.Compare(a.Num*b.Den, b.Num*a.Den) })
	return found
}

// justAbove is a price between one and the next breakpoint.
func justAbove(at Price) Price { return Price{Num: at.Num*100_000 + 1, Den: at.Den * 100_000} }

// Breakpoints equal those of a scan, whether contracted or plain; every step is
// the least best set just above its price.
func TestLadderAgainstScan(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	s := NewSolver(8, 16)
	plain := 0
	for round := range 1500 {
		p := randomProblem(r, 1+r.IntN(6), round%3 > 0, round%3 == 2)
		low, high := Price{Num: r.Int64N(2), Den: 1}, Price{Num: 5 + r.Int64N(100), Den: 3}
		if !s.nested(p) {
			plain++
		}
		steps, err := Ladder(s, p, low, high)
		require.NoError(t, err)
		require.Equal(t, low, steps[0].Price)
		prices := []Price{}
		member := make([]bool, len(p.Benefit))
		for k, step := range steps {
			for _, i := range step.Enters {
				require.False(t, member[i])
				member[i] = true
			}
			for _, i := range step.Leaves {
				require.True(t, member[i])
				member[i] = false
			}
			at := step.Price
			if k > 0 {
				prices = append(prices, at)
				at = justAbove(at)
			}
			best := s.Best(p, at)
			require.Equal(t, best.Member, member, "step %d", k)
			require.Equal(t, best.Value, at.Num*step.Benefit-at.Den*step.Cost)
		}
		if want := scanned(p, low, high); len(want) > 0 || len(prices) > 0 {
			require.Equal(t, want, prices)
		}
	}
	require.Greater(t, plain, 50, "the plain way is tried as well")
}

// With costs of at least 1 scopes are nested for any benefits, overlaps
// included: contracted and plain ladders agree.
func TestOverlapsKeepScopesNested(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	s := NewSolver(30, 60)
	for range 400 {
		p := randomProblem(r, 2+r.IntN(28), true, false)
		require.True(t, s.nested(p))
		low, high := Price{Num: 0, Den: 1}, Price{Num: 50, Den: 1}
		steps, err := Ladder(s, p, low, high)
		require.NoError(t, err)
		plain := plainLadder(s, p, low, high)
		require.Len(t, plain, len(steps))
		for k := range plain {
			require.Empty(t, plain[k].Leaves)
			require.Equal(t, plain[k].Price, steps[k].Price)
			require.ElementsMatch(t, plain[k].Enters, steps[k].Enters)
		}
	}
}

// Savings that are borne by what they join keep scopes nested as well.
func TestBorneSavingsKeepScopesNested(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	s := NewSolver(30, 60)
	borne := 0
	for range 3000 {
		p := randomProblem(r, 2+r.IntN(10), true, false)
		n := len(p.Benefit)
		for range 1 + r.IntN(3) {
			p.Benefit, p.Cost = append(p.Benefit, 0), append(p.Cost, -1-r.Int64N(20))
			p.In, p.Out = append(p.In, false), append(p.Out, false)
			k := int32(len(p.Benefit) - 1)
			p.Arcs = append(p.Arcs, [2]int32{k, r.Int32N(int32(n))}, [2]int32{k, r.Int32N(k)}) // perhaps another saving
		}
		if !s.nested(p) {
			continue
		}
		borne++
		for _, step := range plainLadder(s, p, Price{Num: 0, Den: 1}, Price{Num: 50, Den: 1}) {
			require.Empty(t, step.Leaves)
		}
	}
	require.Greater(t, borne, 200)
}
