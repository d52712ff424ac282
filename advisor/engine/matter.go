package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
)

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
	for o := range a.e.ops {
		if a.able[o] != a.sure[o] {
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
			f = &feed{ops: map[int]bool{}, suspects: map[int]bool{}, rules: map[string]bool{}}
			a.out[q] = f
		}
		f.structure = f.structure || structure
		note(f)
	}
}

func ofRule(id string) func(*feed) { return func(f *feed) { f.rules[id] = true } }

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

// holdFeeds are the questions that can still lift a hold or show that it does
// not concern the car. A hold that only an inspection or work can lift stands
// whatever is answered at the car's side.
func (a *ahead) holdFeeds() {
	for i := range a.e.book.Holds {
		h := &a.e.book.Holds[i]
		if a.upTo(1, h.When.ID) == advisor.False || h.Until.Given() && a.upTo(0, h.Until.ID) == advisor.True {
			continue
		}
		a.waits(a.sees[1], h.When.ID, advisor.False, ofRule(h.ID))
		if h.Until.Given() {
			a.waits(a.sees[0], h.Until.ID, advisor.True, ofRule(h.ID))
		}
	}
}

// standingFeeds are the questions by which a standing rule may yet act. One for
// which the car has no operation never does.
func (a *ahead) standingFeeds() {
	for i := range a.e.book.Standing {
		r := &a.e.book.Standing[i]
		if !slices.ContainsFunc(a.e.operationsOf(r.Operations), func(o int) bool { return !a.off[o] }) {
			continue
		}
		a.waits(a.now(), r.When.ID, advisor.True, ofRule(r.ID))
	}
}

// dangerFeeds are the questions by which a danger may yet be found sound, or
// bad, or not to concern the car; and those of what the car has.
func (a *ahead) dangerFeeds() {
	for k := range a.e.suspects {
		sus := &a.e.suspects[k]
		if sus.Danger == nil || a.doubts[k].here == advisor.False {
			continue
		}
		note := func(f *feed) { f.suspects[k] = true }
		a.waits(a.now(), sus.When.ID, advisor.False, note)
		if bad, _ := a.mayBe(k); bad || a.forces.looked[k] == advisor.False {
			a.waits(a.now(), sus.When.ID, advisor.True, note)
		}
		if good := sus.Danger.Good.ID; a.forces.looked[k] == advisor.Unknown {
			a.waits(a.sees[0], good, advisor.True, note)
			a.waits(a.now(), good, advisor.False, note)
		}
	}
	for o := range a.e.ops {
		a.waits(a.now(), a.e.ops[o].Fitted.ID, advisor.False, func(f *feed) { f.ops[o] = true })
	}
}

// settingFeeds are the questions of the price and of the hours.
func (a *ahead) settingFeeds() {
	if a.c.Care == "" {
		for _, w := range a.e.book.Settings.CareWhen {
			a.waits(a.now(), w.When.ID, advisor.True, ofRule(advisor.FeedsCare))
			if a.all(w.When.ID) == advisor.True {
				break
			}
		}
	}
	for _, h := range a.e.book.Settings.Hours {
		a.either(h.When.ID, true, ofRule(advisor.FeedsHours))
		if a.all(h.When.ID) == advisor.True {
			break
		}
	}
}

// suspectFeeds are the questions of a suspect that undecided operations hang on.
func (a *ahead) suspectFeeds(k int, ops []int) {
	sus := &a.e.suspects[k]
	note := func(f *feed) {
		f.suspects[k] = true
		mark(f.ops, ops)
	}
	a.waits(a.now(), sus.When.ID, advisor.False, note)
	for i := range sus.Bases {
		a.either(sus.Bases[i].When.ID, true, note)
		if a.all(sus.Bases[i].When.ID) == advisor.True {
			break
		}
	}
	for i := range sus.IfLeft {
		a.either(sus.IfLeft[i].When.ID, true, note)
		if a.all(sus.IfLeft[i].When.ID) == advisor.True {
			break
		}
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

func conditionsOf(sign *advisor.Sign) []advisor.CondID {
	if len(sign.Levels) == 0 {
		return []advisor.CondID{sign.When.ID}
	}
	var out []advisor.CondID
	for i := range sign.Levels {
		out = append(out, sign.Levels[i].When.ID)
	}
	return out
}

// needFeeds are the questions of an undecided operation's needs and variants.
func (a *ahead) needFeeds(o int) {
	note := func(f *feed) { f.ops[o] = true }
	for _, n := range a.e.ops[o].needs {
		a.waits(a.now(), n.when, advisor.False, note)
	}
	for v := range a.e.ops[o].Variants {
		a.either(a.e.ops[o].Variants[v].When.ID, true, note)
	}
}
