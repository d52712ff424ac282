package condition

import (
	"slices"
	"strings"
)

// relationsOf are the comparisons by the places that they accept.
var relationsOf = map[uint64]relation{
	placeBelow: less, placeBelow | placeAt: atMost, placeAt: equal, placeBelow | placeAbove: unequal,
	placeAt | placeAbove: atLeast, placeAbove: more,
}

// placesText writes a comparison that accepts some places, perhaps negated.
func (p *Program) placesText(l *leaf, places uint64, c float64, negated bool) string {
	if negated {
		places ^= placeBelow | placeAt | placeAbove
	}
	rel, ok := relationsOf[places]
	switch {
	case !ok && places == 0:
		return "always false"
	case !ok:
		return "always true"
	}
	return "`" + p.compareText(l.of, rel, c) + "`"
}

// groupText writes a node as an author would, groups within it in brackets.
func (m *Measure) groupText(n *branch, or bool) string {
	var parts []string
	for _, k := range n.kids {
		if i := slices.IndexFunc(m.pins, func(pin kid) bool { return pin.at == k.at }); i >= 0 {
			parts = append(parts, m.atoms[i].Text)
			continue
		}
		inner := &m.f.nodes[k.at-len(m.f.leaves)]
		parts = append(parts, "("+m.groupText(inner, inner.or)+")")
	}
	if or {
		return strings.Join(parts, " or ")
	}
	return strings.Join(parts, " and ")
}
