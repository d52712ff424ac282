// Package belief turns signs into chances: the odds form of Bayes' rule, with
// hearsay discounted, echoes counted once, and contradictions said.
//
// All arithmetic is products and quotients of float64 in the order given, each
// rounded by an explicit conversion so that every processor agrees.
package belief

import (
	"slices"

	"longstand/advisor"
)

// Evidence is one sign of one suspect as it stands.
type Evidence struct {
	Sign  int    // number of the sign; the order of ids
	Group string // signs of a group echo one another; "" for none
	// A and B are the chances of showing it with the fault and without. For a
	// sign with levels they come from Levels, and Truth with them.
	A, B     float64
	Truth    advisor.Truth
	How      advisor.Channel
	Decisive bool
	// Open are the levels still possible of a sign with levels that is not
	// settled. Only Bounds reads them.
	Open []Level
}

// Level is the chance of one level with the fault and without.
type Level struct{ A, B float64 }

// noise is less than any count of cars can leave over.
const noise = 1e-9

// Line is what one piece of evidence does to the odds.
type Line struct {
	Sign  int
	Ratio float64 // what the odds are multiplied by, after the channel
	// Counted is false for what is not known, for the lesser echoes of a group,
	// and for decisive signs that contradict one another.
	Counted bool
}

// Report is the ratio by which hearing of a sign multiplies the odds, when it is
// told by a channel that says yes with chance Hit if it is so and FalseAlarm if
// not: (h a + f(1-a)) / (h b + f(1-b)) when told so, the same of the denials when
// told not so, 1 when not known (cascaded inference, Schum and Martin 1982). It
// is +Inf or 0 for a decisive sign and NaN for one that nothing can show.
func Report(a, b float64, t advisor.Truth, trust advisor.Trust) (ratio float64) {
	h, f := trust.Hit, trust.FalseAlarm
	switch t {
	case advisor.True:
	case advisor.False:
		h, f = 1-h, 1-f
	default:
		return 1
	}
	with := float64(h*a) + float64(f*(1-a))
	without := float64(h*b) + float64(f*(1-b))
	return with / without
}

// trustOf is the trust in a channel; what came by none counts as it is.
func trustOf(how advisor.Channel, trust *[5]advisor.Trust) advisor.Trust {
	if how < 0 || int(how) >= len(trust) {
		return advisor.Trust{Hit: 1}
	}
	return trust[how]
}

// Levels sums up a sign with exclusive levels: the chance, with the fault and
// without, that the level is one of those still possible. t is unknown while
// all are possible (the ratio is 1), else true. open, appended to buf, lists the
// levels that it may still turn out to be; it is empty once one is known.
//
// Levels that do not add up to 1 leave a last one, "none of these"; smoothed
// counts that add up to more are shared out.
func Levels(levels []Level, truths []advisor.Truth, buf []Level) (a, b float64, t advisor.Truth, open []Level) {
	var sumA, sumB float64
	for _, l := range levels {
		sumA += l.A
		sumB += l.B
	}
	allA, allB := max(sumA, 1), max(sumB, 1)
	open = buf[:0]
	for i, l := range levels {
		share := Level{l.A / allA, l.B / allB}
		if truths[i] == advisor.True {
			return share.A, share.B, advisor.True, buf[:0]
		}
		if truths[i] == advisor.Unknown {
			open = append(open, share)
			a, b = a+share.A, b+share.B
		}
	}
	rest := Level{1 - sumA/allA, 1 - sumB/allB}
	a, b = a+rest.A, b+rest.B
	if rest.A > noise && rest.B > noise {
		open = append(open, rest)
	}
	switch {
	case len(open) == 0, !slices.Contains(truths, advisor.False): // it says nothing
		return 1, 1, advisor.Unknown, open
	case len(open) == 1:
		return a, b, advisor.True, buf[:0]
	}
	return a, b, advisor.True, open
}
