package engine

import (
	"cmp"
	"slices"

	"longstand/advisor"
	"longstand/advisor/belief"
	"longstand/advisor/scope"
)

// openQuestions lists the walk-round questions that can still matter, in the
// order to ask them: within a station, those that structure reads first, then
// by worth for the minutes.
func (s *situation) openQuestions() []advisor.OpenQuestion {
	feeds := s.e.weigh(s.c, true).feeds()
	var out []advisor.OpenQuestion
	for q := range s.e.book.Questions {
		question := &s.e.book.Questions[q]
		if question.Station == "inspection" || s.asked[q] {
			continue
		}
		f := feeds[q]
		if f == nil && !question.Always {
			continue
		}
		o := advisor.OpenQuestion{ID: question.ID, Station: question.Station}
		if f != nil {
			o.Structure = f.structure
			o.Feeds, o.Suspects = s.feedNames(f)
			if len(f.suspects) > 0 {
				pr := s.look([]int{q}, nil, question.Minutes)
				o.Worth, o.Net = pr.worth, pr.net
			}
		}
		out = append(out, o)
	}
	slices.SortStableFunc(out, func(a, b advisor.OpenQuestion) int {
		return cmp.Or(cmp.Compare(slices.Index(advisor.Stations, a.Station), slices.Index(advisor.Stations, b.Station)),
			last(a.Structure, b.Structure), cmp.Compare(b.Net, a.Net))
	})
	return out
}

// feed is what one open question bears on.
type feed struct {
	structure bool
	ops       map[int]bool
	suspects  map[int]bool
	rules     map[string]bool
}

func (s *situation) feedNames(f *feed) (feeds, suspects []string) {
	for _, o := range sorted(f.ops) {
		feeds = append(feeds, s.e.ops[o].ID)
	}
	for r := range f.rules {
		feeds = append(feeds, r)
	}
	slices.Sort(feeds)
	for _, k := range sorted(f.suspects) {
		suspects = append(suspects, s.e.suspects[k].ID)
	}
	return slices.Compact(feeds), suspects
}

// feeds finds every open question that can still change a call, a hold, a
// standing rule or a danger: whatever is not decided by the two cuts. The
// situation must be one in which known(x) is undecided while x is not asked.
func (s *situation) feeds() map[int]*feed {
	out := map[int]*feed{}
	add := func(qs []int, structure bool, note func(*feed)) {
		for _, q := range qs {
			f := out[q]
			if f == nil {
				f = &feed{ops: map[int]bool{}, suspects: map[int]bool{}, rules: map[string]bool{}}
				out[q] = f
			}
			f.structure = f.structure || structure
			note(f)
		}
	}
	s.firmFeeds(add)
	undecided := s.undecided()
	for k := range s.e.suspects {
		s.suspectFeeds(k, undecided, add)
	}
	for o := range s.e.ops {
		if undecided[o] {
			s.needFeeds(o, add)
		}
	}
	return out
}

type addFeed func(questions []int, structure bool, note func(*feed))

// firmFeeds are the questions of holds, standing rules, dangers, fitting and settings.
func (s *situation) firmFeeds(add addFeed) {
	rule := func(id string) func(*feed) { return func(f *feed) { f.rules[id] = true } }
	for i := range s.e.book.Holds {
		h := &s.e.book.Holds[i]
		if s.upTo(1, h.When.ID) == advisor.False {
			continue
		}
		add(s.views[1].Missing(h.When.ID, nil), true, rule(h.ID))
		if h.Until.Given() && s.upTo(0, h.Until.ID) != advisor.True {
			add(s.views[0].Missing(h.Until.ID, nil), true, rule(h.ID))
		}
	}
	for i := range s.e.book.Standing {
		r := &s.e.book.Standing[i]
		if s.all(r.When.ID) == advisor.Unknown {
			add(s.missing(r.When.ID), true, rule(r.ID))
		}
	}
	for k := range s.e.suspects {
		sus := &s.e.suspects[k]
		if sus.Danger != nil && s.doubts[k].here != advisor.False {
			add(s.missing(sus.When.ID), true, func(f *feed) { f.suspects[k] = true })
			if s.forces.looked[k] != advisor.True {
				add(s.views[0].Missing(sus.Danger.Good.ID, nil), true, func(f *feed) { f.suspects[k] = true })
			}
		}
	}
	for o := range s.e.ops {
		if s.fitted[o] == advisor.Unknown {
			add(s.missing(s.e.ops[o].Fitted.ID), true, func(f *feed) { f.ops[o] = true })
		}
	}
	for _, w := range s.e.book.Settings.CareWhen {
		add(s.missing(w.When.ID), true, rule("care"))
	}
	for _, h := range s.e.book.Settings.Hours {
		add(s.missing(h.When.ID), true, rule("hours factor"))
	}
}

// suspectFeeds are the questions of a suspect that an undecided operation hangs on.
func (s *situation) suspectFeeds(k int, undecided []bool, add addFeed) {
	sus := &s.e.suspects[k]
	if s.doubts[k].here == advisor.False || s.net.node[k] < 0 {
		return
	}
	var ops []int
	for _, o := range s.net.needed(sus, s.off) {
		if undecided[o] {
			ops = append(ops, o)
		}
	}
	if len(ops) == 0 {
		return
	}
	note := func(f *feed) {
		f.suspects[k] = true
		mark(f.ops, ops)
	}
	add(s.missing(sus.When.ID), true, note)
	for i := range sus.Bases {
		add(s.missing(sus.Bases[i].When.ID), true, note)
		if s.all(sus.Bases[i].When.ID) == advisor.True {
			break
		}
	}
	for i := range sus.IfLeft {
		add(s.missing(sus.IfLeft[i].When.ID), true, note)
		if s.all(sus.IfLeft[i].When.ID) == advisor.True {
			break
		}
	}
	for _, sign := range sus.signs {
		add(s.signMissing(sign), false, note)
	}
}

// needFeeds are the questions of an undecided operation's needs and variants.
func (s *situation) needFeeds(o int, add addFeed) {
	note := func(f *feed) { f.ops[o] = true }
	for _, n := range s.e.ops[o].needs {
		add(s.missing(n.when), true, note)
	}
	for v := range s.e.ops[o].Variants {
		add(s.missing(s.e.ops[o].Variants[v].When.ID), true, note)
	}
}

// undecided marks the operations whose place in the scope is not settled by
// the two cuts, over every way of the routes.
func (s *situation) undecided() []bool {
	out := make([]bool, len(s.e.ops))
	low, high := s.ends()
	for _, combo := range s.e.combos {
		for _, later := range s.e.combos {
			if !s.passable(combo) || !s.passable(later) {
				continue
			}
			lowNet, highNet := s.draw(low, combo, later), s.draw(high, combo, later)
			s.bound(lowNet, highNet)
			surely, possibly := scope.TwoCuts(s.solver, &lowNet.problem, s.price, &highNet.problem, s.price)
			for o := range out {
				out[o] = out[o] || possibly[o] != surely[o]
			}
		}
	}
	return out
}

// ends gives the figures at the lowest and the highest that is still possible.
func (s *situation) ends() (low, high *figures) {
	low, high = s.figuresAt(lowest), s.figuresAt(highest)
	low.unsure, high.unsure = true, true
	for k := range s.doubts {
		if s.doubts[k].here == advisor.False {
			continue
		}
		lo, hi := s.bounds(k)
		low.chance[k], high.chance[k] = lo, hi
		if s.doubts[k].here != advisor.True {
			low.chance[k] = 0
		}
	}
	return low, high
}

// bounds is the lowest and highest chance that a suspect can come to have.
func (s *situation) bounds(k int) (low, high float64) {
	d, sus := &s.doubts[k], &s.e.suspects[k]
	lowBase, highBase := d.base, d.base
	for i := range sus.Bases {
		t := s.all(sus.Bases[i].When.ID)
		if t == advisor.False {
			continue
		}
		c := sus.Bases[i].Count.Chance()
		lowBase, highBase = min(lowBase, c), max(highBase, c)
		if t == advisor.True {
			break
		}
	}
	if sus.family >= 0 {
		return 0, 1 // rivals may rise or fall as well
	}
	low, _ = belief.Bounds(lowBase, d.evidence, s.e.book.Settings.Trust)
	_, high = belief.Bounds(highBase, d.evidence, s.e.book.Settings.Trust)
	return low, high
}

// bound completes the two networks: benefits at each end less the other end's
// overlaps and costs (what curing later costs rises with the cost that is paid
// now), and only what surely, or possibly, is forced.
func (s *situation) bound(low, high *network) {
	for o := range s.e.ops {
		low.problem.Cost[o], high.problem.Cost[o] = high.problem.Cost[o], low.problem.Cost[o]
		l, h := low.overlap[o], high.overlap[o]
		low.problem.Benefit[o] += l - h
		high.problem.Benefit[o] += h - l
	}
	s.settle(s.forces, low, s.off)
	s.settle(s.forces, high, s.off)
	for o := range s.e.ops {
		f := &s.forces.ops[o]
		if f.outMaybe || s.fitted[o] == advisor.Unknown {
			low.problem.In[o], low.problem.Out[o] = false, true
		}
		if f.possibly && !high.problem.Out[o] {
			high.problem.In[o] = true
		}
	}
}
