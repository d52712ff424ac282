package report

import (
	_ "embed" // the schema
	"encoding/json"
	"math"

	"longstand/advisor"
)

// schema describes what JSON writes; a test holds every advice to it.
//
//go:embed advice.schema.json
var schema []byte

// Schema gives the JSON Schema (2020-12) of the advice, format version 1.
func Schema() []byte { return schema }

// JSON writes the advice as one object, format version 1. Money is in minor
// units without tax; chances have four decimals.
func JSON(a *advisor.Advice) ([]byte, error) {
	out, err := json.MarshalIndent(wholeAdvice(a), "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}

// JSONLine is JSON on one line.
func JSONLine(a *advisor.Advice) ([]byte, error) {
	out, err := json.Marshal(wholeAdvice(a))
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}

type object = map[string]any

// wholeAdvice builds the object. Every key is always there, an empty list or
// null where there is nothing to say, so that a reader never meets a missing one.
func wholeAdvice(a *advisor.Advice) object {
	return object{
		"advice":      1,
		"case":        caseOf(a),
		"settings":    settings(a),
		"holds":       each(a.Holds, hold),
		"inspections": each(a.Inspections, look),
		"operations":  each(a.Operations, operation),
		"suspects":    each(a.Suspects, suspect),
		"standing":    each(a.Standing, standing),
		"open":        each(a.Open, openQuestion),
		"conflicts":   each(a.Conflicts, conflict),
		"derived":     each(a.Derived, derived),
		"routes":      each(a.Routes, route),
		"total":       total(&a.Total),
		"ladder": object{"here": a.Ladder.Here, "low": price(a.Ladder.Low), "high": price(a.Ladder.High),
			"steps": each(a.Ladder.Steps, step)},
		"notes": list(a.Notes),
		"house": each(a.HouseRules, houseRule),
	}
}

func each[T any](items []T, f func(*T) any) []any {
	out := make([]any, len(items))
	for i := range items {
		out[i] = f(&items[i])
	}
	return out
}

func list(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

func orNil(s string) any {
	if s == "" {
		return nil
	}
	return s
}

// finite gives a figure with four decimals, or null when it has no bound or a
// decisive sign settles the matter: JSON has no infinity.
func finite(x float64) any {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return nil
	}
	return four(x)
}

// four rounds a chance to four decimals.
func four(p float64) float64 { return math.Round(p*1e4) / 1e4 }

func four1(p *float64) any {
	if p == nil {
		return nil
	}
	return four(*p)
}

func caseOf(a *advisor.Advice) any {
	c := a.Case
	return object{"id": c.ID, "name": c.Name, "date": c.Date, "words": c.Words, "care": a.Care, "care_because": a.CareBecause,
		"currency": a.Settings.Currency, "house_rules": houseIDs(a.HouseRules)}
}

func houseIDs(rules []advisor.HouseRule) []string {
	ids := []string{}
	for i := range rules {
		ids = append(ids, rules[i].ID)
	}
	return ids
}

func houseRule(r *advisor.HouseRule) any {
	return object{"kind": r.Kind, "id": r.ID, "layer": r.Layer, "withdrawn": orNil(r.Withdrawn), "by": orNil(r.By),
		"learned_on": orNil(r.Learned), "look_again": orNil(r.Again), "due": r.Due}
}

func settings(a *advisor.Advice) any {
	s := a.Settings
	return object{"currency": s.Currency, "minor_digits": s.MinorDigits, "rate": s.Rate, "tax": four(s.Tax), "locale": s.Locale,
		"hours_factor": four(a.HoursFactor)}
}

func conflict(c *advisor.Conflict) any {
	return object{"questions": list(c.Questions), "suspect": orNil(c.Suspect), "text": c.Text,
		"places": each(c.Places, func(p *advisor.Place) any { return object{"file": p.File, "line": p.Line, "column": p.Col} })}
}

// derived gives a value as it came out: a number by its bounds (null where it
// has none), anything else by its truth.
func derived(v *advisor.DerivedValue) any {
	out := object{"id": v.ID, "name": v.Name, "unit": orNil(v.Unit), "truth": nil, "low": nil, "high": nil,
		"shown": v.Shown, "because": orNil(v.Because), "sources": list(v.Sources)}
	if v.IsNumber {
		out["low"], out["high"] = finite(v.Low), finite(v.High)
		return out
	}
	out["truth"] = v.Truth.String()
	return out
}

func route(r *advisor.RouteAdvice) any {
	return object{"route": r.Route, "way": r.Way, "name": r.Name, "place": r.Place, "because": r.Why, "lacks": list(r.Lacks)}
}

func standing(s *advisor.StandingAdvice) any {
	return object{"id": s.ID, "operations": list(s.Operations), "out": s.Out, "routine": s.Routine, "acts": s.Truth == advisor.True,
		"because": s.Because, "missing": list(s.Missing), "sources": list(s.Sources)}
}

func openQuestion(q *advisor.OpenQuestion) any {
	return object{"id": q.ID, "station": q.Station, "structure": q.Structure, "worth": q.Worth, "net": q.Net,
		"feeds": list(q.Feeds), "suspects": list(q.Suspects)}
}

func price(p advisor.Price) []int64 { return []int64{p.Num, p.Den} }

func step(s *advisor.Step) any {
	return object{"price": price(s.Price), "enters": list(s.Enters), "cost": s.Cost, "benefit": s.Benefit,
		"add_cost": s.AddCost, "add_benefit": s.AddBenefit, "again": list(s.Again), "again_cost": s.AgainCost,
		"alone": s.Alone, "after": s.After}
}
