package scope

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
		if forced(p.Out, i) && i != lifted && s.zone[i] == zoneNone {
			s.zone[i] = zoneOut
			s.queue = append(s.queue, int32(i))
		}
	}
	s.spread(zoneOut)
	s.divide()
}

// divide gathers the free nodes that hang together by requirements into zones.
// Nothing is paid between two, so that each is chosen by itself.
func (s *Solver) divide() {
	s.free, s.from = s.free[:0], append(s.from[:0], 0)
	for i := range s.zone {
		if s.zone[i] != zoneNone {
			continue
		}
		zone, h := int32(len(s.from)), len(s.free)
		s.zone[i] = zone
		for s.free = append(s.free, int32(i)); h < len(s.free); h++ {
			for _, l := range s.linksOf(s.free[h]) {
				if s.zone[l.to] == zoneNone {
					s.zone[l.to] = zone
					s.free = append(s.free, l.to)
				}
			}
		}
		s.from = append(s.from, int32(len(s.free)))
	}
}

func (s *Solver) nodesOf(zone int32) []int32 { return s.free[s.from[zone-1]:s.from[zone]] }

// spread takes the queue along: in brings what is required, out takes what
// requires it.
func (s *Solver) spread(z int32) {
	for h := 0; h < len(s.queue); h++ {
		for _, l := range s.linksOf(s.queue[h]) {
			if s.zone[l.to] == zoneNone && (l.arc >= 0) == (z == zoneIn) {
				s.zone[l.to] = z
				s.queue = append(s.queue, l.to)
			}
		}
	}
	s.queue = s.queue[:0]
}
