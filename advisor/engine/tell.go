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
		InScope: s.member[o], Access: op.Access, Cost: b.cost, Settles: c.looks, MaybeChance: c.maybe, Until: op.Until,
		ContainedIn: s.containedIn(o), Cautions: s.cautions(op.Hazards), Sources: op.Sources}
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
		if i != o && s.member[i] && slices.Contains(s.net.reach[i], o) {
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
	for i := range s.e.book.Standing {
		r := &s.e.book.Standing[i]
		if slices.Contains(r.Operations, a.ID) && s.all(r.When.ID) == advisor.Unknown {
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
	shared := map[string]int64{}
	var whole int64
	for _, j := range access {
		whole += s.figures.cost[j]
	}
	var out []string
	for i := range s.e.ops {
		if i == o || !s.member[i] || s.e.ops[i].Access || slices.Contains(s.net.reach[o], i) {
			continue
		}
		id := s.e.ops[i].ID
		for _, j := range s.accessOf(i) {
			if slices.Contains(access, j) {
				shared[id] += s.figures.cost[j]
			}
		}
		if shared[id] > 0 && shared[id]*4 >= whole {
			out = append(out, id)
		}
	}
	slices.SortStableFunc(out, func(x, y string) int { return cmp.Compare(shared[y], shared[x]) })
	return out
}

// behind lists the suspects whose cure needs an access operation, those that
// ask most for it, three at most.
func (s *situation) behind(o int) []int {
	var out []int
	for k := range s.e.suspects {
		if s.net.benefit[k] > 0 && slices.Contains(s.net.needed(&s.e.suspects[k], s.off), o) {
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
		if l.Counted && l.Ratio != 1 && favours == (a.Call == advisor.Do || a.Call == advisor.DoOpen || a.Call == advisor.LookFirst) {
			return sentence(l.Name) + " " + cmpOr(l.Because, s.e.suspects[k].Because)
		}
	}
	return cmpOr(s.e.suspects[k].Because, s.e.ops[o].Because)
}

// suspectsAdvice tells every suspect that applies, in order of id.
func (s *situation) suspectsAdvice() []advisor.SuspectAdvice {
	out := make([]advisor.SuspectAdvice, 0, len(s.e.suspects))
	for k := range s.e.suspects {
		d, sus := &s.doubts[k], &s.e.suspects[k]
		if d.here == advisor.False {
			continue
		}
		a := advisor.SuspectAdvice{ID: sus.ID, Name: sus.Name, Part: sus.Part, Chance: d.chance, Base: d.base, Family: sus.Family,
			IfLeft: s.figures.left[k], Loss: s.net.loss[k], Benefit: s.net.benefit[k], When: s.all(sus.When.ID),
			Looked: s.forces.looked[k], Ledger: s.ledger(k), Conflict: d.conflict, Because: sus.Because, Sources: sus.Sources}
		if d.baseAt >= 0 {
			a.BaseNote = cmpOr(sus.Bases[d.baseAt].Because, sus.Because)
			a.BaseSources = sus.Bases[d.baseAt].Sources
		}
		if sus.Danger != nil {
			a.Danger = sus.Danger.Kind
		}
		for _, o := range sus.curedBy {
			if !s.off[o] {
				a.CuredBy = append(a.CuredBy, s.e.ops[o].ID)
			}
		}
		out = append(out, a)
	}
	return out
}

// ledger lists the signs on a suspect that say anything, strongest first.
func (s *situation) ledger(k int) []advisor.LedgerLine {
	d := &s.doubts[k]
	var out []advisor.LedgerLine
	for _, l := range d.lines {
		sign := s.e.suspects[k].signs[l.Sign]
		ev := &d.evidence[l.Sign]
		line := advisor.LedgerLine{Sign: sign.ID, Name: sign.Name, Truth: ev.Truth, Level: d.levels[l.Sign], How: ev.How, Ratio: l.Ratio,
			Decibans: 10 * math.Log10(l.Ratio), Counted: l.Counted, Group: sign.Group, Because: sign.Because, Sources: sign.Sources}
		if ev.Truth == advisor.Unknown {
			continue
		}
		if ev.Truth == advisor.False {
			line.Name = cmpOr(sign.NameNot, "not so: "+sign.Name)
		}
		if lv := d.levels[l.Sign]; lv >= 0 && sign.Levels[lv].Name != "" {
			line.Name = sign.Levels[lv].Name
		}
		line.Questions = s.readBy(sign)
		out = append(out, line)
	}
	slices.SortStableFunc(out, func(a, b advisor.LedgerLine) int {
		return cmp.Or(last(a.Counted, b.Counted), cmp.Compare(math.Abs(b.Decibans), math.Abs(a.Decibans)), cmp.Compare(a.Sign, b.Sign))
	})
	return out
}

// readBy names the questions that a sign reads.
func (s *situation) readBy(sign *advisor.Sign) []string {
	set := map[int]bool{}
	if len(sign.Levels) == 0 {
		mark(set, s.e.program.Reads(sign.When.ID))
	}
	for i := range sign.Levels {
		mark(set, s.e.program.Reads(sign.Levels[i].When.ID))
	}
	var out []string
	for _, q := range sorted(set) {
		out = append(out, s.e.book.Questions[q].ID)
	}
	return out
}

// decisiveConflict words two decisive signs that contradict one another.
func (s *situation) decisiveConflict(a *advisor.SuspectAdvice) advisor.Conflict {
	c := advisor.Conflict{Suspect: a.ID, Text: "Two decisive findings contradict one another on: " + a.Name}
	for _, l := range a.Ledger {
		if l.Decibans != l.Decibans || math.IsInf(l.Decibans, 0) {
			c.Questions = append(c.Questions, l.Questions...)
		}
	}
	return c
}
