package engine

import (
	"cmp"
	"math"
	"slices"

	"longstand/advisor"
	"longstand/advisor/scope"
)

// operation tells everything about one operation.
func (s *situation) operation(o int, c *called) advisor.OperationAdvice {
	op := &s.e.ops[o]
	b := &s.bills[o]
	a := advisor.OperationAdvice{ID: op.ID, Name: op.Name, Part: op.Part, Phase: op.Phase, Who: op.Who, Call: c.call,
		Reason: c.reason, Forced: c.forced, ForcedBy: c.by, Routine: c.forced == "standing rule" && s.forces.ops[o].routine,
		InScope: s.member[o], Access: op.Access, Door: op.Door, Cost: b.cost, Settles: c.looks, MaybeChance: c.maybe, Until: op.Until,
		ContainedIn: s.containedIn(o), Cautions: s.cautions(op.cautions), Sources: op.Sources}
	if c.forced == "standing rule" || c.forced == "danger" {
		a.Sources = append(slices.Clone(s.forces.ops[o].sources), op.Sources...)
	}
	if b.variant >= 0 {
		a.Variant = op.Variants[b.variant].Name
		a.VariantOpen = s.variantTruths(o)[b.variant] != advisor.True
	}
	minutes := func(h float64) int { return int(math.Floor(h*60*b.factor + 0.5)) }
	a.MinutesLow, a.MinutesUsual, a.MinutesHigh = minutes(b.hours.Low), minutes(b.hours.Usual), minutes(b.hours.High)
	parts := func(p float64) int64 { return round(p * s.e.minor()) }
	a.PartsLow, a.PartsUsual, a.PartsHigh = parts(b.parts.Low), parts(b.parts.Usual), parts(b.parts.High)
	s.numbers(o, &a)
	s.neighbours(o, &a)
	if a.Reason == "" {
		a.Reason = s.reason(o, &a)
	}
	return a
}

// numbers sets chance, margin and break-even.
func (s *situation) numbers(o int, a *advisor.OperationAdvice) {
	if s.off[o] {
		return
	}
	if !a.Access {
		p := s.anyOf(s.e.ops[o].suspects)
		a.Chance = &p
	}
	if by, ok := s.margins[o].By(); ok && !s.done[o] {
		money := scope.Money(by, s.price)
		a.Margin = &money
		if k := s.lead(o); k >= 0 && s.net.loss[k] > 0 {
			a.Lead = s.e.suspects[k].ID
			if p := scope.BreakEven(s.net.benefit[k], by, s.price, s.net.loss[k]); p > 0 && p < 1 {
				a.BreakEven = &p
			}
		}
	}
	for _, j := range s.net.reach[o] {
		if !s.done[j] || j == o {
			a.Alone += s.figures.cost[j]
		}
	}
	for _, sv := range s.net.savings {
		if sv.op == o && s.member[o] && (s.member[sv.with] || s.done[sv.with]) {
			a.Saved += sv.saves
		}
	}
}

// anyOf is the chance that at least one of some suspects is there; causes of
// one family exclude one another and add up.
func (s *situation) anyOf(suspects []int) float64 {
	none := 1.0
	family := map[int]float64{}
	for _, k := range suspects {
		p := s.figures.chance[k]
		if f := s.e.suspects[k].family; f >= 0 {
			family[f] = min(1, family[f]+p)
			continue
		}
		none = float64(none * (1 - p))
	}
	for f := range s.e.book.Families { // in order, so that every run agrees
		if p, ok := family[f]; ok {
			none = float64(none * (1 - p))
		}
	}
	return 1 - none
}

// lead is the suspect that asks most for an operation, -1 when none does.
func (s *situation) lead(o int) int {
	best := -1
	for _, k := range s.e.ops[o].suspects {
		if s.net.node[k] >= 0 && (best < 0 || s.net.benefit[k] > s.net.benefit[best]) {
			best = k
		}
	}
	return best
}

// neighbours names what an operation needs, what needs it, who shares its
// access, and what it helps to cure.
func (s *situation) neighbours(o int, a *advisor.OperationAdvice) {
	for _, j := range s.net.reach[o] {
		if j != o && !s.done[j] {
			a.Needs = append(a.Needs, s.e.ops[j].ID)
		}
	}
	for i := range s.e.ops {
		if i != o && s.member[i] && s.net.reaches[i].has(o) {
			a.NeededBy = append(a.NeededBy, s.e.ops[i].ID)
		}
	}
	a.SharedWith = s.sharing(o)
	likely := slices.Clone(s.e.ops[o].suspects)
	if a.Access {
		likely = s.behind(o)
	}
	slices.SortStableFunc(likely, func(x, y int) int { return cmp.Compare(s.figures.chance[y], s.figures.chance[x]) })
	for _, k := range likely {
		if s.doubts[k].here != advisor.False {
			a.Suspects = append(a.Suspects, s.e.suspects[k].ID)
		}
	}
	for _, i := range s.e.ops[o].standing {
		r := &s.e.book.Standing[i]
		if s.all(r.When.ID) == advisor.Unknown {
			a.WouldIf = append(a.WouldIf, r.ID)
		}
	}
}

// sharing lists the operations of the scope that share the access of one: at
// least a quarter of its cost, those first that share most.
func (s *situation) sharing(o int) []string {
	access := s.accessOf(o)
	if len(access) == 0 {
		return nil
	}
	shared := make([]int64, len(s.e.ops))
	var whole int64
	for _, j := range access {
		whole += s.figures.cost[j]
	}
	var out []int
	for i := range s.e.ops {
		if i == o || !s.member[i] || s.e.ops[i].Access || s.net.reaches[o].has(i) {
			continue
		}
		for _, j := range access {
			if s.net.reaches[i].has(j) {
				shared[i] += s.figures.cost[j]
			}
		}
		if shared[i] > 0 && shared[i]*4 >= whole {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int { return cmp.Compare(shared[y], shared[x]) })
	return s.ids(out)
}

// behind lists the suspects whose cure needs an access operation, those that
// ask most for it, three at most.
func (s *situation) behind(o int) []int {
	var out []int
	for k := range s.e.suspects {
		if s.net.benefit[k] > 0 && s.net.needsNow[k].has(o) {
			out = append(out, k)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int { return cmp.Compare(s.net.benefit[y], s.net.benefit[x]) })
	return out[:min(3, len(out))]
}

// reason is why a call stands, in words: the leading suspect's strongest sign,
// the suspect's own reason, or the operation's.
func (s *situation) reason(o int, a *advisor.OperationAdvice) string {
	k := s.lead(o)
	if k < 0 {
		return s.e.ops[o].Because
	}
	for _, l := range s.ledger(k) {
		favours := l.Ratio > 1
		if narrowed := slices.ContainsFunc(s.e.suspects[k].signs, func(sign *advisor.Sign) bool { return sign.ID == l.Sign && unsettled(sign, l.Level) }); narrowed {
			continue // no fact yet that could be given as the reason
		}
		if l.Counted && l.Ratio != 1 && favours == (a.Call == advisor.Do || a.Call == advisor.DoOpen || a.Call == advisor.LookFirst) {
			return advisor.Sentence(l.Name) + " " + cmp.Or(l.Because, s.e.suspects[k].Because)
		}
	}
	if d := s.e.suspects[k].Danger; d != nil && s.forces.sound[k] == advisor.True && a.Call == advisor.Leave {
		return "Looked at and found sound. " + advisor.Sentence(d.Because)
	}
	return cmp.Or(s.e.suspects[k].Because, s.e.ops[o].Because)
}
