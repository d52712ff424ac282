package oracles

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"longstand/advisor/scope"
)

// eight is an example worked out by hand.
var eight = scope.Network{
	{Name: "engine_out", Cost: 900},
	{Name: "gearbox_off", Cost: 200, Needs: []string{"engine_out"}},
	{Name: "clutch", Cost: 450, Benefit: 900, Needs: []string{"gearbox_off"}},
	{Name: "rear_seal", Cost: 110, Benefit: 420, Needs: []string{"gearbox_off"}},
	{Name: "flywheel_skim", Cost: 120, Benefit: 40, Needs: []string{"gearbox_off"}},
	{Name: "sump_clean", Cost: 150, Benefit: 240, Needs: []string{"engine_out"}},
	{Name: "mounts", Cost: 180, Benefit: 90, Needs: []string{"engine_out"}},
	{Name: "fuel_tank", Cost: 300, Benefit: 500},
}

func TestEightOperations(t *testing.T) {
	p, err := eight.Problem()
	require.NoError(t, err)
	for price, want := range map[scope.Price]int64{
		{Num: 1, Den: 2}: 0, {Num: 1, Den: 1}: 200, {Num: 5, Den: 4}: 465 * 4, {Num: 5, Den: 2}: 3085 * 2, {Num: 4, Den: 1}: 6350,
	} {
		require.Equal(t, want, scope.NewSolver(8, 6).Best(p, price).Value, "ours at %v", price)
		require.Equal(t, want, byFlow(p, price), "flow at %v", price)
		lp, ok := bySimplex(p, price)
		require.True(t, ok)
		require.Equal(t, want, lp, "simplex at %v", price)
		require.Equal(t, want, byMaxSAT(p, price), "maxsat at %v", price)
	}
}

// randomProblem has overlaps, savings, cycles and forcings that do not clash.
func randomProblem(r *rand.Rand, n int) *scope.Problem {
	p := &scope.Problem{Benefit: make([]int64, n), Cost: make([]int64, n), In: make([]bool, n), Out: make([]bool, n)}
	acyclic := r.IntN(2) == 0
	for i := range n {
		p.Cost[i] = 1 + r.Int64N(400)
		if r.IntN(3) > 0 {
			p.Benefit[i] = r.Int64N(600) - 100
		}
		if r.IntN(6) == 0 {
			p.Cost[i] = -r.Int64N(150)
		}
		for range r.IntN(3) {
			j := r.IntN(n)
			if acyclic {
				j = r.IntN(i + 1)
			}
			p.Arcs = append(p.Arcs, [2]int32{int32(i), int32(j)})
		}
	}
	for i := range n {
		p.In[i], p.Out[i] = r.IntN(10) == 0, r.IntN(10) == 0
	}
	// Where what is in would require what is out, nothing is put out.
	reach := slices.Clone(p.In)
	for range n {
		for _, a := range p.Arcs {
			reach[a[1]] = reach[a[1]] || reach[a[0]]
		}
	}
	for i := range n {
		if reach[i] && p.Out[i] {
			clear(p.Out)
			break
		}
	}
	return p
}

func randomPrice(r *rand.Rand) scope.Price {
	return scope.Price{Num: r.Int64N(12), Den: 1 + r.Int64N(6)}
}

// A closed set that weighs as much as the best is best (so the value suffices),
// and it is the least when putting any free member out costs something.
func TestScopesAgainstUnrelatedSolvers(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	s := scope.NewSolver(12, 24)
	agreed := 0
	for round := range 1500 {
		p := randomProblem(r, 2+r.IntN(11))
		price := randomPrice(r)
		c := s.Best(p, price)
		member, value := slices.Clone(c.Member), c.Value

		var weight int64
		for i, w := range weights(p, price, 0) {
			if member[i] {
				weight += w
			}
			require.False(t, p.In[i] && !member[i] || p.Out[i] && member[i])
		}
		for _, a := range p.Arcs {
			require.False(t, member[a[0]] && !member[a[1]], "not closed")
		}
		require.Equal(t, value, weight)
		require.Equal(t, byFlow(p, price), value)
		if lp, ok := bySimplex(p, price); ok {
			require.Equal(t, lp, value)
			agreed++
		}
		if round%5 == 0 {
			require.Equal(t, byMaxSAT(p, price), value)
		}
		for i := range member {
			if member[i] && round%10 == 0 && !p.In[i] {
				requireNeeded(t, p, price, i, value)
			}
		}
	}
	require.Greater(t, agreed, 1400, "the simplex gave up too often to be an oracle")
}

// requireNeeded checks that a member of the least best scope cannot be put out
// for nothing, unless something forced in needs it.
func requireNeeded(t *testing.T, p *scope.Problem, price scope.Price, i int, value int64) {
	needs := make([]bool, len(p.In))
	needs[i] = true
	for range p.In {
		for _, a := range p.Arcs {
			needs[a[0]] = needs[a[0]] || needs[a[1]]
		}
	}
	for j := range needs {
		if needs[j] && p.In[j] {
			return
		}
	}
	q := *p
	q.Out = slices.Clone(p.Out)
	q.Out[i] = true
	require.Less(t, byFlow(&q, price), value)
}

// Larger problems against the flow alone.
func TestLargeScopes(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	s := scope.NewSolver(150, 300)
	for range 60 {
		p := randomProblem(r, 60+r.IntN(90))
		price := randomPrice(r)
		require.Equal(t, byFlow(p, price), s.Best(p, price).Value)
	}
}

// V(price) of a ladder equals the flow's at every breakpoint and halfway between.
func TestLadderAgainstFlow(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	s := scope.NewSolver(30, 60)
	for range 120 {
		p := randomProblem(r, 2+r.IntN(24))
		steps, err := scope.Ladder(s, p, scope.Price{Num: 0, Den: 1}, scope.Price{Num: 40, Den: 1})
		require.NoError(t, err)
		for k, step := range steps {
			prices := []scope.Price{step.Price}
			if k+1 < len(steps) {
				next := steps[k+1].Price
				prices = append(prices, next, scope.Price{Num: step.Price.Num*next.Den + next.Num*step.Price.Den, Den: 2 * step.Price.Den * next.Den})
			}
			for _, at := range prices {
				require.Equal(t, byFlow(p, at), at.Num*step.Benefit-at.Den*step.Cost, "step %d at %v", k, at)
			}
		}
	}
}
