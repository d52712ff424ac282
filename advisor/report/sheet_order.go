package report

import (
	"cmp"
	"slices"

	"longstand/advisor"
)

// partsInTurn is the order of the bench: the shell before everything, for what
// is welded beside new pipes, hoses and looms burns them; the engine from the
// crank outwards, so that the clutch goes on last; axle and hubs before the
// brakes, so that no oil reaches a new lining. One piece of work may be named
// by itself; a part not named comes after.
// Common practice, no source.
var partsInTurn = []string{"access", "structure", "engine_bottom", "crank_seals", "timing", "engine_top", "lubrication", "flywheel", "clutch", "gearbox",
	"cooling", "fuel", "driveline", "suspension", "steering", "wheels", "brakes", "exhaust", "electrics"}

// inOrder lists the work that is to be done: by phase, then by the parts'
// turn, each after what it needs.
func (p *sheet) inOrder() []*advisor.OperationAdvice {
	var out []*advisor.OperationAdvice
	for i := range p.a.Operations {
		if o := &p.a.Operations[i]; o.Call == advisor.Do || o.Call == advisor.DoOpen {
			out = append(out, o)
		}
	}
	needed := func(o *advisor.OperationAdvice) (list []*advisor.OperationAdvice) {
		for _, other := range out {
			if other.Phase == o.Phase && slices.Contains(o.Needs, other.ID) {
				list = append(list, other)
			}
		}
		return list
	}
	turn := func(o *advisor.OperationAdvice) int { // not before the turn of anything it needs
		most := partTurn(o)
		for _, other := range needed(o) {
			most = max(most, partTurn(other))
		}
		return most
	}
	after := func(x, y *advisor.OperationAdvice) int { // what was opened last is closed first
		if x.Phase == "refit" {
			x, y = y, x
		}
		return cmp.Compare(len(needed(x)), len(needed(y)))
	}
	slices.SortStableFunc(out, func(x, y *advisor.OperationAdvice) int {
		return cmp.Or(cmp.Compare(slices.Index(advisor.Phases, x.Phase), slices.Index(advisor.Phases, y.Phase)),
			cmp.Compare(turn(x), turn(y)), after(x, y), cmp.Compare(x.Part, y.Part))
	})
	return out
}

// partTurn is the place of a piece of work, or of its part, in the order of the
// bench.
func partTurn(o *advisor.OperationAdvice) int {
	for _, id := range []string{o.ID, o.Part} {
		if i := slices.Index(partsInTurn, id); i >= 0 {
			return i
		}
	}
	return len(partsInTurn)
}

// placeLooks puts a look behind the last operation that opens it, must come
// before it, or lifts a stop on it while the same phase lasts; and a look that
// only work not yet decided would open behind that work.
func (p *sheet) placeLooks() {
	p.listed = map[string]bool{}
	for i := range p.a.Inspections {
		k := &p.a.Inspections[i]
		if !k.Advised || len(k.Bundle) > 0 {
			continue
		}
		if id := p.opener(k); id != "" {
			p.opened[id] = append(p.opened[id], k)
			p.listed[k.ID] = true
		}
	}
	for _, looks := range p.opened {
		slices.SortStableFunc(looks, func(x, y *advisor.InspectionAdvice) int {
			return cmp.Or(last(follows(x, looks), follows(y, looks)), cmp.Compare(len(x.Blocked), len(y.Blocked)), cmp.Compare(x.Minutes, y.Minutes))
		})
	}
}

// opener is the operation behind which a look stands on the sheet, or none.
func (p *sheet) opener(k *advisor.InspectionAdvice) string {
	at := -1
	for i, o := range p.order {
		if slices.Contains(k.Access, o.ID) || slices.Contains(k.Before, o.ID) {
			at = i
		}
	}
	if at < 0 {
		for _, id := range k.Access {
			if o := p.a.Operation(id); o != nil && o.Call == advisor.LookFirst {
				return id
			}
		}
		return ""
	}
	phase := p.order[at].Phase
	for i, o := range p.order {
		if i > at && o.Phase == phase && p.unblocks(o.ID, k) {
			at = i
		}
	}
	return p.order[at].ID
}

// unblocks tells whether an operation lifts a hold that stops a look.
func (p *sheet) unblocks(id string, k *advisor.InspectionAdvice) bool {
	for _, stop := range k.Blocked {
		if h := p.a.Hold(stop); h != nil && slices.Contains(h.LiftedBy, advisor.Settle{Kind: "operation", ID: id}) {
			return true
		}
	}
	return false
}

// follows tells whether a look comes after another of the same list.
func follows(k *advisor.InspectionAdvice, looks []*advisor.InspectionAdvice) bool {
	return slices.ContainsFunc(looks, func(other *advisor.InspectionAdvice) bool { return slices.Contains(k.Before, other.ID) })
}

// last puts what is so behind what is not.
func last(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return 1
	}
	return -1
}
