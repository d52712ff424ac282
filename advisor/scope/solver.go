package scope

// Where a node stands while a choice is made: settled, or in a zone of free
// nodes (zero and up).
const (
	zoneIn  int32 = -1
	zoneOut int32 = -2
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
	free  []int32 // the free nodes
	flow  []int64 // what is paid along each requirement
	gain  []int64 // what a node still has to give
	want  []int64 // what a node still lacks
	level []int32
	turn  []int32 // the link at which a node goes on
	queue []int32

	member []bool
	kept   snapshot // the state after a choice, for margins
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
		s.kept.gain, s.kept.want = make([]int64, n), make([]int64, n)
	}
	if cap(s.links) < 2*arcs {
		s.flow, s.kept.flow, s.links = make([]int64, arcs), make([]int64, arcs), make([]link, 2*arcs)
	}
	s.zone, s.level, s.turn = s.zone[:n], s.level[:n], s.turn[:n]
	s.gain, s.want, s.member, s.at = s.gain[:n], s.want[:n], s.member[:n], s.at[:n+1]
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

// settle puts every node in, out or free. The forcing of node lifted itself is
// left aside (-1 for none). What is forced in goes first, so that it wins.
func (s *Solver) settle(p *Problem, lifted int) {
	clear(s.zone)
	s.queue = s.queue[:0]
	for i := range s.zone {
		if forced(p.In, i) && i != lifted {
			s.zone[i] = zoneIn
			s.queue = append(s.queue, int32(i))
		}
	}
	s.spread(zoneIn)
	for i := range s.zone {
		if forced(p.Out, i) && i != lifted && s.zone[i] == 0 {
			s.zone[i] = zoneOut
			s.queue = append(s.queue, int32(i))
		}
	}
	s.spread(zoneOut)
	s.free = s.free[:0]
	for i, z := range s.zone {
		if z == 0 {
			s.free = append(s.free, int32(i))
		}
	}
}

// spread takes the queue along: in brings what is required, out takes what
// requires it.
func (s *Solver) spread(z int32) {
	for h := 0; h < len(s.queue); h++ {
		for _, l := range s.linksOf(s.queue[h]) {
			if s.zone[l.to] == 0 && (l.arc >= 0) == (z == zoneIn) {
				s.zone[l.to] = z
				s.queue = append(s.queue, l.to)
			}
		}
	}
	s.queue = s.queue[:0]
}

// Best is the best scope at a price; of several that are as good, the one that
// all others contain.
func (s *Solver) Best(p *Problem, price Price) Closure {
	s.prepare(p)
	s.settle(p, -1)
	s.pay(p, s.free, 0, price)
	return s.reached(p, price)
}

// Maximal is the best scope at a price that contains all others as good.
func (s *Solver) Maximal(p *Problem, price Price) Closure {
	s.prepare(p)
	s.settle(p, -1)
	s.pay(p, s.free, 0, price)
	s.markShort()
	return s.reached(p, price)
}

// reached gathers what is in and the free nodes with a level.
func (s *Solver) reached(p *Problem, price Price) Closure {
	var value int64
	for i, z := range s.zone {
		in := z == zoneIn || z == 0 && s.level[i] >= 0
		s.member[i] = in
		if in {
			value += price.Num*p.Benefit[i] - price.Den*p.Cost[i]
		}
	}
	return Closure{Member: s.member, Value: value}
}
