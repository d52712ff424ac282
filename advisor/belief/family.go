package belief

import "math"

// ExactlyOne gives the chances of causes that exclude one another: each in
// proportion to its base times its ratio. Bases that add up to less than 1 leave
// the chance that it is none of them.
func ExactlyOne(bases, ratios []float64) (p []float64, none float64) {
	p = make([]float64, len(bases))
	none, _ = ExactlyOneInto(p, bases, ratios)
	return p, none
}

// ExactlyOneInto is ExactlyOne with the chances written to dst. A ratio of +Inf
// makes its cause sure. When two are sure, or when all is ruled out, conflict is
// true and every ratio that is +Inf or 0 counts as 1.
func ExactlyOneInto(dst, bases, ratios []float64) (none float64, conflict bool) {
	rest, sure, certain := 1.0, -1, 0
	for j, b := range bases {
		rest -= b
		if math.IsInf(ratios[j], 1) {
			sure = j
			certain++
		}
	}
	rest = max(0, rest)
	if certain == 1 {
		clear(dst)
		dst[sure] = 1
		return 0, false
	}
	if certain == 0 {
		if none, ok := share(dst, bases, ratios, rest, false); ok {
			return none, false
		}
	}
	none, _ = share(dst, bases, ratios, rest, true)
	return none, true
}

// share writes base x ratio to dst, scaled to add up to 1 with the rest, and
// gives the share of the rest. Mild takes extreme ratios as 1. Not ok when there
// is nothing to share.
func share(dst, bases, ratios []float64, rest float64, mild bool) (none float64, ok bool) {
	total := rest
	for j, b := range bases {
		r := ratios[j]
		if mild && extreme(r) {
			r = 1
		}
		dst[j] = float64(b * r)
		total += dst[j]
	}
	if total == 0 {
		return 1, false
	}
	for j := range dst {
		dst[j] /= total
	}
	return rest / total, true
}
