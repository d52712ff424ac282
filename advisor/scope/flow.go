package scope

import "math"

// boundless is more than all weights together. Requirements themselves carry no
// capacity at all: they are truly infinite.
const boundless = math.MaxInt64

// payAll pays in every zone.
func (s *Solver) payAll(p *Problem, price Price) {
	for z := int32(1); int(z) < len(s.from); z++ {
		s.pay(p, s.nodesOf(z), z, price)
	}
}

// pay lets the gains of the nodes of one zone pay for what they require, as far
// as they reach: a maximum flow. Afterwards a node of the zone has a level (zero
// or more) just when an unspent gain reaches it, which is the least best set.
func (s *Solver) pay(p *Problem, nodes []int32, zone int32, price Price) {
	for _, i := range nodes {
		w := price.Num*p.Benefit[i] - price.Den*p.Cost[i]
		s.gain[i], s.want[i] = max(w, 0), max(-w, 0)
		for _, l := range s.linksOf(i) {
			if l.arc >= 0 {
				s.flow[l.arc] = 0
			}
		}
	}
	s.augment(nodes, zone)
}

// augment sends gains to wants until no unspent gain reaches a want, along
// shortest ways first (Dinic 1970), and gives what was sent.
func (s *Solver) augment(nodes []int32, zone int32) int64 {
	var sent int64
	for {
		depth := s.search(nodes, zone)
		if depth < 0 {
			return sent
		}
		for _, i := range nodes {
			s.turn[i] = s.at[i]
		}
		for _, i := range nodes {
			if s.gain[i] > 0 {
				f := s.push(i, s.gain[i], zone, depth)
				if s.gain[i] != boundless {
					s.gain[i] -= f
				}
				sent += f
			}
		}
	}
}

// search levels the zone by distance from unspent gains and gives the distance
// of the nearest want, -1 when none is within reach.
func (s *Solver) search(nodes []int32, zone int32) int32 {
	depth := int32(-1)
	q := s.queue[:0]
	for _, i := range nodes {
		s.level[i] = -1
		if s.gain[i] > 0 {
			s.level[i] = 0
			q = append(q, i)
			if s.want[i] > 0 {
				depth = 0
			}
		}
	}
	for h := 0; h < len(q); h++ {
		i := q[h]
		next := s.level[i] + 1
		if depth >= 0 && next > depth {
			break
		}
		for _, l := range s.linksOf(i) {
			if s.zone[l.to] != zone || s.level[l.to] >= 0 || l.arc < 0 && s.flow[^l.arc] == 0 {
				continue
			}
			s.level[l.to] = next
			q = append(q, l.to)
			if s.want[l.to] > 0 {
				depth = next
			}
		}
	}
	return depth
}

// push sends up to limit from node i to wants at the given depth.
func (s *Solver) push(i int32, limit int64, zone, depth int32) int64 {
	if s.level[i] == depth {
		f := min(limit, s.want[i])
		if s.want[i] != boundless {
			s.want[i] -= f
		}
		return f
	}
	var sent int64
	end, next := s.at[i+1], s.level[i]+1
	for ; s.turn[i] < end; s.turn[i]++ {
		l := s.links[s.turn[i]]
		if s.zone[l.to] != zone || s.level[l.to] != next {
			continue
		}
		room := limit - sent
		if l.arc < 0 {
			room = min(room, s.flow[^l.arc])
		}
		if room == 0 {
			continue
		}
		f := s.push(l.to, room, zone, depth)
		if l.arc < 0 {
			s.flow[^l.arc] -= f
		} else {
			s.flow[l.arc] += f
		}
		if sent += f; sent == limit {
			return sent // the link may carry more: stay at it
		}
	}
	return sent
}

// markShort gives level -1 to the free nodes from which an unpaid want can be
// reached and 0 to the rest, which is the greatest best set.
func (s *Solver) markShort() {
	q := s.queue[:0]
	for _, i := range s.free {
		s.level[i] = 0
		if s.want[i] > 0 {
			s.level[i] = -1
			q = append(q, i)
		}
	}
	for h := 0; h < len(q); h++ {
		for _, l := range s.linksOf(q[h]) {
			if s.zone[l.to] <= zoneNone || s.level[l.to] < 0 || l.arc >= 0 && s.flow[l.arc] == 0 {
				continue
			}
			s.level[l.to] = -1
			q = append(q, l.to)
		}
	}
}
