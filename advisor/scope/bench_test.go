package scope

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// workshop is a problem of the size and shape of a book: one node in six is an
// opening; work needs openings, openings need openings before them.
func workshop(n, needs int) *Problem {
	r := rand.New(rand.NewPCG(uint64(n), uint64(needs)))
	p := &Problem{Benefit: make([]int64, n), Cost: make([]int64, n)}
	doors := n / 6
	for i := range n {
		p.Cost[i] = 2_000 + r.Int64N(60_000)
		if i >= doors {
			p.Benefit[i] = r.Int64N(90_000)
		}
		for range r.IntN(needs + 1) {
			if reach := min(i, doors); reach > 0 {
				p.Arcs = append(p.Arcs, [2]int32{int32(i), r.Int32N(int32(reach))})
			}
		}
	}
	return p
}

// tangle is a problem without shape: each node needs some earlier ones.
func tangle(n, needs int) *Problem {
	r := rand.New(rand.NewPCG(uint64(n), uint64(needs)))
	p := &Problem{Benefit: make([]int64, n), Cost: make([]int64, n)}
	for i := range n {
		p.Cost[i] = 1 + r.Int64N(1000)
		p.Benefit[i] = r.Int64N(2000)
		for range min(i, needs) {
			p.Arcs = append(p.Arcs, [2]int32{int32(i), r.Int32N(int32(i))})
		}
	}
	return p
}

func eachSize(b *testing.B, run func(b *testing.B, p *Problem, s *Solver)) {
	for _, n := range []int{60, 600} {
		for _, needs := range []int{2, 4} {
			for name, p := range map[string]*Problem{"workshop": workshop(n, needs), "tangle": tangle(n, needs)} {
				b.Run(fmt.Sprintf("%s/operations=%d/needs=%d", name, n, needs), func(b *testing.B) {
					b.ReportAllocs()
					run(b, p, NewSolver(n, len(p.Arcs)))
				})
			}
		}
	}
}

func BenchmarkBest(b *testing.B) {
	eachSize(b, func(b *testing.B, p *Problem, s *Solver) {
		for b.Loop() {
			s.Best(p, one)
		}
	})
}

func BenchmarkMargins(b *testing.B) {
	eachSize(b, func(b *testing.B, p *Problem, s *Solver) {
		dst := make([]Margin, len(p.Benefit))
		for b.Loop() {
			s.Margins(p, one, dst, nil)
		}
	})
}

func BenchmarkLadder(b *testing.B) {
	eachSize(b, func(b *testing.B, p *Problem, s *Solver) {
		var steps []Step
		for b.Loop() {
			steps, _ = Ladder(s, p, Price{Num: 0, Den: 1}, Price{Num: 1000, Den: 1})
		}
		b.ReportMetric(float64(len(steps)), "steps")
	})
}
