package scope

import "slices"

// TwoCuts bounds the best scope for all that is not known yet: whatever turns
// out, the scope contains every member of surely and no node outside possibly.
//
// low carries the lowest benefits, the highest costs, only the sure forcing in
// and every possible forcing out; high the reverse; both the requirements that
// surely apply, and under Unsure those that may. A node that may not exist is
// possibly out, and the requirements on it are unsure. For a whole ladder the
// two prices are its ends (Num and Den below 2^15 each), otherwise the same.
//
// In low a node with an unsure requirement is out, unless what it would require
// is surely in. In high an unsure requirement costs its owner nothing, but
// since it may pull its target in, the target of a possible member is taken in
// until nothing changes; what is out stays out, unless something forced in may
// require it.
func TwoCuts(s *Solver, low *Problem, lowPrice Price, high *Problem, highPrice Price) (surely, possibly []bool) {
	surely = slices.Clone(Surely(s, low, lowPrice, highPrice))
	return surely, slices.Clone(Possibly(s, high, lowPrice, highPrice))
}

// Surely is the lower of the two cuts by itself. What it gives is the solver's
// own and stands until its next call.
func Surely(s *Solver, low *Problem, lowPrice, highPrice Price) []bool {
	lean := s.extreme(low, lowPrice, highPrice, false)
	if len(low.Unsure) > 0 {
		lean.Out = s.unsureOut(low)
	}
	return s.Best(&lean, par).Member
}

// Possibly is the upper of the two cuts by itself, the solver's own as well.
func Possibly(s *Solver, high *Problem, lowPrice, highPrice Price) (possibly []bool) {
	full := s.extreme(high, lowPrice, highPrice, true)
	s.forcing = grown(s.forcing, len(high.Benefit))
	full.In = s.forcing
	copy(full.In, high.In)
	for again := true; again; {
		s.prepare(&full)
		s.settle(&full, -1)
		again = full.force(func(i, j int32) bool { return s.zone[i] == zoneIn && s.zone[j] != zoneIn })
	}
	for again := true; again; {
		possibly = s.Maximal(&full, par).Member
		again = full.force(func(i, j int32) bool { return possibly[i] && !possibly[j] && s.zone[j] != zoneOut })
	}
	return possibly
}

// grown is a slice of n zeros, in the room of another where that is enough.
func grown[T int64 | bool](room []T, n int) []T {
	if cap(room) < n {
		return make([]T, n)
	}
	clear(room[:n])
	return room[:n]
}

// force forces in what unsure requirements pull in.
func (p *Problem) force(pulled func(i, j int32) bool) (changed bool) {
	for _, a := range p.Unsure {
		if pulled(a[0], a[1]) && !p.In[a[1]] {
			p.In[a[1]] = true
			changed = true
		}
	}
	return changed
}

// par is the price at which a benefit is a weight.
var par = Price{Num: 1, Den: 1}

// extreme gives the problem with its lowest (highest) weights over all prices
// between two, as benefits, in the solver's own room. An overlap weighs most at
// the high price.
func (s *Solver) extreme(p *Problem, low, high Price, highest bool) Problem {
	q := *p
	s.weights, s.nothing = grown(s.weights, len(p.Benefit)), grown(s.nothing, len(p.Benefit))
	q.Benefit, q.Cost = s.weights, s.nothing
	l, h, den := low.Num, high.Num, low.Den
	if low.Den != high.Den {
		l, h, den = low.Num*high.Den, high.Num*low.Den, low.Den*high.Den
	}
	for i, b := range p.Benefit {
		weight := l * b
		if (b < 0) != highest {
			weight = h * b
		}
		q.Benefit[i] = weight - den*p.Cost[i]
	}
	return q
}

// unsureOut is Out with every node added whose unsure requirement is not surely in.
func (s *Solver) unsureOut(p *Problem) []bool {
	s.prepare(p)
	s.settle(p, -1)
	s.forcing = grown(s.forcing, len(p.Benefit))
	out := s.forcing
	copy(out, p.Out)
	for _, a := range p.Unsure {
		if s.zone[a[1]] != zoneIn {
			out[a[0]] = true
		}
	}
	return out
}
