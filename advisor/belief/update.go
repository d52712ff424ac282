package belief

import (
	"math"

	"longstand/advisor"
)

// Update gives the chance of a suspect from its base chance and the evidence in
// order of id, and what each piece of evidence did. When decisive signs
// contradict one another, conflict is true and the chance is the one without
// them. The chance is never NaN for a base within 0 to 1. The ratio of a line
// may be +Inf or 0.
func Update(base float64, ev []Evidence, trust [5]advisor.Trust) (p float64, lines []Line, conflict bool) {
	lines = make([]Line, len(ev))
	odds, conflict := Ratio(lines, ev, &trust)
	return Chance(base, odds), lines, conflict
}

// Ratio multiplies up the evidence in order and writes its lines to dst, which
// has room for all. It is +Inf or 0 when a decisive sign settles the matter.
func Ratio(dst []Line, ev []Evidence, trust *[5]advisor.Trust) (ratio float64, conflict bool) {
	yes, no := false, false
	for i := range ev {
		e := &ev[i]
		r := Report(e.A, e.B, e.Truth, trustOf(e.How, trust))
		dst[i] = Line{Sign: e.Sign, Ratio: r}
		yes = yes || math.IsInf(r, 1) || r != r
		no = no || r == 0 || r != r
	}
	conflict = yes && no
	ratio = 1
	for i := range ev {
		if !counts(i, ev, dst, conflict) || echoed(i, ev, dst, conflict) {
			continue
		}
		dst[i].Counted = true
		if r := dst[i].Ratio; !extreme(r) {
			ratio = float64(ratio * r)
		}
	}
	for i := range dst {
		if r := dst[i].Ratio; r != r {
			dst[i].Ratio = 1
		}
	}
	switch {
	case conflict || !yes && !no:
		return ratio, conflict
	case yes:
		return math.Inf(1), false
	}
	return 0, false
}

// Chance multiplies the odds of a base chance by a ratio.
func Chance(base, ratio float64) float64 {
	switch with := float64(base * ratio); {
	case math.IsInf(ratio, 1):
		return 1
	case with == 0:
		return 0
	default:
		return with / (with + (1 - base))
	}
}

// extreme tells of a ratio that makes the chance 0 or 1 (or is neither).
func extreme(ratio float64) bool { return ratio == 0 || ratio != ratio || math.IsInf(ratio, 1) }

// counts tells whether a piece of evidence is known and not set aside.
func counts(i int, ev []Evidence, lines []Line, conflict bool) bool {
	return ev[i].Truth.Known() && !(conflict && extreme(lines[i].Ratio))
}

// strength orders ratios by how far they move the odds either way, which is the
// size of their decibans without a logarithm.
func strength(ratio float64) float64 { return max(ratio, 1/ratio) }

// echoed tells whether evidence i is a lesser echo: another sign of its group is
// stronger after the channel, or as strong and better known, or of lower id.
func echoed(i int, ev []Evidence, lines []Line, conflict bool) bool {
	if ev[i].Group == "" {
		return false
	}
	own := strength(lines[i].Ratio)
	for j := range ev {
		if j == i || ev[j].Group != ev[i].Group || !counts(j, ev, lines, conflict) {
			continue
		}
		other := strength(lines[j].Ratio)
		if other > own || other == own && before(&ev[j], &ev[i]) {
			return true
		}
	}
	return false
}

// before orders evidence that is as strong: the better known, then the lower id.
func before(a, b *Evidence) bool {
	if a.How != b.How {
		return a.How < b.How
	}
	return a.Sign < b.Sign
}

// Decibans is ten times the logarithm of a ratio, for display only; a decisive
// ratio shows as 99 either way.
func Decibans(ratio float64) float64 {
	return min(99, max(-99, 10*math.Log10(ratio)))
}
