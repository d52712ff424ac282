package engine

import (
	"slices"

	"longstand/advisor"
)

// holdFeeds are the questions that can still lift a hold or show that it does
// not concern the car. A hold that only an inspection or work can lift stands
// whatever is answered at the car's side.
func (a *ahead) holdFeeds() {
	for i := range a.e.book.Holds {
		h := &a.e.book.Holds[i]
		if !a.stands(h) {
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
		if !slices.ContainsFunc(a.e.standing[i], func(o int) bool { return !a.off[o] }) {
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
		note := func(f *feed) { f.suspects.add(k) }
		a.waits(a.now(), sus.When.ID, advisor.False, note)
		if bad, _ := a.mayBe(k); bad || a.forces.sound[k] == advisor.False {
			a.waits(a.now(), sus.When.ID, advisor.True, note)
		}
		if good := sus.Danger.Good.ID; a.forces.sound[k] == advisor.Unknown {
			a.waits(a.sees[0], good, advisor.True, note)
			a.waits(a.now(), good, advisor.False, note)
		}
	}
	for o := range a.e.ops {
		a.waits(a.now(), a.e.ops[o].Fitted.ID, advisor.False, func(f *feed) { f.ops.add(o) })
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
