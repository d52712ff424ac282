package engine

import (
	"iter"
	"math"

	"longstand/advisor"
)

// edge picks which end of what is still possible a figure is taken at.
type edge int

const (
	asNow   edge = iota // what counts in the advice: the dearest still possible
	lowest              // the least it can turn out to be
	highest             // the most
)

// bill is the cost of one operation in a case.
type bill struct {
	cost         int64 // own mean in minor units, risks included, at least 1
	hours, parts advisor.Three
	factor       float64
	variant      int // index of the variant picked, or -1
	riskMean     int64
}

// further tells whether a figure lies further towards an edge than another.
func further[T int64 | float64](at edge, x, than T) bool {
	if at == lowest {
		return x < than
	}
	return x > than
}

// branches goes through those of an ordered list that may still be the one: not
// known to be false, up to the first that is known to be true.
func branches[T any](r *reading, list []T, when func(*T) *advisor.Condition) iter.Seq2[int, *T] {
	return func(yield func(int, *T) bool) {
		for i := range list {
			t := r.all(when(&list[i]).ID)
			if t != advisor.False && !yield(i, &list[i]) || t == advisor.True {
				return
			}
		}
	}
}

// hoursFactor is the shop's factor for rusted fixings, of the branches that may
// still be the one.
func (r *reading) hoursFactor(at edge) float64 {
	factor, some := 1.0, false
	for _, h := range branches(r, r.e.book.Settings.Hours, func(h *advisor.HoursFactor) *advisor.Condition { return &h.When }) {
		if !some || further(at, h.Factor, factor) {
			factor, some = h.Factor, true
		}
	}
	return factor
}

// bill prices an operation: the variants still possible are each priced and
// the dearest (or, at the lowest edge, the cheapest) counts. As it stands it is
// possible too until a variant is known to be the one.
func (r *reading) bill(o int, factor float64, at edge) bill {
	op := &r.e.ops[o]
	if op.NoFactor {
		factor = 1
	}
	best, some, settled := bill{}, false, false
	for v, variant := range branches(r, op.Variants, func(v *advisor.Variant) *advisor.Condition { return &v.When }) {
		if b := r.priced(o, factor, v); !some || further(at, b.cost, best.cost) {
			best, some = b, true
		}
		settled = r.all(variant.When.ID) == advisor.True
	}
	if settled {
		return best
	}
	if plain := r.priced(o, factor, -1); !some || further(at, plain.cost, best.cost) {
		return plain
	}
	return best
}

// priced is the bill of an operation done by one of its variants (-1: as it stands).
func (r *reading) priced(o int, factor float64, variant int) bill {
	op := &r.e.ops[o]
	b := bill{hours: op.Hours, parts: op.Parts, factor: factor, variant: variant}
	if variant >= 0 {
		v := &op.Variants[variant]
		if v.Hours != nil {
			b.hours = *v.Hours
		}
		if v.Parts != nil {
			b.parts = *v.Parts
		}
	}
	for _, k := range op.Risks {
		b.riskMean += round(k.Count.Raw() * float64(k.Cost))
	}
	b.cost = max(1, round(r.money(b.hours.Mean(), factor, b.parts.Mean()))+b.riskMean)
	return b
}

// money is hours x factor x rate + parts, in minor units, not yet rounded.
func (r *reading) money(hours, factor, parts float64) float64 {
	s := &r.e.book.Settings
	return float64(float64(hours*factor)*float64(s.Rate)) + float64(parts*r.e.minor())
}

// minor is how many minor units make one of the currency.
func (e *Engine) minor() float64 { return math.Pow10(e.book.Settings.MinorDigits) }

// minutesCost is what so many minutes of the shop cost.
func (e *Engine) minutesCost(minutes int) int64 {
	return round(float64(minutes) * float64(e.book.Settings.Rate) / 60)
}

// round rounds half up to whole minor units.
func round(x float64) int64 { return int64(math.Floor(x + 0.5)) }

// loss is what else a suspect costs if left: of the branches that may still be
// the one the dearest (or the cheapest at the lowest edge).
func (r *reading) loss(s *suspect, at edge) int64 {
	var cost int64
	some := false
	for _, l := range branches(r, s.IfLeft, lossWhen) {
		if !some || further(at, l.Cost, cost) {
			cost, some = l.Cost, true
		}
	}
	return cost
}

func lossWhen(l *advisor.Loss) *advisor.Condition { return &l.When }
func baseWhen(b *advisor.Base) *advisor.Condition { return &b.When }
