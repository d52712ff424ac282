package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/belief"
)

// ends gives the figures at the lowest and the highest that is still possible.
func (a *ahead) ends() (low, high *figures) {
	low, high = a.figuresAt(lowest), a.figuresAt(highest)
	low.unsure, high.unsure = true, true
	for k := range a.doubts {
		if a.doubts[k].here == advisor.False {
			continue
		}
		low.chance[k], high.chance[k] = a.bounds(k, true)
		if a.can(a.e.suspects[k].When.ID, advisor.False) || a.mayLose(k) {
			low.chance[k] = 0
		}
	}
	return low, high
}

// bounds is the lowest and highest chance that a suspect can come to have, by
// further answers and, with looks, by what a look finds. A sign that is known by
// a weaker channel than it may yet be counts as open.
func (a *ahead) bounds(k int, looks bool) (low, high float64) {
	d, sus := &a.doubts[k], &a.e.suspects[k]
	if sus.family >= 0 {
		return 0, 1 // rivals may rise or fall as well
	}
	lowBase, highBase := d.base, d.base
	for _, b := range branches(a.reading, sus.Bases, baseWhen) {
		c := b.Count.Chance()
		lowBase, highBase = min(lowBase, c), max(highBase, c)
	}
	evidence := make([]belief.Evidence, 0, len(d.evidence))
	for i, sign := range sus.signs {
		ev := d.evidence[i]
		moves := slices.ContainsFunc(conditionsOf(sign), a.mayBeSurer)
		if len(sign.Levels) == 0 && ev.Truth.Known() && moves {
			ev.Truth = advisor.Unknown
		}
		if looks || moves || ev.Truth.Known() && len(ev.Open) == 0 {
			evidence = append(evidence, ev)
		}
	}
	low, _ = belief.Bounds(lowBase, evidence, a.e.book.Settings.Trust)
	_, high = belief.Bounds(highBase, evidence, a.e.book.Settings.Trust)
	return low, high
}

// mayLose tells whether every operation that cures a suspect may turn out not
// to be fitted.
func (a *ahead) mayLose(k int) bool {
	for _, o := range a.e.suspects[k].curedBy {
		if !a.off[o] && !a.can(a.e.ops[o].Fitted.ID, advisor.False) {
			return false
		}
	}
	return true
}

// mayMove tells whether an answer can still move a suspect's chance, or that of
// a cause that excludes it.
func (a *ahead) mayMove(k int) bool {
	family := a.e.suspects[k].family
	for j := range a.e.suspects {
		s := &a.e.suspects[j]
		if j != k && (family < 0 || s.family != family) || a.doubts[j].here == advisor.False {
			continue
		}
		ids := []advisor.CondID{s.When.ID}
		for i := range s.Bases {
			ids = append(ids, s.Bases[i].When.ID)
		}
		for _, sign := range s.signs {
			ids = append(ids, conditionsOf(sign)...)
		}
		if slices.ContainsFunc(ids, a.mayBeSurer) {
			return true
		}
	}
	return a.mayLose(k)
}

// mayBeSurer tells whether a condition may yet be known by a stronger channel.
func (a *ahead) mayBeSurer(id advisor.CondID) bool {
	for _, see := range a.sees {
		if see.Can(id, advisor.True) || see.Can(id, advisor.False) {
			return true
		}
	}
	return false
}
