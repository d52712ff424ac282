package book

import (
	"math"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// readSettings lays the house's settings over the built-in ones, key by key,
// and reads them. It comes before all else: money needs the minor units.
func (b *builder) readSettings() {
	merged := b.mergeSettings()
	b.item0 = &item{kind: &kind{name: settingsTable.name}, id: settingsTable.name, node: merged, at: merged.Span}
	b.decoder.item = b.item0
	s := usual()
	b.settings = s
	if n := merged.Get("minor_digits"); n != nil && n.Kind == tomltext.Integer && n.Int >= 0 && n.Int <= 3 {
		s.MinorDigits = int(n.Int)
	}
	b.minor = math.Pow10(s.MinorDigits)
	s.Rate = int64(math.Round(usualRate * b.minor))
	settingsTable.decode(&b.decoder, merged, s)
	b.groundFigures(merged, s)
	if s.Rate <= 0 {
		b.list.Errorf(merged.Get("rate").Span, "out-of-range", "an hour costs something")
	}
	lastWithout(b, "hours_factor", len(s.Hours), func(i int) (advisor.Condition, diag.Span) { return s.Hours[i].When, s.Hours[i].At })
}

// usualRate is what an hour costs when nobody says, in units of the currency.
const usualRate = 80

func (b *builder) mergeSettings() *tomltext.Node {
	var fields []tomltext.Field
	at := map[string]int{}
	from := map[string]settingsIn{}
	var merged *tomltext.Node
	for _, in := range b.in.settings {
		if merged == nil {
			merged = in.node
		}
		for _, f := range in.node.Fields {
			i, there := at[f.Key]
			switch {
			case f.Key == "because" || f.Key == "source":
				// of the figures of its own layer: see provenance
			case !there:
				at[f.Key], from[f.Key] = len(fields), in
				fields = append(fields, f)
			case from[f.Key].layer == "" && in.layer != "":
				fields[i], from[f.Key] = f, in
			default:
				b.clash(f.KeySpan, fields[i].KeySpan, "the setting "+f.Key+" is given twice")
			}
		}
	}
	if merged == nil {
		return &tomltext.Node{Kind: tomltext.Table}
	}
	return merged.With(append(fields, b.provenance(from)...))
}

// lastWithout demands of an ordered list of cases that the last, and only the
// last, has no condition.
func lastWithout(b *builder, what string, n int, at func(int) (advisor.Condition, diag.Span)) {
	for i := range n {
		when, place := at(i)
		if last := i == n-1; last && when.Given() {
			b.list.Errorf(place, "no-last-case", "%s has no last case without a condition", what).Help = "end it with a case for all the other cars"
		} else if !last && !when.Given() {
			b.list.Errorf(place, "never-reached", "the cases of %s after this one are never reached", what).Help = "only the last case goes without a condition"
		}
	}
}
