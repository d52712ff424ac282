package engine

import (
	"cmp"
	"math"
	"slices"

	"longstand/advisor"
)

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
			Looked: s.forces.sound[k], Ledger: s.ledger(k), Conflict: d.conflict, Because: sus.Because, Sources: sus.Sources}
		if d.baseAt >= 0 {
			a.BaseNote = cmp.Or(sus.Bases[d.baseAt].Because, sus.Because)
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
			line.Name = cmp.Or(sign.NameNot, "not so: "+sign.Name)
		}
		if lv := d.levels[l.Sign]; lv >= 0 && sign.Levels[lv].Name != "" {
			line.Name = sign.Levels[lv].Name
		} else if unsettled(sign, lv) {
			line.Name = "narrowed, not settled: " + sign.Name
		}
		line.Questions = s.readBy(sign)
		out = append(out, line)
	}
	slices.SortStableFunc(out, func(a, b advisor.LedgerLine) int {
		return cmp.Or(last(a.Counted, b.Counted), cmp.Compare(math.Abs(b.Decibans), math.Abs(a.Decibans)), cmp.Compare(a.Sign, b.Sign))
	})
	return out
}

// unsettled tells whether a sign with levels speaks only by those ruled out.
func unsettled(sign *advisor.Sign, level int) bool { return len(sign.Levels) > 0 && level < 0 }

// readBy names the questions that a sign reads.
func (s *situation) readBy(sign *advisor.Sign) []string {
	reads := newSet(len(s.e.book.Questions))
	for _, id := range conditionsOf(sign) {
		reads.addAll(s.e.reads[id])
	}
	var out []string
	for _, q := range reads.list() {
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
