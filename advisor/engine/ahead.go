package engine

import (
	"longstand/advisor"
	"longstand/advisor/condition"
)

// ahead is a case looked at for what the rest of the walk-round can still make
// of it. Questions of the walk-round that are not asked may be answered in any
// way; what only an inspection answers stays open, as it will at the interview's
// end, though looks are weighed by what they may find.
type ahead struct {
	*situation
	may    []bool // by question: it may still be asked
	sees   [advisor.Stages]*condition.Outlook
	cures  [][]int // by suspect: the operations that curing it can need, by any way
	sure   []bool  // by operation: in every scope that can still be
	able   []bool  // by operation: in some scope that can still be
	firm   []bool  // by operation: surely forced in, or needed by what is
	looks  []int   // that can be worth their minutes
	laters []later // every choice of ways for what is left
	out    map[int]*feed
}

// lookAhead sets up what the two cuts need; it chooses no scope itself.
func (e *Engine) lookAhead(c *advisor.Case) *ahead {
	r := e.read(c, true)
	a := &ahead{may: make([]bool, len(e.book.Questions)), out: map[int]*feed{}}
	for q := range a.may {
		inspection := e.book.Questions[q].Station == "inspection"
		a.may[q] = !r.asked[q] && !inspection
		for _, v := range r.views {
			if inspection && !r.asked[q] {
				v.SetKnown(q, advisor.False) // nobody asks it at the car's side
			}
		}
	}
	for stage, v := range r.views {
		a.sees[stage] = v.Outlook(a.may)
	}
	a.situation = r.begin(c)
	a.forceAhead()
	return a
}

// now is the outlook over every channel.
func (a *ahead) now() *condition.Outlook { return a.sees[advisor.Stages-1] }

// can tells whether a condition may yet become true (or false), over every channel.
func (a *ahead) can(id advisor.CondID, t advisor.Truth) bool { return id != 0 && a.now().Can(id, t) }

// forceAhead replaces what the reading says may still be forced, in or out, by
// what answers to the open questions can bring about.
func (a *ahead) forceAhead() {
	f := a.forces
	for o := range f.ops {
		f.ops[o].possibly, f.ops[o].outMaybe = false, a.can(a.e.ops[o].Fitted.ID, advisor.False)
	}
	for i := range a.e.book.Standing {
		r := &a.e.book.Standing[i]
		if !a.can(r.When.ID, advisor.True) {
			continue
		}
		for _, o := range a.e.standing[i] {
			f.ops[o].possibly = f.ops[o].possibly || !r.Out || f.ops[o].in
			f.ops[o].outMaybe = f.ops[o].outMaybe || r.Out
		}
	}
	for k := range a.e.suspects {
		if a.e.suspects[k].Danger == nil || a.doubts[k].here == advisor.False {
			continue
		}
		bad, good := a.mayBe(k)
		for _, o := range a.e.suspects[k].curedBy {
			f.ops[o].possibly = f.ops[o].possibly || bad
			f.ops[o].outMaybe = f.ops[o].outMaybe || f.ops[o].why == "danger" && a.can(a.e.suspects[k].When.ID, advisor.False)
		}
		for o := range a.e.ops {
			for _, l := range a.e.ops[o].looks {
				if l == k {
					f.ops[o].outMaybe = f.ops[o].outMaybe || f.ops[o].why == "to look" && (bad || good)
				}
			}
		}
	}
}

// mayBe tells whether a danger may yet be found bad, and whether it may be found
// sound or turn out not to concern the car.
func (a *ahead) mayBe(k int) (bad, good bool) {
	sus := &a.e.suspects[k]
	id := sus.Danger.Good.ID
	turnsBad := a.can(id, advisor.False)
	bad = turnsBad && a.doubts[k].here != advisor.False ||
		a.forces.sound[k] == advisor.False && a.doubts[k].here == advisor.Unknown
	return bad, id != 0 && a.sees[0].Can(id, advisor.True) || a.can(sus.When.ID, advisor.False)
}
