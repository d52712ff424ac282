package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// Dangers are the kinds of suspect that can hurt.
var Dangers = []string{"brakes", "steering", "wheels", "fuel_fire", "structure", "belts"}

var suspectTable = table[advisor.Suspect]{
	name: "suspect", doc: "one fault that may be there",
	fields: join([]field[advisor.Suspect]{
		must("id", "its name", func(s *advisor.Suspect) slot { return ownID(&s.ID) }),
		must("name", "the fault in words, as a sentence", func(s *advisor.Suspect) slot { return text(&s.Name) }),
		must("part", "the part of the car", func(s *advisor.Suspect) slot { return text(&s.Part) }),
		must("cured_by", "the operations that together cure it", func(s *advisor.Suspect) slot { return names(&s.CuredBy, anOperation) }),
		may("family", "the family of causes that exclude one another", func(s *advisor.Suspect) slot { return name(&s.Family, aFamily) }),
		must("base", "how many cars have it before anyone looks: cases by condition, the last without one", func(s *advisor.Suspect) slot { return rows(&s.Bases, &baseTable, baseAt) }),
		may("if_left", "what else it costs when left (a tow, spoiled parts): a sum, or cases by condition", func(s *advisor.Suspect) slot { return lossSlot{&s.IfLeft} }),
		may("danger", "that it can hurt, and what counts as found sound", func(s *advisor.Suspect) slot { return row(&s.Danger, &dangerTable, dangerAt) }),
	}, conditionKeys("when", "the cars that can have it", false, whenRoles, func(s *advisor.Suspect) *advisor.Condition { return &s.When }),
		groundKeys(true, func(s *advisor.Suspect) *advisor.Ground { return &s.Ground })),
}

var baseTable = table[advisor.Base]{
	name: "base", doc: "one case of a base chance",
	fields: join([]field[advisor.Base]{
		must("count", "how many cars of how many", func(b *advisor.Base) slot { return counted(&b.Count) }),
	}, conditionKeys("when", "the cars it speaks of", false, whenRoles, func(b *advisor.Base) *advisor.Condition { return &b.When }),
		reasonKeys(false, func(b *advisor.Base) *advisor.Ground { return &b.Ground })),
}

var lossTable = table[advisor.Loss]{
	name: "loss", doc: "one case of what a fault costs if left",
	fields: join([]field[advisor.Loss]{
		must("cost", "in units of the currency", func(l *advisor.Loss) slot { return money(&l.Cost) }),
	}, conditionKeys("when", "the cars it speaks of", false, whenRoles, func(l *advisor.Loss) *advisor.Condition { return &l.When }),
		reasonKeys(false, func(l *advisor.Loss) *advisor.Ground { return &l.Ground })),
}

var dangerTable = table[advisor.Danger]{
	name: "danger", doc: "that a fault can hurt",
	fields: join([]field[advisor.Danger]{
		must("kind", "what it endangers", func(v *advisor.Danger) slot { return word(&v.Kind, Dangers) }),
		may("before", "the work that comes after: until the danger is known, no money on it, or on what needs it, is firm", func(v *advisor.Danger) slot { return names(&v.Before, anOperation) }),
	}, conditionKeys("good", "what counts as looked at and found sound, age limits included", true, whenRoles, func(v *advisor.Danger) *advisor.Condition { return &v.Good }),
		reasonKeys(false, func(v *advisor.Danger) *advisor.Ground { return &v.Ground })),
}

// lossSlot is a sum, or a list of sums by condition.
type lossSlot struct{ to *[]advisor.Loss }

func (s lossSlot) form() form { return form{Type: asLosses, Of: lossTable.name, Keys: lossTable.keys} }

func (s lossSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind == tomltext.Array {
		rows(s.to, &lossTable, lossAt).read(d, f)
		return
	}
	loss := advisor.Loss{Ground: advisor.Ground{At: f.Value.Span}}
	money(&loss.Cost).read(d, f)
	*s.to = []advisor.Loss{loss}
}

var signTable = table[advisor.Sign]{
	name: "sign", doc: "evidence on one suspect",
	fields: join([]field[advisor.Sign]{
		must("id", "its name", func(s *advisor.Sign) slot { return ownID(&s.ID) }),
		must("suspect", "the suspect that it speaks of", func(s *advisor.Sign) slot { return name(&s.Suspect, aSuspect) }),
		may("name", "in words, when it is so", func(s *advisor.Sign) slot { return text(&s.Name) }),
		may("name_not", "in words, when it is not so", func(s *advisor.Sign) slot { return text(&s.NameNot) }),
		may("with", "of the cars with the fault, how many show it", func(s *advisor.Sign) slot { return counted(&s.With) }),
		may("without", "of the cars without it, how many show it anyway", func(s *advisor.Sign) slot { return counted(&s.Without) }),
		may("levels", "exclusive ordered levels, instead of when, with and without", func(s *advisor.Sign) slot { return rows(&s.Levels, &levelTable, nil) }),
		may("group", "signs of one suspect that echo one another share a group: the strongest counts", func(s *advisor.Sign) slot { return text(&s.Group) }),
		may("decisive", "settles it by itself: its counts are taken as they stand", func(s *advisor.Sign) slot { return yes(&s.Decisive) }),
	}, conditionKeys("when", "when a car shows it", false, whenRoles, func(s *advisor.Sign) *advisor.Condition { return &s.When }),
		groundKeys(true, func(s *advisor.Sign) *advisor.Ground { return &s.Ground })),
}

var levelTable = table[advisor.Level]{
	name: "level", doc: "one level of a sign",
	fields: join([]field[advisor.Level]{
		must("name", "in words, when it is so", func(l *advisor.Level) slot { return text(&l.Name) }),
		must("with", "of the cars with the fault, how many are at this level", func(l *advisor.Level) slot { return counted(&l.With) }),
		must("without", "of the cars without it, how many are at this level", func(l *advisor.Level) slot { return counted(&l.Without) }),
	}, conditionKeys("when", "when a car is at this level; the last may go without", false, whenRoles, func(l *advisor.Level) *advisor.Condition { return &l.When })),
}

// finishSuspect passes the suspect's reason on to what it holds.
func finishSuspect(_ *decoder, s *advisor.Suspect, _ *tomltext.Node) {
	for i := range s.Bases {
		inherit(&s.Bases[i].Ground, s.Ground)
	}
	for i := range s.IfLeft {
		inherit(&s.IfLeft[i].Ground, s.Ground)
	}
	if s.Danger != nil {
		inherit(&s.Danger.Ground, s.Ground)
	}
}

// finishSign demands one condition with a name and two counts, or levels.
func finishSign(d *decoder, s *advisor.Sign, n *tomltext.Node) {
	levels := n.Field("levels")
	if levels == nil && n.Get("name") == nil {
		d.list.Errorf(n.Span, "missing-key", "this sign has no name").Help = "name: in words, when it is so"
	}
	for _, key := range []string{"when", "with", "without"} {
		own := n.Field(key)
		switch {
		case levels != nil && own != nil:
			d.list.Errorf(own.KeySpan, "useless-key", "a sign with levels takes no %s of its own", key)
		case levels == nil && own == nil:
			d.list.Errorf(n.Span, "missing-key", "this sign has no %s", key).Help = "give when, with and without, or levels"
		}
	}
}

// join joins the keys of a table.
func join[T any](lists ...[]field[T]) (all []field[T]) {
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}
