package engine

import (
	"cmp"
	"slices"
)

// rank orders looks: those that lift holds first, by the earliest act they free,
// then dangers, then those for which the shop has the tools, then by net; but
// none before a look that must come first.
func rank(looks []looked) {
	slices.SortStableFunc(looks, func(a, b looked) int {
		return cmp.Or(last(a.advised, b.advised), cmp.Compare(a.lifts, b.lifts),
			last(len(a.advice.Dangers) > 0, len(b.advice.Dangers) > 0),
			last(len(a.advice.Lacks) == 0, len(b.advice.Lacks) == 0),
			cmp.Compare(b.net, a.net), cmp.Compare(a.advice.ID, b.advice.ID))
	})
	for at := 0; at < len(looks); {
		first := at + 1 + slices.IndexFunc(looks[at+1:], func(l looked) bool {
			return l.advised && slices.Contains(looks[at].advice.Before, l.advice.ID)
		})
		if first == at || !looks[at].advised {
			at++
			continue
		}
		ahead := looks[first]
		copy(looks[at+1:first+1], looks[at:first])
		looks[at] = ahead
	}
	for i := range looks {
		if looks[i].advised {
			looks[i].advice.Rank = i + 1
		}
	}
}

// last orders true before false.
func last(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}
