package engine

import (
	"slices"

	"longstand/advisor"
)

// called is the verdict on one operation with what led to it.
type called struct {
	call   advisor.Call
	forced string
	by     string
	reason string
	maybe  float64 // look first: chance of the outcomes that have it in the scope
	looks  []string
}

// calls gives every operation the first call that holds.
func (s *situation) calls(looks []looked) []called {
	out := make([]called, len(s.e.ops))
	needed := s.neededByForce()
	for o := range out {
		out[o] = s.call(o, needed[o], looks)
	}
	s.behindDoors(out)
	return out
}

// behindDoors lets work follow what it needs: what waits for a look is opened
// only if the look says so, and what lies behind it is done only then.
func (s *situation) behindDoors(calls []called) {
	undecided := make([]bool, len(calls))
	for o := range calls {
		undecided[o] = calls[o].call == advisor.LookFirst
	}
	for o := range calls {
		if c := &calls[o]; c.forced != "" || c.call != advisor.Do && c.call != advisor.DoOpen {
			continue
		}
		for _, j := range s.net.reach[o] {
			if undecided[j] {
				calls[o] = called{call: advisor.LookFirst, maybe: calls[j].maybe, looks: calls[j].looks}
				break
			}
		}
	}
}

func (s *situation) call(o int, needed string, looks []looked) called {
	opened := s.doors.by[o]
	f := &s.forces.ops[o]
	p := &s.net.problem
	switch {
	case s.off[o]:
		return called{call: advisor.NotFitted, reason: "The car has none."}
	case s.done[o], p.Out[o]:
		return called{call: advisor.Leave, forced: f.why, by: f.by, reason: f.because}
	case s.member[o] && s.containedIn(o) != "" && !f.in:
		return called{call: advisor.Leave, by: s.containedIn(o), reason: "Contained in " + s.containedIn(o) + "."}
	case p.In[o] && f.in:
		return called{call: advisor.Do, forced: f.why, by: f.by, reason: f.because}
	case needed != "":
		return called{call: advisor.Do, forced: "needed", by: needed, reason: "Needed for: " + s.e.ops[s.e.operation[needed]].Name + "."}
	case opened != "":
		return called{call: advisor.Do, forced: "to look", by: opened, reason: "Opened to look: " + s.e.looks[s.e.look[opened]].Name + "."}
	}
	maybe, by := s.settledBy(o, looks)
	danger := s.unseenDanger(o)
	switch {
	case len(by) > 0 || danger != "" && !s.member[o]:
		c := called{call: advisor.LookFirst, maybe: maybe, looks: by}
		if danger != "" {
			c.by = danger
		}
		return c
	case s.member[o] && s.whileOpen(o):
		return called{call: advisor.DoOpen}
	case s.member[o]:
		return called{call: advisor.Do}
	}
	return called{call: advisor.Leave}
}

// neededByForce names, for each operation, a forced one that needs it.
func (s *situation) neededByForce() []string {
	out := make([]string, len(s.e.ops))
	for o := range s.e.ops {
		if !s.net.problem.In[o] || s.doors.by[o] != "" && !s.forces.ops[o].in {
			continue
		}
		for _, j := range s.net.reach[o] {
			if j != o && out[j] == "" && !s.done[j] {
				out[j] = s.e.ops[o].ID
			}
		}
	}
	return out
}

// unseenDanger names a danger that the operation cures and nobody has looked
// at, or whose decisive signs contradict one another.
func (s *situation) unseenDanger(o int) string {
	for _, k := range s.e.ops[o].suspects {
		if s.doubts[k].here == advisor.False {
			continue
		}
		if s.e.suspects[k].Danger != nil && s.forces.sound[k] == advisor.Unknown || s.doubts[k].conflict {
			return s.e.suspects[k].ID
		}
	}
	return ""
}

// containedIn names the upgrade in the scope that contains the operation.
func (s *situation) containedIn(o int) string {
	for _, i := range s.e.ops[o].upgrades {
		if s.member[i] {
			return s.e.ops[i].ID
		}
	}
	return ""
}

// whileOpen tells whether an operation of the scope is there because its
// access is: alone it would not pay all of it, and with it struck off all its
// access would still be in the scope.
func (s *situation) whileOpen(o int) bool {
	access := s.accessOf(o)
	if len(access) == 0 {
		return false
	}
	var wish, cost int64
	for _, k := range s.e.ops[o].suspects {
		wish += s.net.benefit[k]
	}
	for _, a := range access {
		cost += s.figures.cost[a]
	}
	if s.price.Num*wish-s.price.Den*(s.figures.cost[o]+cost) >= 0 {
		return false
	}
	p := s.net.problem
	p.Out = slices.Clone(p.Out)
	p.Out[o] = true
	c := s.solver.Best(&p, s.price)
	for _, a := range access {
		if !c.Member[a] {
			return false
		}
	}
	return true
}

// accessOf lists the access operations that an operation requires.
func (s *situation) accessOf(o int) []int {
	var out []int
	for _, j := range s.net.reach[o] {
		if j != o && s.e.ops[j].Access && !s.done[j] {
			out = append(out, j)
		}
	}
	return out
}
