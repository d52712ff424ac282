package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

var inspectionTable = table[advisor.Inspection]{
	name: "inspection", doc: "a way to answer questions that the walk-round cannot",
	fields: join([]field[advisor.Inspection]{
		must("id", "its name", func(i *advisor.Inspection) slot { return ownID(&i.ID) }),
		must("name", "in words, as something to do", func(i *advisor.Inspection) slot { return text(&i.Name) }),
		must("where", "where one stands", func(i *advisor.Inspection) slot { return word(&i.Where, advisor.Stations) }),
		may("minutes", "how long it takes; left out for a bundle: the sum of its parts", func(i *advisor.Inspection) slot { return whole(&i.Minutes, 0, 6000) }),
		may("tools", "what it takes", func(i *advisor.Inspection) slot { return texts(&i.Tools) }),
		may("access", "operations and routes opened to look", func(i *advisor.Inspection) slot { return names(&i.Access, aWayIn) }),
		may("needs", "operations that must be done before it", func(i *advisor.Inspection) slot { return names(&i.Needs, anOperation) }),
		may("answers", "the questions that it answers", func(i *advisor.Inspection) slot { return names(&i.Answers, aQuestion) }),
		may("acts", "acts it performs, which a hold may stop", func(i *advisor.Inspection) slot { return words(&i.Acts, advisor.Acts) }),
		may("after", "inspections that come first", func(i *advisor.Inspection) slot { return names(&i.After, anInspect) }),
		may("breaks", "what it may break", func(i *advisor.Inspection) slot { return text(&i.Breaks) }),
		may("bundle", "the inspections it consists of", func(i *advisor.Inspection) slot { return names(&i.Bundle, anInspect) }),
		may("hazards", "what can hurt", func(i *advisor.Inspection) slot { return names(&i.Hazards, aHazard) }),
		may("first_start", "it is the first start of the engine", func(i *advisor.Inspection) slot { return yes(&i.FirstStart) }),
		may("last", "the proof at the end: advised whatever its worth once no hold stops its acts; no work waits for it", func(i *advisor.Inspection) slot { return yes(&i.Last) }),
	}, conditionKeys("when", "the cars on which it can be done", false, whenRoles, func(i *advisor.Inspection) *advisor.Condition { return &i.When }),
		groundKeys(false, func(i *advisor.Inspection) *advisor.Ground { return &i.Ground })),
}

// finishInspection demands that a look finds something out.
func finishInspection(d *decoder, i *advisor.Inspection, n *tomltext.Node) {
	if n.Get("answers") == nil && n.Get("bundle") == nil {
		d.list.Errorf(n.Span, "missing-key", "this inspection answers nothing").Help = "give answers, or bundle"
	}
	if n.Get("minutes") == nil && n.Get("bundle") == nil {
		d.list.Errorf(n.Span, "missing-key", "this inspection has no minutes").Help = "minutes: how long it takes"
	}
}

var operationTable = table[advisor.Operation]{
	name: "operation", doc: "a piece of work",
	fields: join([]field[advisor.Operation]{
		must("id", "its name", func(o *advisor.Operation) slot { return ownID(&o.ID) }),
		must("name", "in words, as something to do", func(o *advisor.Operation) slot { return text(&o.Name) }),
		must("part", "the part of the car", func(o *advisor.Operation) slot { return text(&o.Part) }),
		must("phase", "when on the bench", func(o *advisor.Operation) slot { return word(&o.Phase, advisor.Phases) }),
		may("who", "who does it; left out: the shop", func(o *advisor.Operation) slot { return word(&o.Who, advisor.Trades) }),
		must("hours", "three figures: 1 in 10 is less, usual, 1 in 10 is more", func(o *advisor.Operation) slot { return hours(&o.Hours) }),
		may("parts", "three figures of money, without tax", func(o *advisor.Operation) slot { return parts(&o.Parts) }),
		may("access", "done only to get at something", func(o *advisor.Operation) slot { return yes(&o.Access) }),
		may("door", "opens an assembly: pages say that it is opened or stays shut", func(o *advisor.Operation) slot { return yes(&o.Door) }),
		may("looks", "the dangers that this strip-and-report answers", func(o *advisor.Operation) slot { return names(&o.Looks, aSuspect) }),
		may("needs", "operations and routes that it requires", func(o *advisor.Operation) slot { return needs(&o.Needs) }),
		may("brings", "operations that opening brings with it", func(o *advisor.Operation) slot { return needs(&o.Brings) }),
		may("savings", "fewer hours when another operation is in the scope as well", func(o *advisor.Operation) slot { return rows(&o.Savings, &savingTable, savingAt) }),
		may("risks", "what opening may break", func(o *advisor.Operation) slot { return rows(&o.Risks, &riskTable, riskAt) }),
		may("variants", "ways in which it may have to be done, by condition", func(o *advisor.Operation) slot { return rows(&o.Variants, &variantTable, variantAt) }),
		may("upgrade_of", "the operation that this one contains and goes beyond", func(o *advisor.Operation) slot { return name(&o.Upgrade, anOperation) }),
		may("until", "left until when: a date, a distance, a thing to watch", func(o *advisor.Operation) slot { return text(&o.Until) }),
		may("no_factor", "the hours factor for rusted fixings does not apply", func(o *advisor.Operation) slot { return yes(&o.NoFactor) }),
		may("hazards", "what can hurt", func(o *advisor.Operation) slot { return names(&o.Hazards, aHazard) }),
	}, conditionKeys("fitted", "the cars that have it; left out: all", false, fittedRoles, func(o *advisor.Operation) *advisor.Condition { return &o.Fitted }),
		groundKeys(false, func(o *advisor.Operation) *advisor.Ground { return &o.Ground })),
}

var savingTable = table[advisor.Saving]{
	name: "saving", doc: "hours that apply when another operation is in the scope",
	fields: []field[advisor.Saving]{
		must("with", "the other operation", func(s *advisor.Saving) slot { return name(&s.With, anOperation) }),
		must("hours", "the hours then", func(s *advisor.Saving) slot { return hours(&s.Hours) }),
		may("because", "the reason in one line", func(s *advisor.Saving) slot { return text(&s.Because) }),
	},
}

var riskTable = table[advisor.Risk]{
	name: "risk", doc: "what opening may break",
	fields: join([]field[advisor.Risk]{
		must("count", "how many times of how many", func(r *advisor.Risk) slot { return counted(&r.Count) }),
		must("cost", "in units of the currency", func(r *advisor.Risk) slot { return money(&r.Cost) }),
	}, reasonKeys(false, func(r *advisor.Risk) *advisor.Ground { return &r.Ground })),
}

var variantTable = table[advisor.Variant]{
	name: "variant", doc: "one way in which an operation may have to be done",
	fields: join([]field[advisor.Variant]{
		must("name", "in words", func(v *advisor.Variant) slot { return text(&v.Name) }),
		may("hours", "its own hours", func(v *advisor.Variant) slot { return ownHours(&v.Hours) }),
		may("parts", "its own parts", func(v *advisor.Variant) slot { return ownParts(&v.Parts) }),
		may("needs", "what it requires besides", func(v *advisor.Variant) slot { return needs(&v.Needs) }),
	}, conditionKeys("when", "the cars on which it is so; the last may go without", false, whenRoles, func(v *advisor.Variant) *advisor.Condition { return &v.When }),
		reasonKeys(false, func(v *advisor.Variant) *advisor.Ground { return &v.Ground })),
}

// finishOperation gives the work to the shop unless it says otherwise.
func finishOperation(_ *decoder, o *advisor.Operation, _ *tomltext.Node) {
	if o.Who == "" {
		o.Who = advisor.Trades[0]
	}
	for i := range o.Risks {
		inherit(&o.Risks[i].Ground, o.Ground)
	}
	for i := range o.Variants {
		inherit(&o.Variants[i].Ground, o.Ground)
	}
}

var routeTable = table[advisor.Route]{
	name: "route", doc: "a place that can be reached in more than one way",
	fields: join([]field[advisor.Route]{
		must("id", "its name, which operations need", func(r *advisor.Route) slot { return ownID(&r.ID) }),
		must("name", "in words", func(r *advisor.Route) slot { return text(&r.Name) }),
		must("ways", "the ways", func(r *advisor.Route) slot { return rows(&r.Ways, &wayTable, nil) }),
	}, groundKeys(false, func(r *advisor.Route) *advisor.Ground { return &r.Ground })),
}

var wayTable = table[advisor.Way]{
	name: "way", doc: "one way of a route",
	fields: join([]field[advisor.Way]{
		must("id", "its name", func(w *advisor.Way) slot { return text(&w.ID) }),
		must("name", "in words", func(w *advisor.Way) slot { return text(&w.Name) }),
		must("through", "the operations it goes through", func(w *advisor.Way) slot { return names(&w.Through, anOperation) }),
		may("tools", "what it takes; a shop without them goes another way where there is one", func(w *advisor.Way) slot { return texts(&w.Tools) }),
	}, conditionKeys("when", "possible unless this is known false", false, whenRoles, func(w *advisor.Way) *advisor.Condition { return &w.When })),
}
