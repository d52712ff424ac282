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
	add := func(kind, id string, g *advisor.Ground) {
		if g.Layer != "" {
			out = append(out, houseItem{kind: kind, id: id, Ground: g})
		}
	}
	for i := range b.Derived {
		add("derived", b.Derived[i].ID, &b.Derived[i].Ground)
	}
	for i := range b.Suspects {
		add("suspect", b.Suspects[i].ID, &b.Suspects[i].Ground)
	}
	for i := range b.Signs {
		add("sign", b.Signs[i].ID, &b.Signs[i].Ground)
	}
	for i := range b.Operations {
		add("operation", b.Operations[i].ID, &b.Operations[i].Ground)
	}
	for i := range b.Inspections {
		add("inspection", b.Inspections[i].ID, &b.Inspections[i].Ground)
	}
	for i := range b.Routes {
		add("route", b.Routes[i].ID, &b.Routes[i].Ground)
	}
	for i := range b.Standing {
		add("standing", b.Standing[i].ID, &b.Standing[i].Ground)
	}
	for i := range b.Holds {
		add("hold", b.Holds[i].ID, &b.Holds[i].Ground)
	}
	for i := range b.Cautions {
		add("caution", b.Cautions[i].ID, &b.Cautions[i].Ground)
	}
	for i := range b.Types {
		add("type", b.Types[i].ID, &b.Types[i].Ground)
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
	mark := func(kind, id string) {
		if i, ok := e.houseAt[[2]string{kind, id}]; ok {
			took[i] = true
		}
	}
	said := func(cautions []advisor.CautionAdvice) {
		for i := range cautions {
			mark("caution", cautions[i].ID)
		}
	}
	for i := range a.Derived {
		if d := &a.Derived[i]; d.Truth.Known() || d.IsNumber && d.Low == d.High {
			mark("derived", d.ID)
		}
	}
	for i := range a.Suspects {
		mark("suspect", a.Suspects[i].ID)
		for _, l := range a.Suspects[i].Ledger {
			mark("sign", l.Sign)
		}
	}
	for i := range a.Operations {
		if a.Operations[i].Call != advisor.NotFitted {
			mark("operation", a.Operations[i].ID)
		}
		said(a.Operations[i].Cautions)
	}
	for i := range a.Inspections {
		mark("inspection", a.Inspections[i].ID)
		said(a.Inspections[i].Cautions)
	}
	for i := range a.Routes {
		mark("route", a.Routes[i].Route)
	}
	for i := range a.Standing {
		if a.Standing[i].Truth == advisor.True {
			mark("standing", a.Standing[i].ID)
		}
	}
	for i := range a.Holds {
		mark("hold", a.Holds[i].ID)
	}
	for i := range a.Case.Answers {
		if id, ok := advisor.TypeOf(a.Case.Answers[i].Note); ok {
			mark("type", id)
		}
	}
	return took
}

// lacks lists the tools of a look that the shop does not have. A shop that says
// nothing of its tools has them all.
func (e *Engine) lacks(tools []string) (out []string) {
	s := &e.book.Settings
	if len(s.Tools) == 0 {
		return nil
	}
	for _, t := range tools {
		if !slices.Contains(s.Tools, t) && !slices.Contains(s.HandTools, t) {
			out = append(out, t)
		}
	}
	return out
}
