package engine

import (
	"cmp"
	"slices"

	"longstand/advisor"
)

// houseItem is an item of the book that a house layer added, adjusted or took out.
type houseItem struct {
	kind, id string
	*advisor.Ground
	withdrawn bool
}

// houseItems lists the rules of a book that house layers brought or took out.
func houseItems(b *advisor.Book) (out []houseItem) {
	for _, it := range b.Items() {
		if it.Layer != "" {
			out = append(out, houseItem{kind: it.Kind, id: it.ID, Ground: it.Ground})
		}
	}
	for i := range b.Withdrawn {
		w := &b.Withdrawn[i]
		out = append(out, houseItem{w.Kind, w.ID, &w.Ground, true})
	}
	slices.SortStableFunc(out, func(x, y houseItem) int { return cmp.Or(cmp.Compare(x.id, y.id), cmp.Compare(x.kind, y.kind)) })
	return out
}

// houseRules lists the house rules that took part: suspects that apply, signs
// that are known on them, standing rules that act, holds that stand, operations
// that the car has, looks that can answer something, derived values that came
// out, the route that was picked, cautions that are said, the type from which
// answers come. What was taken out takes part in every advice.
func (e *Engine) houseRules(a *advisor.Advice) (out []advisor.HouseRule) {
	if len(e.house) == 0 {
		return nil
	}
	took := e.took(a)
	for i := range e.house {
		h := &e.house[i]
		if !took[i] && !h.withdrawn {
			continue
		}
		r := advisor.HouseRule{Kind: h.kind, ID: h.id, Layer: h.Layer, By: h.By, Learned: h.Learned, Again: h.Again,
			Due: h.Again != "" && h.Again <= a.Case.Date}
		if h.withdrawn {
			r.Withdrawn = h.Because
		}
		out = append(out, r)
	}
	return out
}

// took marks, by their places, the house items that an advice speaks of.
func (e *Engine) took(a *advisor.Advice) []bool {
	took := make([]bool, len(e.house))
	say := func(kind, id string) {
		if i, ok := e.houseAt[[2]string{kind, id}]; ok {
			took[i] = true
		}
	}
	rulesSpoken(a, say)
	workSpoken(a, say)
	return took
}

// rulesSpoken says each item by which an advice came about.
func rulesSpoken(a *advisor.Advice, say func(kind, id string)) {
	for i := range a.Derived {
		if d := &a.Derived[i]; d.Truth.Known() || d.IsNumber && d.Low == d.High {
			say("derived", d.ID)
		}
	}
	for i := range a.Suspects {
		say("suspect", a.Suspects[i].ID)
		for _, l := range a.Suspects[i].Ledger {
			say("sign", l.Sign)
		}
	}
	for i := range a.Routes {
		say("route", a.Routes[i].Route)
	}
	for i := range a.Standing {
		if a.Standing[i].Truth == advisor.True {
			say("standing", a.Standing[i].ID)
		}
	}
	for i := range a.Holds {
		say("hold", a.Holds[i].ID)
	}
	for i := range a.Case.Answers {
		if id, ok := advisor.TypeOf(a.Case.Answers[i].Note); ok {
			say("type", id)
		}
	}
}

// workSpoken says the work and the looks of an advice, with their cautions.
func workSpoken(a *advisor.Advice, say func(kind, id string)) {
	cautions := func(list []advisor.CautionAdvice) {
		for i := range list {
			say("caution", list[i].ID)
		}
	}
	for i := range a.Operations {
		if a.Operations[i].Call != advisor.NotFitted {
			say("operation", a.Operations[i].ID)
		}
		cautions(a.Operations[i].Cautions)
	}
	for i := range a.Inspections {
		say("inspection", a.Inspections[i].ID)
		cautions(a.Inspections[i].Cautions)
	}
}
