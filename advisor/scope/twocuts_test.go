package scope

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// unsettled is a problem of which not all is known: benefits and costs between
// bounds, forcings that may act, requirements that may apply, nodes that may
// not exist.
type unsettled struct {
	low, high         *Problem
	maybeIn           []int32
	maybeOut          []int32 // put out, or not fitted
	notFitted         []bool  // if out, requirements on it fall away
	sureArcs, perhaps [][2]int32
}

func randomUnsettled(r *rand.Rand) *unsettled {
	base := randomProblem(r, 2+r.IntN(12), r.IntN(2) == 0, r.IntN(2) == 0)
	n := len(base.Benefit)
	u := &unsettled{notFitted: make([]bool, n)}
	for i := range n {
		switch r.IntN(8) {
		case 0:
			u.maybeIn = append(u.maybeIn, int32(i))
		case 1:
			u.maybeOut = append(u.maybeOut, int32(i))
		case 2:
			u.maybeOut = append(u.maybeOut, int32(i))
			u.notFitted[i] = true
		}
	}
	for _, a := range base.Arcs {
		if r.IntN(5) == 0 || u.notFitted[a[1]] {
			u.perhaps = append(u.perhaps, a)
		} else {
			u.sureArcs = append(u.sureArcs, a)
		}
	}
	clone := func() *Problem {
		return &Problem{Benefit: slices.Clone(base.Benefit), Cost: slices.Clone(base.Cost), In: slices.Clone(base.In), Out: slices.Clone(base.Out), Arcs: u.sureArcs, Unsure: u.perhaps}
	}
	u.low, u.high = clone(), clone()
	for i := range n {
		if r.IntN(2) == 0 {
			u.low.Benefit[i] -= r.Int64N(15)
			u.high.Benefit[i] += r.Int64N(15)
			u.low.Cost[i] += r.Int64N(10)
			u.high.Cost[i] -= r.Int64N(10)
		}
	}
	for _, i := range u.maybeIn {
		u.high.In[i] = true
	}
	for _, i := range u.maybeOut {
		u.low.Out[i] = true
	}
	return u
}

// completion settles everything at random.
func (u *unsettled) completion(r *rand.Rand) *Problem {
	n := len(u.low.Benefit)
	p := &Problem{Benefit: make([]int64, n), Cost: make([]int64, n), In: slices.Clone(u.low.In), Out: slices.Clone(u.high.Out), Arcs: slices.Clone(u.sureArcs)}
	for i := range n {
		p.Benefit[i] = u.low.Benefit[i] + r.Int64N(u.high.Benefit[i]-u.low.Benefit[i]+1)
		p.Cost[i] = u.high.Cost[i] + r.Int64N(u.low.Cost[i]-u.high.Cost[i]+1)
	}
	for _, i := range u.maybeIn {
		p.In[i] = p.In[i] || r.IntN(2) == 0
	}
	gone := make([]bool, n)
	for _, i := range u.maybeOut {
		if r.IntN(2) == 0 {
			p.Out[i] = true
			gone[i] = u.notFitted[i] && !p.In[i]
		}
	}
	for _, a := range u.perhaps {
		if !gone[a[1]] && (u.notFitted[a[1]] || r.IntN(2) == 0) {
			p.Arcs = append(p.Arcs, a)
		}
	}
	return p
}

// For every completion: surely is within the scope and the scope within possibly.
func TestTwoCutsBoundEveryCompletion(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	s, s2 := NewSolver(14, 28), NewSolver(14, 28)
	settled, total := 0, 0
	for range 3000 {
		u := randomUnsettled(r)
		low := randomPrice(r)
		high := Price{Num: low.Num*2 + r.Int64N(5), Den: low.Den * 2}
		surely, possibly := TwoCuts(s, u.low, low, u.high, high)
		for range 12 {
			p := u.completion(r)
			price := [3]Price{low, high, {Num: low.Num*2 + high.Num, Den: high.Den * 2}}[r.IntN(3)]
			scope := s2.Best(p, price).Member
			for i := range scope {
				require.False(t, surely[i] && !scope[i], "node %d is sure but not in the scope", i)
				require.False(t, scope[i] && !possibly[i], "node %d is in the scope but not possible", i)
			}
		}
		for i := range surely {
			total++
			if surely[i] == possibly[i] {
				settled++
			}
		}
	}
	require.Greater(t, settled*100, total*40, "the bounds are not idle")
}

// Dropping an unsure need in high would miss what the need pulls in.
func TestTwoCutsFollowsAnUnsureNeed(t *testing.T) {
	n := Network{{Name: "repair", Cost: 1, Benefit: 9}, {Name: "door", Cost: 2}, {Name: "latch", Cost: 1}}
	p := problemOf(t, n)
	p.Unsure = [][2]int32{{0, 1}, {1, 2}}
	surely, possibly := TwoCuts(NewSolver(3, 2), p, one, p, one)
	require.Equal(t, []string{}, n.Names(surely))
	require.Equal(t, []string{"repair", "door", "latch"}, n.Names(possibly))

	p.In = []bool{false, true, true} // the door is open anyway: the need does no harm
	surely, _ = TwoCuts(NewSolver(3, 2), p, one, p, one)
	require.Equal(t, []string{"repair", "door", "latch"}, n.Names(surely))

	p.In, p.Out = nil, []bool{false, true, false} // the door is shut for good
	surely, possibly = TwoCuts(NewSolver(3, 2), p, one, p, one)
	require.Equal(t, []string{}, n.Names(surely))
	require.Equal(t, []string{"repair"}, n.Names(possibly))
}

// The bounds are no wider than the prices ask for.
func TestTwoCutsOverTwoPrices(t *testing.T) {
	p := &Problem{Benefit: []int64{10, 10, -10, -10}, Cost: []int64{4, 6, -4, -6}}
	for _, c := range []struct {
		low, high        Price
		surely, possibly []bool
	}{
		{Price{Num: 1, Den: 2}, Price{Num: 4, Den: 7}, []bool{true, false, false, true}, []bool{true, false, false, true}},
		{Price{Num: 1, Den: 2}, Price{Num: 2, Den: 3}, []bool{true, false, false, false}, []bool{true, true, false, true}},
		{Price{Num: 1, Den: 3}, Price{Num: 4, Den: 7}, []bool{false, false, false, true}, []bool{true, false, true, true}},
	} {
		surely, possibly := TwoCuts(NewSolver(4, 0), p, c.low, p, c.high)
		require.Equal(t, c.surely, surely, "%v to %v", c.low, c.high)
		require.Equal(t, c.possibly, possibly, "%v to %v", c.low, c.high)
	}
}
