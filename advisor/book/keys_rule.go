package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

var derivedTable = table[advisor.Derived]{
	name: "derived", doc: "a value computed from answers",
	fields: join([]field[advisor.Derived]{
		must("id", "its name in conditions", func(v *advisor.Derived) slot { return ownID(&v.ID) }),
		may("name", "a short label for pages", func(v *advisor.Derived) slot { return text(&v.Name) }),
		may("unit", "of a number", func(v *advisor.Derived) slot { return text(&v.Unit) }),
	}, conditionKeys("is", "the expression: true or false, or a number", true, whenRoles, func(v *advisor.Derived) *advisor.Condition { return &v.Is }),
		conditionKeys("shown", "the cars on whose page it stands with its reason, once it is known; left out: none", false, shownRoles, func(v *advisor.Derived) *advisor.Condition { return &v.Shown }),
		groundKeys(false, func(v *advisor.Derived) *advisor.Ground { return &v.Ground })),
}

var standingTable = table[advisor.StandingRule]{
	name: "standing", doc: "a firm rule of the shop",
	fields: join([]field[advisor.StandingRule]{
		must("id", "its name", func(s *advisor.StandingRule) slot { return ownID(&s.ID) }),
		may("operations", "what it puts in or out", func(s *advisor.StandingRule) slot { return names(&s.Operations, anOperation) }),
		may("operation", "the same, for one alone", func(s *advisor.StandingRule) slot { return nameInto(&s.Operations, anOperation) }),
		must("says", "in or out of the scope", func(s *advisor.StandingRule) slot {
			return wordIndex([]string{"in", "out", "declined"}, func(i int) { s.Out, s.Declined = i > 0, i == 2 })
		}),
		may("routine", "the usual work on waking any car", func(s *advisor.StandingRule) slot { return yes(&s.Routine) }),
	}, conditionKeys("when", "the cars it speaks of; left out: all", false, whenRoles, func(s *advisor.StandingRule) *advisor.Condition { return &s.When }),
		groundKeys(true, func(s *advisor.StandingRule) *advisor.Ground { return &s.Ground })),
}

func finishStanding(d *decoder, s *advisor.StandingRule, n *tomltext.Node) {
	if n.Get("operations") == nil && n.Get("operation") == nil && !s.Declined {
		d.list.Errorf(n.Span, "missing-key", "this standing rule names no operation").Help = "give operations"
	}
}

var holdTable = table[advisor.Hold]{
	name: "hold", doc: "a stop on acts until a condition is known to be true",
	fields: join([]field[advisor.Hold]{
		must("id", "its name", func(h *advisor.Hold) slot { return ownID(&h.ID) }),
		must("name", "until what, in words", func(h *advisor.Hold) slot { return text(&h.Name) }),
		must("stops", "the acts it stops", func(h *advisor.Hold) slot { return words(&h.Stops, advisor.Acts) }),
	}, conditionKeys("when", "the cars on which it stands; left out: all", false, whenRoles, func(h *advisor.Hold) *advisor.Condition { return &h.When }),
		conditionKeys("until", "what must be known to be true", true, untilRoles, func(h *advisor.Hold) *advisor.Condition { return &h.Until }),
		groundKeys(true, func(h *advisor.Hold) *advisor.Ground { return &h.Ground })),
}

var cautionTable = table[advisor.Caution]{
	name: "caution", doc: "a safety note",
	fields: join([]field[advisor.Caution]{
		must("id", "its name", func(c *advisor.Caution) slot { return ownID(&c.ID) }),
		must("hazard", "the word by which work and questions call for it", func(c *advisor.Caution) slot { return text(&c.Hazard) }),
		must("text", "what to do", func(c *advisor.Caution) slot { return text(&c.Text) }),
		may("defers", "what it defers to: local code, maker's data, licensed trade", func(c *advisor.Caution) slot { return text(&c.Defers) }),
	}, conditionKeys("when", "the cars it speaks of; left out: all", false, whenRoles, func(c *advisor.Caution) *advisor.Condition { return &c.When }),
		groundKeys(true, func(c *advisor.Caution) *advisor.Ground { return &c.Ground })),
}

var familyTable = table[advisor.Family]{
	name: "family", doc: "causes that exclude one another",
	fields: join([]field[advisor.Family]{
		must("id", "its name", func(v *advisor.Family) slot { return ownID(&v.ID) }),
		must("name", "in words", func(v *advisor.Family) slot { return text(&v.Name) }),
	}, groundKeys(false, func(v *advisor.Family) *advisor.Ground { return &v.Ground })),
}

var sourceTable = table[advisor.Source]{
	name: "source", doc: "where a rule or a figure comes from",
	fields: []field[advisor.Source]{
		must("id", "its name", func(s *advisor.Source) slot { return ownID(&s.ID) }),
		must("kind", "what sort of source", func(s *advisor.Source) slot { return word(&s.Kind, advisor.SourceKinds) }),
		must("cite", "how it is cited", func(s *advisor.Source) slot { return text(&s.Cite) }),
		may("recalled", "the figure is from memory", func(s *advisor.Source) slot { return yes(&s.Recalled) }),
	},
}

var wordTable = table[advisor.Word]{
	name: "word", doc: "a trade word in plain words",
	fields: join([]field[advisor.Word]{
		must("id", "its name", func(w *advisor.Word) slot { return ownID(&w.ID) }),
		must("text", "the word on pages", func(w *advisor.Word) slot { return text(&w.Text) }),
		must("means", "what it means", func(w *advisor.Word) slot { return text(&w.Means) }),
		may("regions", "the word of another region, by locale", func(w *advisor.Word) slot { return regionsSlot{&w.Regions} }),
		may("forms", "other forms found in texts", func(w *advisor.Word) slot { return texts(&w.Forms) }),
	}, groundKeys(false, func(w *advisor.Word) *advisor.Ground { return &w.Ground })),
}

// regionsSlot is a table of words by locale.
type regionsSlot struct{ to *map[string]string }

func (s regionsSlot) form() form { return form{Type: asPairs} }

func (s regionsSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Table {
		d.wrong(f.Value, "regions are a table, locale = word")
		return
	}
	*s.to = map[string]string{}
	for _, r := range f.Value.Fields {
		if r.Value.Kind != tomltext.String {
			d.wrong(r.Value, "a region's word is a text in quotes")
			continue
		}
		(*s.to)[r.Key] = r.Value.Str
	}
}
