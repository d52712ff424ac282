package engine

import (
	"slices"

	"longstand/advisor"
)

// wayFeeds are the questions by which another way may be taken. What is left is
// reckoned to be cured later by the ways that cost least for all suspects, so a
// suspect that bears on no undecided operation itself may still tip the choice.
func (a *ahead) wayFeeds(touched [][]int) {
	for r := range a.e.routes {
		for w := range a.e.routes[r].Ways {
			a.waits(a.now(), a.e.routes[r].Ways[w].When.ID, advisor.False, ofRule(a.e.routes[r].ID))
		}
	}
	chances := a.chancesAhead(touched)
	for i, p := range a.laters {
		for _, q := range a.laters[:i] {
			for _, k := range a.undecidedBetween(p, q, chances) {
				a.suspectFeeds(k, nil)
			}
		}
	}
}

// later is one choice of ways for what is left: by operation, the suspects whose
// cure would need it.
type later struct{ needing [][]int }

// laterBy takes down who needs what by the ways that a network goes.
func (a *ahead) laterBy(net *network) later {
	return later{a.neededFor(net.needsLater, func(k int) bool { return a.doubts[k].here != advisor.False })}
}

// span is the lowest and highest chance of a suspect.
type span struct{ low, high float64 }

// chancesAhead gives each suspect's chance: as it stands where its questions are
// asked anyway, since it is settled by the time nothing is left to ask, else
// between what the walk-round can still make of it.
func (a *ahead) chancesAhead(touched [][]int) []span {
	out := make([]span, len(a.doubts))
	for k := range out {
		switch d := &a.doubts[k]; {
		case d.here == advisor.False:
		case len(touched[k]) > 0 || !a.mayMove(k):
			out[k] = span{d.chance, d.chance}
		default:
			low, high := a.bounds(k, false)
			if a.can(a.e.suspects[k].When.ID, advisor.False) || a.mayLose(k) {
				low = 0
			}
			out[k] = span{low, high}
		}
	}
	return out
}

// undecidedBetween compares what is left at two choices of ways: they differ, at
// each operation, by its cost times the chance that any suspect needs it. When
// one is cheaper whatever is answered nothing is undecided; else all suspects
// count that need an operation which not the same suspects need by both.
func (a *ahead) undecidedBetween(p, q later, chances []span) []int {
	var low, high float64
	var tip []int
	for o := range a.e.ops {
		one, two := p.needing[o], q.needing[o]
		if slices.Equal(one, two) {
			continue
		}
		inBoth := noneOf(chances, one, func(k int) bool { return slices.Contains(two, k) })
		onlyOne := noneOf(chances, one, func(k int) bool { return !slices.Contains(two, k) })
		onlyTwo := noneOf(chances, two, func(k int) bool { return !slices.Contains(one, k) })
		least, most := onlyTwo.low-onlyOne.high, onlyTwo.high-onlyOne.low
		cost := float64(a.figures.cost[o])
		low += cost * min(inBoth.low*least, inBoth.high*least)
		high += cost * max(inBoth.low*most, inBoth.high*most)
		tip = append(append(tip, one...), two...)
	}
	if low > 0 || high < 0 || low == high {
		return nil
	}
	slices.Sort(tip)
	return slices.Compact(tip)
}

// noneOf is the chance that no picked suspect is there, lowest and highest.
func noneOf(chances []span, suspects []int, picked func(k int) bool) span {
	out := span{1, 1}
	for _, k := range suspects {
		if picked(k) {
			out = span{float64(out.low * (1 - chances[k].high)), float64(out.high * (1 - chances[k].low))}
		}
	}
	return out
}
