package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// groundKeys declares what every item says for itself; reasoned items must
// give their reason and its source.
func groundKeys[T any](reasoned bool, ground func(*T) *advisor.Ground) []field[T] {
	return append(reasonKeys(reasoned, ground),
		may("by", "house rules: who wrote it", func(v *T) slot { return text(&ground(v).By) }),
		may("learned_on", "house rules: the case it was learned on", func(v *T) slot { return text(&ground(v).Learned) }),
		may("look_again", "house rules: the day to look at it again", func(v *T) slot { return day(&ground(v).Again) }),
	)
}

// reasonKeys declares the reason and its source alone, for tables inside an item.
func reasonKeys[T any](reasoned bool, ground func(*T) *advisor.Ground) []field[T] {
	return []field[T]{
		{"because", reasoned, "the reason in one line, shown before any number", func(v *T) slot { return text(&ground(v).Because) }},
		{"source", reasoned, "where it comes from: one id or several", func(v *T) slot { return names(&ground(v).Sources, aSource) }},
	}
}

// houseKeys may stand on any item: they belong to the way in, not to the item.
var houseKeys = map[string]bool{"adjust": true, "by": true, "learned_on": true, "look_again": true, silenceKey: true}

// inherit fills in the reason that a table inside an item does not give itself.
func inherit(own *advisor.Ground, from advisor.Ground) {
	if own.Because == "" {
		own.Because = from.Because
	}
	if own.Sources == nil {
		own.Sources = from.Sources
	}
	own.Layer = from.Layer
	if own.At.Line == 0 {
		own.At = from.At
	}
}

func baseAt(b *advisor.Base, n *tomltext.Node)       { b.At = n.Span }
func lossAt(l *advisor.Loss, n *tomltext.Node)       { l.At = n.Span }
func riskAt(r *advisor.Risk, n *tomltext.Node)       { r.At = n.Span }
func variantAt(v *advisor.Variant, n *tomltext.Node) { v.At = n.Span }
func savingAt(s *advisor.Saving, n *tomltext.Node)   { s.At = n.Span }
func dangerAt(d *advisor.Danger, n *tomltext.Node)   { d.At = n.Span }
