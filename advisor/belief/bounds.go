package belief

import (
	"math"

	"longstand/advisor"
)

// outlook is what a suspect's signs may still bring: the lowest and highest
// product of ratios with the extreme ones left aside, and whether a decisive sign
// shows the fault or its absence, or may yet.
type outlook struct {
	low, high     float64
	yes, no       bool
	mayYes, mayNo bool
}

// Bounds gives the lowest and highest chance that the suspect can still have,
// whatever the signs that are not settled turn out to be, by whatever channel,
// and if they stay unknown. Of a group only the strongest counts, as ever. Where
// decisive signs may yet speak, or contradict one another, the bounds are 0 and 1
// at once. Bounds that differ are a hair wider than exact, for rounding's sake.
func Bounds(base float64, ev []Evidence, trust [5]advisor.Trust) (low, high float64) {
	o := outlook{low: 1, high: 1}
	for i := range ev {
		if firstOfGroup(i, ev) {
			o.addGroup(i, ev, &trust)
		}
	}
	const hair = 1e-12
	low, high = Chance(base, o.low), Chance(base, o.high)
	if low != high {
		low, high = low*(1-hair), min(1, high*(1+hair))
	} else { // nothing can change it: to the last bit the chance as it stands
		var room [32]Line
		lines := room[:]
		if len(ev) > len(room) {
			lines = make([]Line, len(ev))
		}
		ratio, _ := Ratio(lines, ev, &trust)
		low = Chance(base, ratio)
		high = low
	}
	switch {
	case o.mayNo, o.no && !o.yes:
		low = 0
	case o.yes && !o.no:
		low = 1
	}
	switch {
	case o.mayYes, o.yes && !o.no:
		high = 1
	case o.no && !o.yes:
		high = 0
	}
	return low, high
}

func firstOfGroup(i int, ev []Evidence) bool {
	for j := range i {
		if ev[i].Group != "" && ev[j].Group == ev[i].Group {
			return false
		}
	}
	return true
}

// open tells whether a sign may still turn out otherwise than it stands.
func (e *Evidence) open() bool { return !e.Truth.Known() || len(e.Open) > 0 }

// addGroup multiplies in the group that starts at i. The strongest settled sign
// stands unless one that is as strong or stronger takes its place.
func (o *outlook) addGroup(i int, ev []Evidence, trust *[5]advisor.Trust) {
	best, stands := -1, 1.0
	for j := i; j < len(ev); j++ {
		e := &ev[j]
		if !sameGroup(i, j, ev) || e.open() {
			continue
		}
		r := Report(e.A, e.B, e.Truth, trustOf(e.How, trust))
		o.yes = o.yes || math.IsInf(r, 1) || r != r
		o.no = o.no || r == 0 || r != r
		if extreme(r) {
			continue
		}
		if d := strength(r) - strength(stands); best < 0 || d > 0 || d == 0 && before(e, &ev[best]) {
			best, stands = j, r
		}
	}
	low, high := stands, stands
	for j := i; j < len(ev); j++ {
		if !sameGroup(i, j, ev) || !ev[j].open() {
			continue
		}
		ev[j].outcomes(trust, func(r float64) {
			o.mayYes = o.mayYes || math.IsInf(r, 1) || r != r
			o.mayNo = o.mayNo || r == 0 || r != r
			if !extreme(r) && strength(r) >= strength(stands) {
				low, high = min(low, r), max(high, r)
			}
		})
	}
	o.low, o.high = float64(o.low*low), float64(o.high*high)
}

func sameGroup(i, j int, ev []Evidence) bool {
	return i == j || ev[i].Group != "" && ev[i].Group == ev[j].Group
}

// outcomes tells every ratio that an open sign may yet have: true or false, or
// one of its levels, by each channel, and its ratio as it stands.
func (e *Evidence) outcomes(trust *[5]advisor.Trust, tell func(ratio float64)) {
	tell(Report(e.A, e.B, e.Truth, trustOf(e.How, trust)))
	for _, c := range trust {
		for _, l := range e.Open {
			tell(Report(l.A, l.B, advisor.True, c))
		}
		if len(e.Open) == 0 {
			tell(Report(e.A, e.B, advisor.True, c))
			tell(Report(e.A, e.B, advisor.False, c))
		}
	}
}
