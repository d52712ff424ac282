package engine

import (
	"longstand/advisor"
	"longstand/advisor/belief"
)

// doubt is one suspect as it stands in a case.
type doubt struct {
	here     advisor.Truth // does the suspect apply to this car
	base     float64
	baseAt   int // index of the branch used, -1 when there is none
	chance   float64
	evidence []belief.Evidence
	lines    []belief.Line
	levels   []int // by evidence: the level that is true, or -1
	conflict bool
	ratio    float64 // product of the counted ratios, for families
}

// chances works out every suspect of a reading.
func (r *reading) chances(fitted []advisor.Truth) []doubt {
	out := make([]doubt, len(r.e.suspects))
	for k := range r.e.suspects {
		out[k] = r.doubt(k, fitted)
	}
	r.families(out)
	return out
}

// doubt works out one suspect on its own, families aside.
func (r *reading) doubt(k int, fitted []advisor.Truth) doubt {
	s := &r.e.suspects[k]
	d := doubt{here: r.applies(k, fitted), baseAt: -1}
	if d.here == advisor.False {
		return d
	}
	d.base, d.baseAt = r.base(s)
	d.evidence, d.levels = make([]belief.Evidence, 0, len(s.signs)), make([]int, 0, len(s.signs))
	for i, sign := range s.signs {
		ev, level := r.evidence(i, sign)
		d.evidence, d.levels = append(d.evidence, ev), append(d.levels, level)
	}
	d.chance, d.lines, d.conflict = belief.Update(d.base, d.evidence, r.e.book.Settings.Trust)
	d.ratio, _ = belief.Ratio(make([]belief.Line, len(d.evidence)), d.evidence, &r.e.book.Settings.Trust)
	return d
}

// applies tells whether a suspect concerns this car: its condition holds, and
// at least one operation that cures it is fitted and not already done.
func (r *reading) applies(k int, fitted []advisor.Truth) advisor.Truth {
	s := &r.e.suspects[k]
	here := r.all(s.When.ID)
	some, undone := advisor.False, false
	for _, o := range s.curedBy {
		some = some.Or(fitted[o])
		undone = undone || fitted[o] != advisor.False && !r.done[o]
	}
	if !undone {
		return advisor.False
	}
	return here.And(some)
}

// base picks the highest chance of the branches that may still be the one.
func (r *reading) base(s *suspect) (chance float64, at int) {
	at = -1
	for i, b := range branches(r, s.Bases, baseWhen) {
		if c := b.Count.Chance(); at < 0 || c > chance {
			chance, at = c, i
		}
	}
	return chance, at
}

// evidence turns a sign into what belief weighs, and says which level holds.
func (r *reading) evidence(i int, s *advisor.Sign) (belief.Evidence, int) {
	ev := belief.Evidence{Sign: i, Group: s.Group, Decisive: s.Decisive}
	if len(s.Levels) > 0 {
		return r.levelEvidence(ev, s)
	}
	ev.A, ev.B = share(s.With, s.Decisive), share(s.Without, s.Decisive)
	ev.Truth, ev.How = r.all(s.When.ID), r.channel(s.When.ID)
	return ev, -1
}

func share(c advisor.Count, decisive bool) float64 {
	if decisive {
		return c.Raw()
	}
	return c.Chance()
}

// levelEvidence weighs the levels still possible: the one known to hold, or all
// that are not known to fail; with none ruled out the sign says nothing.
func (r *reading) levelEvidence(ev belief.Evidence, s *advisor.Sign) (belief.Evidence, int) {
	levels, truths := make([]belief.Level, len(s.Levels)), make([]advisor.Truth, len(s.Levels))
	holds := -1
	ev.How = advisor.Nohow
	earlier := advisor.False // some level before this one holds
	for i := range s.Levels {
		l := &s.Levels[i]
		levels[i] = belief.Level{A: share(l.With, s.Decisive), B: share(l.Without, s.Decisive)}
		own := r.all(l.When.ID)
		truths[i] = own.And(earlier.Not())
		earlier = earlier.Or(own)
		switch truths[i] {
		case advisor.True:
			holds = i
			ev.How = r.levelChannel(s, i)
		case advisor.False:
			if holds < 0 {
				ev.How = weaker(ev.How, r.levelChannel(s, i))
			}
		}
	}
	ev.A, ev.B, ev.Truth, ev.Open = belief.Levels(levels, truths, nil)
	return ev, holds
}

// levelChannel is the channel by which a level came to be settled: the weakest
// of its own condition's and of those before it.
func (r *reading) levelChannel(s *advisor.Sign, level int) advisor.Channel {
	how := advisor.Nohow
	for i := range s.Levels[:level+1] {
		if id := s.Levels[i].When.ID; id != 0 && r.all(id).Known() {
			how = weaker(how, r.channel(id))
		}
	}
	return how
}

// weaker is the weaker of two channels, Nohow counting as none yet.
func weaker(a, b advisor.Channel) advisor.Channel {
	if a == advisor.Nohow {
		return b
	}
	if b == advisor.Nohow {
		return a
	}
	return max(a, b)
}

// families shares out the chances of causes that exclude one another.
func (r *reading) families(d []doubt) {
	members := make([][]int, len(r.e.book.Families))
	for k := range r.e.suspects {
		if f := r.e.suspects[k].family; f >= 0 && d[k].here != advisor.False {
			members[f] = append(members[f], k)
		}
	}
	for _, m := range members {
		if len(m) == 0 {
			continue
		}
		bases, ratios := make([]float64, len(m)), make([]float64, len(m))
		for i, k := range m {
			bases[i], ratios[i] = d[k].base, d[k].ratio
		}
		p, _ := belief.ExactlyOne(bases, ratios)
		for i, k := range m {
			d[k].chance = p[i]
		}
	}
}
