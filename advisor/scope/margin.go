package scope

import "math"

// Impossible is the value of a scope that cannot be: a node forced in that
// needs what is put out, or forced out while something forced in needs it.
const Impossible = math.MinInt64

// Margin is what the best scope is worth with a node in and with it out.
type Margin struct{ In, Out int64 }

// By is how much a node is worth having in; negative when it falls short. Not
// known (false) when one of the two cannot be.
func (m Margin) By() (value int64, ok bool) {
	if m.In == Impossible || m.Out == Impossible {
		return 0, false
	}
	return m.In - m.Out, true
}

// snapshot is the state of payment after a choice.
type snapshot struct{ flow, gain, want []int64 }

func (s *Solver) keep() {
	copy(s.kept.flow[:len(s.flow)], s.flow)
	copy(s.kept.gain[:len(s.gain)], s.gain)
	copy(s.kept.want[:len(s.want)], s.want)
}

// restore brings back what was paid in a zone; gains and wants as asked, else none.
func (s *Solver) restore(zone int32, gains, wants bool) {
	for _, i := range s.nodesOf(zone) {
		s.gain[i], s.want[i] = 0, 0
		if gains {
			s.gain[i] = s.kept.gain[i]
		}
		if wants {
			s.want[i] = s.kept.want[i]
		}
		for _, l := range s.linksOf(i) {
			if l.arc >= 0 {
				s.flow[l.arc] = s.kept.flow[l.arc]
			}
		}
	}
}

// Margin gives the value of the best scope with node i forced in and forced
// out, its own forcing lifted and all others kept.
func (s *Solver) Margin(p *Problem, price Price, i int) (forcedIn, forcedOut int64) {
	s.prepare(p)
	s.settle(p, i)
	s.payAll(p, price)
	c := s.reached(p, price)
	s.keep()
	m := s.margin(int32(i), c)
	return m.In, m.Out
}

// Margins gives the margin of every node in dst, which has room for all; but not
// of forced nodes that are left aside (nil for none).
func (s *Solver) Margins(p *Problem, price Price, dst []Margin, aside []bool) {
	s.prepare(p)
	for i := range p.Benefit {
		if i < len(aside) && aside[i] {
			continue
		}
		if forced(p.In, i) || forced(p.Out, i) {
			dst[i].In, dst[i].Out = s.Margin(p, price, i)
		}
	}
	s.settle(p, -1)
	s.payAll(p, price)
	c := s.reached(p, price)
	s.keep()
	for i := range p.Benefit {
		if !forced(p.In, i) && !forced(p.Out, i) {
			dst[i] = s.margin(int32(i), c)
		}
	}
}

// margin reads a margin off the payment kept. A node outside the best scope
// falls short by what it still cannot pay with all unspent gains left aside; a
// node inside is worth what would run out if it swallowed every gain in reach.
func (s *Solver) margin(i int32, c Closure) Margin {
	z := s.zone[i]
	switch {
	case z == zoneIn:
		return Margin{c.Value, Impossible}
	case z == zoneOut:
		return Margin{Impossible, c.Value}
	case c.Member[i]:
		s.restore(z, true, false)
		s.want[i] = boundless
		return Margin{c.Value, c.Value - s.augment(s.nodesOf(z), z)}
	}
	s.restore(z, false, true)
	s.gain[i] = boundless
	return Margin{c.Value - s.augment(s.nodesOf(z), z), c.Value}
}

// BreakEven is the chance at which the call on a node flips, from its benefit
// (chance x loss), its margin and the loss if it is left: the value forced in
// rises with the chance by price x loss, the value forced out not at all.
// It may lie outside 0 to 1: then no chance flips the call.
func BreakEven(benefit, margin int64, price Price, loss int64) float64 {
	return (float64(benefit) - float64(margin)/float64(price.Num)) / float64(loss)
}
