package scope

import "slices"

// Where a node stands while a choice is made: settled, not yet, or in a zone of
// free nodes (above zero).
const (
	zoneNone int32 = 0
	zoneIn   int32 = -1
	zoneOut  int32 = -2
)

// link is one requirement seen from one of its ends. arc is its number when the
// node at hand requires to; its complement when to requires the node at hand.
type link struct{ to, arc int32 }

// Solver holds the workspace for choosing, so that choosing again costs no
// memory. It is not for concurrent use.
type Solver struct {
	arcs  [][2]int32 // for which the links stand
	at    []int32    // links of node i are links[at[i]:at[i+1]]
	links []link

	zone  []int32
	free  []int32 // the free nodes, zone by zone
	from  []int32 // nodes of zone z are free[from[z-1]:from[z]]
	flow  []int64 // what is paid along each requirement
	gain  []int64 // what a node still has to give
	want  []int64 // what a node still lacks
	level []int32
	turn  []int32 // the link at which a node goes on
	queue []int32

	member []bool
	value  int64   // of the members
	weight []int64 // by node, as it counts in value
	anew   []int32 // zones that Again has paid

	weights, nothing []int64 // benefits and costs at an extreme, see TwoCuts
	forcing          []bool  // what an extreme forces

	kept snapshot // the state after a choice, for margins
}

// Closure is a chosen set: whatever a member requires is a member. Member is
// the solver's own and stands until its next call. Value is the sum of the
// members' weights; Money turns it into minor units.
type Closure struct {
	Member []bool
	Value  int64
}

// NewSolver makes a solver with room for so many nodes and arcs; it grows when
// a problem needs more.
func NewSolver(n, arcs int) *Solver {
	s := &Solver{}
	s.grow(n, arcs)
	s.arcs = make([][2]int32, 0, arcs)
	return s
}

func (s *Solver) grow(n, arcs int) {
	if cap(s.at) < n+1 {
		s.zone, s.level = make([]int32, n), make([]int32, n)
		s.turn, s.queue, s.free = make([]int32, n), make([]int32, 0, n), make([]int32, 0, n)
		s.gain, s.want = make([]int64, n), make([]int64, n)
		s.member, s.at = make([]bool, n), make([]int32, n+1)
		s.weight, s.from = make([]int64, n), make([]int32, 0, n+1)
		s.kept.gain, s.kept.want = make([]int64, n), make([]int64, n)
	}
	if cap(s.links) < 2*arcs {
		s.flow, s.kept.flow, s.links = make([]int64, arcs), make([]int64, arcs), make([]link, 2*arcs)
	}
	s.zone, s.level, s.turn = s.zone[:n], s.level[:n], s.turn[:n]
	s.gain, s.want, s.member, s.at = s.gain[:n], s.want[:n], s.member[:n], s.at[:n+1]
	s.weight = s.weight[:n]
	s.flow, s.links = s.flow[:arcs], s.links[:2*arcs]
}

// prepare lays out the links, unless they stand already: most problems in a
// row differ in benefits only.
func (s *Solver) prepare(p *Problem) {
	n := len(p.Benefit)
	if len(s.zone) == n && sameArcs(s.arcs, p.Arcs) && len(s.arcs) > 0 {
		return
	}
	s.grow(n, len(p.Arcs))
	s.arcs = append(s.arcs[:0], p.Arcs...)
	clear(s.at)
	for _, a := range p.Arcs {
		s.at[a[0]]++
		s.at[a[1]]++
	}
	var sum int32
	for i := range s.at {
		sum += s.at[i]
		s.at[i] = sum
	}
	for e := len(p.Arcs) - 1; e >= 0; e-- {
		i, j := p.Arcs[e][0], p.Arcs[e][1]
		s.at[i]--
		s.links[s.at[i]] = link{j, int32(e)}
		s.at[j]--
		s.links[s.at[j]] = link{i, ^int32(e)}
	}
}

func sameArcs(a, b [][2]int32) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func (s *Solver) linksOf(i int32) []link { return s.links[s.at[i]:s.at[i+1]] }

// Best is the best scope at a price; of several that are as good, the one that
// all others contain.
func (s *Solver) Best(p *Problem, price Price) Closure {
	s.prepare(p)
	s.settle(p, -1)
	s.payAll(p, price)
	return s.reached(p, price)
}

// Maximal is the best scope at a price that contains all others as good.
func (s *Solver) Maximal(p *Problem, price Price) Closure {
	s.prepare(p)
	s.settle(p, -1)
	s.payAll(p, price)
	s.markShort()
	return s.reached(p, price)
}

// Again is Best once more of the problem that it was last asked for, after the
// benefits of some nodes, and nothing else, have changed: what does not hang
// together with them stays as it was chosen.
func (s *Solver) Again(p *Problem, price Price, changed []int32) Closure {
	s.anew = s.anew[:0]
	for _, i := range changed {
		switch z := s.zone[i]; {
		case z == zoneIn:
			s.count(p, i, price)
		case z > zoneNone && !slices.Contains(s.anew, z):
			s.anew = append(s.anew, z)
			nodes := s.nodesOf(z)
			s.pay(p, nodes, z, price)
			for _, j := range nodes {
				s.count(p, j, price)
			}
		}
	}
	return Closure{Member: s.member, Value: s.value}
}

// reached gathers what is in and the free nodes with a level.
func (s *Solver) reached(p *Problem, price Price) Closure {
	s.value = 0
	clear(s.weight)
	for i := range s.zone {
		s.count(p, int32(i), price)
	}
	return Closure{Member: s.member, Value: s.value}
}

// count takes a node into the scope, or out of it, and brings the value up to date.
func (s *Solver) count(p *Problem, i int32, price Price) {
	z := s.zone[i]
	in, w := z == zoneIn || z > zoneNone && s.level[i] >= 0, int64(0)
	if in {
		w = price.Num*p.Benefit[i] - price.Den*p.Cost[i]
	}
	s.value += w - s.weight[i]
	s.member[i], s.weight[i] = in, w
}
