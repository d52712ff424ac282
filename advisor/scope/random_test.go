package scope

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// randomProblem has n nodes; acyclic half the time. Costs are at least 1 unless
// savings are asked for, benefits at least 0 unless overlaps are.
func randomProblem(r *rand.Rand, n int, overlaps, savings bool) *Problem {
	p := &Problem{Benefit: make([]int64, n), Cost: make([]int64, n), In: make([]bool, n), Out: make([]bool, n)}
	acyclic := r.IntN(2) == 0
	for i := range n {
		p.Cost[i] = 1 + r.Int64N(40)
		if r.IntN(3) > 0 {
			p.Benefit[i] = r.Int64N(60)
		}
		if overlaps && r.IntN(4) == 0 {
			p.Benefit[i] = -r.Int64N(30)
		}
		if savings && r.IntN(5) == 0 {
			p.Cost[i] = -r.Int64N(20)
		}
		for range r.IntN(3) {
			j := r.IntN(n)
			if acyclic && i > 0 {
				j = r.IntN(i)
			}
			p.Arcs = append(p.Arcs, [2]int32{int32(i), int32(j)})
		}
		p.In[i], p.Out[i] = r.IntN(12) == 0, r.IntN(12) == 0
	}
	return p
}

func randomPrice(r *rand.Rand) Price { return Price{Num: r.Int64N(12), Den: 1 + r.Int64N(6)} }

// closures lists every set that the problem allows: In first, so that it wins.
func closures(p *Problem) [][]bool {
	n := len(p.Benefit)
	in, out := slices.Clone(p.In), slices.Clone(p.Out)
	for range n {
		for _, a := range p.Arcs {
			in[a[1]] = in[a[1]] || in[a[0]]
		}
	}
	var sets [][]bool
	for bits := range 1 << n {
		set := make([]bool, n)
		ok := true
		for i := range n {
			set[i] = bits>>i&1 == 1
			ok = ok && (set[i] || !in[i]) && !(set[i] && out[i] && !in[i])
		}
		for _, a := range p.Arcs {
			ok = ok && (!set[a[0]] || set[a[1]])
		}
		if ok {
			sets = append(sets, set)
		}
	}
	return sets
}

func valueOf(p *Problem, price Price, set []bool) (v int64) {
	for i, in := range set {
		if in {
			v += price.Num*p.Benefit[i] - price.Den*p.Cost[i]
		}
	}
	return v
}

// brute gives the best value, the least best set and the greatest.
func brute(p *Problem, price Price, sets [][]bool) (best int64, least, greatest []bool) {
	best = Impossible
	for _, set := range sets {
		v := valueOf(p, price, set)
		if v > best {
			best, least, greatest = v, slices.Clone(set), slices.Clone(set)
		} else if v == best {
			for i := range set {
				least[i] = least[i] && set[i]
				greatest[i] = greatest[i] || set[i]
			}
		}
	}
	return best, least, greatest
}

func TestBestAgainstEverySet(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	s := NewSolver(4, 4)
	for range 3000 {
		p := randomProblem(r, 1+r.IntN(9), r.IntN(2) == 0, r.IntN(2) == 0)
		require.NoError(t, p.Check())
		price := randomPrice(r)
		best, least, greatest := brute(p, price, closures(p))
		c := s.Best(p, price)
		require.Equal(t, best, c.Value)
		require.Equal(t, least, c.Member)
		require.Equal(t, greatest, s.Maximal(p, price).Member)
	}
}

func TestBestAgainstEverySetOfFourteen(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	s := NewSolver(14, 28)
	for range 25 {
		p := randomProblem(r, 14, true, true)
		p.In, p.Out = make([]bool, 14), make([]bool, 14)
		sets := closures(p)
		for range 4 {
			price := randomPrice(r)
			best, least, _ := brute(p, price, sets)
			c := s.Best(p, price)
			require.Equal(t, best, c.Value)
			require.Equal(t, least, c.Member)
		}
	}
}

func TestMarginsAgainstEverySet(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	s := NewSolver(8, 16)
	for range 600 {
		n := 1 + r.IntN(8)
		p := randomProblem(r, n, true, true)
		price := randomPrice(r)
		all := make([]Margin, n)
		s.Margins(p, price, all, nil)
		for i := range n {
			q := *p
			q.In, q.Out = slices.Clone(p.In), slices.Clone(p.Out)
			q.In[i], q.Out[i] = false, false
			want := Margin{Impossible, Impossible}
			for _, set := range closures(&q) {
				v := valueOf(p, price, set)
				if set[i] {
					want.In = max(want.In, v)
				} else {
					want.Out = max(want.Out, v)
				}
			}
			in, out := s.Margin(p, price, i)
			require.Equal(t, want, Margin{in, out})
			require.Equal(t, want, all[i])
		}
	}
}

// Raising a benefit never removes a node, and V is convex in the price.
func TestMonotoneAndConvex(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	s := NewSolver(30, 60)
	for range 500 {
		p := randomProblem(r, 2+r.IntN(28), true, true)
		price := randomPrice(r)
		before := slices.Clone(s.Best(p, price).Member)
		p.Benefit[r.IntN(len(p.Benefit))] += r.Int64N(30)
		after := s.Best(p, price).Member
		for i := range before {
			require.False(t, before[i] && !after[i])
		}
		v := func(num int64) int64 { return s.Best(p, Price{Num: num, Den: 4}).Value }
		a := r.Int64N(10)
		require.LessOrEqual(t, 2*v(a+3), v(a)+v(a+6))
	}
}

func TestBestAllocatesNothing(t *testing.T) {
	p := randomProblem(rand.New(rand.NewPCG(8, 1)), 60, true, true)
	s := NewSolver(60, len(p.Arcs))
	s.Best(p, one)
	margins := make([]Margin, 60)
	assert.Zero(t, testing.AllocsPerRun(20, func() {
		s.Best(p, one)
		s.Maximal(p, Price{Num: 3, Den: 2})
		s.Margins(p, one, margins, nil)
	}))
}
