package scope

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// Again chooses what Best would, after any run of changes to the same nodes.
func TestAgainChoosesAsBest(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 7))
		p := randomProblem(r, 30, true, true)
		changing := []int32{int32(r.IntN(30)), int32(r.IntN(30)), int32(r.IntN(30))}
		s, fresh := NewSolver(30, len(p.Arcs)), NewSolver(30, len(p.Arcs))
		s.Best(p, par)
		for range 5 {
			for _, i := range changing {
				p.Benefit[i] = int64(r.IntN(400))
			}
			got := s.Again(p, par, changing)
			member, value := slices.Clone(got.Member), got.Value
			want := fresh.Best(p, par)
			require.Equal(t, want.Value, value, "seed %d", seed)
			require.Equal(t, want.Member, member, "seed %d", seed)
		}
	}
}
