package report

import "longstand/advisor"

func hold(h *advisor.HoldAdvice) any {
	return object{"id": h.ID, "name": h.Name, "stops": list(h.Stops), "when": h.When.String(), "because": h.Because,
		"until": h.Until, "missing": list(h.Missing), "sources": list(h.Sources),
		"lifted_by": each(h.LiftedBy, func(s *advisor.Settle) any { return object{"kind": s.Kind, "id": s.ID} })}
}

func look(i *advisor.InspectionAdvice) any {
	return object{"id": i.ID, "name": i.Name, "where": i.Where, "rank": i.Rank, "advised": i.Advised, "because": i.Reason,
		"net": i.Net, "worth": i.Worth, "cost": i.Cost, "minutes": i.Minutes,
		"access": list(i.Access), "tools": list(i.Tools), "lacks": list(i.Lacks), "answers": list(i.Answers), "when_open": i.WhenOpen,
		"lifts": list(i.Lifts), "dangers": list(i.Dangers), "settles": list(i.Settles), "blocked": list(i.Blocked),
		"before": list(i.Before), "breaks": orNil(i.Breaks), "first_start": i.FirstStart, "bundle": list(i.Bundle),
		"cautions": each(i.Cautions, caution), "sources": list(i.Sources)}
}

func caution(c *advisor.CautionAdvice) any {
	return object{"id": c.ID, "hazard": c.Hazard, "text": c.Text, "defers": c.Defers, "sources": list(c.Sources)}
}

func operation(o *advisor.OperationAdvice) any {
	out := object{"id": o.ID, "name": o.Name, "part": o.Part, "phase": o.Phase, "who": o.Who, "access": o.Access,
		"call": o.Call, "because": o.Reason, "forced": orNil(o.Forced), "forced_by": orNil(o.ForcedBy), "routine": o.Routine,
		"in_scope": o.InScope, "until": o.Until, "variant": orNil(o.Variant), "contained_in": orNil(o.ContainedIn),
		"chance": four1(o.Chance), "lead": orNil(o.Lead), "break_even": four1(o.BreakEven), "maybe_chance": four(o.MaybeChance), "margin": nil, "overruled": nil,
		"cost": o.Cost, "alone": o.Alone, "saved": o.Saved,
		"minutes": []int{o.MinutesLow, o.MinutesUsual, o.MinutesHigh}, "parts": []int64{o.PartsLow, o.PartsUsual, o.PartsHigh},
		"needs": list(o.Needs), "needed_by": list(o.NeededBy), "shared_with": list(o.SharedWith), "suspects": list(o.Suspects),
		"settles": list(o.Settles), "would_if": list(o.WouldIf), "cautions": each(o.Cautions, caution), "sources": list(o.Sources)}
	if o.Margin != nil {
		out["margin"] = *o.Margin
	}
	if v := o.Overruled; v != nil {
		out["overruled"] = object{"call": v.Call, "by": v.By, "why": v.Why, "date": orNil(v.Date), "was": o.Was}
	}
	return out
}

func suspect(s *advisor.SuspectAdvice) any {
	return object{"id": s.ID, "name": s.Name, "part": s.Part, "when": s.When.String(), "chance": four(s.Chance), "base": four(s.Base),
		"base_because": s.BaseNote, "base_sources": list(s.BaseSources), "family": orNil(s.Family), "if_left": s.IfLeft,
		"loss": s.Loss, "benefit": s.Benefit, "cured_by": list(s.CuredBy), "danger": orNil(s.Danger), "looked": s.Looked.String(),
		"conflict": s.Conflict, "because": s.Because, "sources": list(s.Sources), "ledger": each(s.Ledger, ledgerLine)}
}

func ledgerLine(l *advisor.LedgerLine) any {
	out := object{"sign": l.Sign, "name": l.Name, "truth": l.Truth.String(), "how": l.How.String(), "ratio": finite(l.Ratio),
		"decibans": finite(l.Decibans), "counted": l.Counted, "group": orNil(l.Group), "because": l.Because,
		"questions": list(l.Questions), "sources": list(l.Sources), "level": nil}
	if l.Level >= 0 {
		out["level"] = l.Level
	}
	return out
}

func total(t *advisor.Total) any {
	return object{"firm": t.Firm, "maybe": t.Maybe, "likely": t.Likely, "looking": t.Looking,
		"independent": span(t.Independent), "dependent": span(t.Dependent),
		"firm_spread": spread(t.FirmSpread), "spread": spread(t.Spread), "lines": each(t.Lines, moneyLine)}
}

func span(r advisor.Range) []int64 { return []int64{r.Low, r.High} }

func spread(s advisor.Spread) any {
	return object{"mean": s.Mean, "independent": four(s.Independent), "dependent": four(s.Dependent)}
}

func moneyLine(l *advisor.Line) any {
	out := object{"id": l.Operation, "name": l.Name, "kind": l.Kind, "waits": orNil(l.Waits), "chance": four(l.Chance), "low": l.Low, "usual": l.Usual,
		"high": l.High, "mean": l.Mean, "expected": l.Expected, "deviation": four(l.Deviation), "minutes": l.Minutes, "sum": nil}
	if s := l.Sum; s != nil {
		out["sum"] = object{"hours": []float64{s.Hours.Low, s.Hours.Usual, s.Hours.High}, "hours_mean": four(s.HoursMean),
			"factor": four(s.Factor), "labour": figures(s.Labour), "parts": figures(s.Parts), "saved": s.Saved}
	}
	return out
}

func figures(f advisor.Figures) any {
	return object{"low": f.Low, "usual": f.Usual, "high": f.High, "mean": f.Mean}
}
