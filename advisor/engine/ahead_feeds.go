package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
)

// feed is what one open question bears on.
type feed struct {
	structure bool
	ops       set
	suspects  set
	rules     []string
}

// feeds finds every open question that can still change a call, a hold, a
// standing rule or a danger: whatever is not decided by the two cuts.
func (a *ahead) feeds() map[int]*feed {
	a.holdFeeds()
	a.standingFeeds()
	a.dangerFeeds()
	a.settingFeeds()
	a.cut()
	touched := a.touched()
	for k, ops := range touched {
		if len(ops) > 0 {
			a.suspectFeeds(k, ops)
		}
	}
	weighs := a.weighing(touched)
	for o := range a.e.ops {
		if a.able[o] && (!a.sure[o] || weighs.has(o) || a.mayDrag(o)) {
			a.needFeeds(o)
		}
	}
	a.wayFeeds(touched)
	a.lookFeeds()
	return a.out
}

// add notes that some questions bear on something.
func (a *ahead) add(qs []int, structure bool, note func(*feed)) {
	for _, q := range qs {
		if !a.may[q] {
			continue
		}
		f := a.out[q]
		if f == nil {
			f = &feed{ops: newSet(len(a.e.ops)), suspects: newSet(len(a.e.suspects))}
			a.out[q] = f
		}
		f.structure = f.structure || structure
		note(f)
	}
}

func ofRule(id string) func(*feed) { return func(f *feed) { f.rules = append(f.rules, id) } }

// waits adds what a condition waits for to become true (or false).
func (a *ahead) waits(see *condition.Outlook, id advisor.CondID, t advisor.Truth, note func(*feed)) {
	if id != 0 {
		a.add(see.Waits(id, t, nil), true, note)
	}
}

// either adds what a condition waits for to be known at all.
func (a *ahead) either(id advisor.CondID, structure bool, note func(*feed)) {
	if id != 0 {
		a.add(a.now().Waits(id, advisor.True, nil), structure, note)
		a.add(a.now().Waits(id, advisor.False, nil), structure, note)
	}
}

// suspectFeeds are the questions of a suspect that undecided operations hang on.
func (a *ahead) suspectFeeds(k int, ops []int) {
	sus := &a.e.suspects[k]
	note := func(f *feed) {
		f.suspects.add(k)
		f.ops.addAll(ops)
	}
	a.waits(a.now(), sus.When.ID, advisor.False, note)
	for _, b := range branches(a.reading, sus.Bases, baseWhen) {
		a.either(b.When.ID, true, note)
	}
	for _, l := range branches(a.reading, sus.IfLeft, lossWhen) {
		a.either(l.When.ID, true, note)
	}
	for _, sign := range sus.signs {
		a.signFeeds(sign, note)
	}
}

// signFeeds are the questions by which a sign may yet be known, or be known by
// a stronger channel than now.
func (a *ahead) signFeeds(sign *advisor.Sign, note func(*feed)) {
	for _, id := range conditionsOf(sign) {
		for stage := range a.sees {
			if id == 0 {
				continue
			}
			a.add(a.sees[stage].Waits(id, advisor.True, nil), false, note)
			a.add(a.sees[stage].Waits(id, advisor.False, nil), false, note)
		}
	}
}

// weighing are the operations whose cost counts in what an undecided suspect
// costs if it is cured later.
func (a *ahead) weighing(touched [][]int) set {
	out := newSet(len(a.e.ops))
	for k, ops := range touched {
		if len(ops) > 0 {
			out.addAll(a.cures[k])
		}
	}
	return out
}

// mayDrag tells whether an operation, itself decided, may bring an undecided one
// into the scope by a need that is not known yet.
func (a *ahead) mayDrag(o int) bool {
	return slices.ContainsFunc(a.e.ops[o].needs, func(n need) bool {
		return n.when != 0 && !a.all(n.when).Known() && slices.ContainsFunc(a.e.byAnyWay(n), func(j int) bool { return !a.sure[j] })
	})
}

// needFeeds are the questions of an operation's needs and variants.
func (a *ahead) needFeeds(o int) {
	note := func(f *feed) { f.ops.add(o) }
	for _, n := range a.e.ops[o].needs {
		a.waits(a.now(), n.when, advisor.False, note)
	}
	for v := range a.e.ops[o].Variants {
		a.either(a.e.ops[o].Variants[v].When.ID, true, note)
	}
}

func (s *situation) feedNames(f *feed) (feeds, suspects []string) {
	for _, o := range f.ops.list() {
		feeds = append(feeds, s.e.ops[o].ID)
	}
	feeds = append(feeds, f.rules...)
	slices.Sort(feeds)
	for _, k := range f.suspects.list() {
		suspects = append(suspects, s.e.suspects[k].ID)
	}
	return slices.Compact(feeds), suspects
}
