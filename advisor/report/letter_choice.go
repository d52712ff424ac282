package report

import (
	"cmp"
	"slices"

	"longstand/advisor"
)

// choice is one decision in prose: the work, what hangs on a look, what it
// adds, what "no" means, and the three answers.
func (l *letter) choice(now, look []*advisor.OperationAdvice, sum *share) []block {
	var out []block
	if len(now) > 0 {
		out = append(out, block{Kind: paraBlock, Text: l.say("decide.now", nil)}, block{Kind: listBlock, Items: l.each(now, "decide.work")})
	}
	if len(look) > 0 {
		out = append(out, block{Kind: paraBlock, Text: l.say("decide.look", nil)}, block{Kind: listBlock, Items: l.each(look, "decide.perhaps")})
	}
	adds := l.say("decide.adds", with{"Firm": l.taxed(sum.firm), "Maybe": l.taxed(sum.maybe), "HasFirm": sum.firm > 0, "HasMaybe": sum.maybe > 0})
	out = append(out, block{Kind: paraBlock, Text: adds}, block{Kind: paraBlock, Text: l.refusal(append(slices.Clone(now), look...))})
	return append(out, l.threeAnswers())
}

func (l *letter) threeAnswers() block {
	return block{Kind: answersBlock, Text: l.say("answer.ask", nil),
		Items: []string{l.say("answer.yes", nil), l.say("answer.later", nil), l.say("answer.ring", nil)}}
}

// each words operations by a phrase, the dearest first.
func (l *letter) each(ops []*advisor.OperationAdvice, phrase string) []string {
	ops = slices.Clone(ops)
	slices.SortStableFunc(ops, func(a, b *advisor.OperationAdvice) int { return cmp.Compare(b.Cost, a.Cost) })
	var out []string
	for _, o := range ops {
		p := o.MaybeChance
		if p == 0 && o.Chance != nil {
			p = *o.Chance
		}
		v := with{"Name": l.title(o.Name), "Sum": l.taxed(l.mean(o)), "Reason": l.book(o.Reason), "Chance": Chance(p), "Variant": l.name(o.Variant)}
		words := l.say(phrase, v)
		if o.Call == advisor.DoOpen && len(o.SharedWith) > 0 {
			words += " " + l.say("decide.open", with{"Alone": l.taxed(o.Alone)})
		}
		if o.Who != "shop" && o.Who != "" {
			words += " " + l.say("who."+o.Who, nil)
		}
		out = append(out, words+l.setByHand(o))
	}
	return out
}

// mean is the mean of an operation's own line of money; what opening may break
// is a line of its own.
func (l *letter) mean(o *advisor.OperationAdvice) int64 {
	for i := range l.a.Total.Lines {
		if n := &l.a.Total.Lines[i]; n.Operation == o.ID && (n.Kind == "firm" || n.Kind == "maybe") {
			return n.Mean
		}
	}
	return o.Cost - o.Saved
}

// setByHand tells of a call that the foreman set.
func (l *letter) setByHand(o *advisor.OperationAdvice) string {
	if o.Overruled == nil {
		return ""
	}
	v := o.Overruled
	return " " + l.say("overruled", with{"By": v.By, "Date": v.Date, "Was": string(o.Was), "Why": sentence(v.Why)})
}

// refusal says what "no" means: what then stays forbidden, and what a fault
// that is left would cost besides.
func (l *letter) refusal(ops []*advisor.OperationAdvice) string {
	out := l.say("no", nil)
	holds := l.liftedBy(ops)
	for _, h := range holds[:min(2, len(holds))] {
		out += " " + l.say("no.hold", with{"Act": l.region.say(acts[leading(h.Stops)]), "Until": l.name(h.Name)})
	}
	if len(holds) > 2 {
		out += " " + l.say("no.more", with{"More": len(holds) - 2})
	}
	if s := l.worst(ops); s != nil {
		out += " " + l.say("no.left", with{"Name": l.name(s.Name), "Chance": Chance(s.Chance), "Sum": l.taxed(s.IfLeft)})
	} else if len(holds) == 0 {
		out += " " + l.say("no.nothing", nil)
	}
	return out
}

// liftedBy are the holds that some operations can lift, those that are sure to
// apply first.
func (l *letter) liftedBy(ops []*advisor.OperationAdvice) []*advisor.HoldAdvice {
	var sure, unsure []*advisor.HoldAdvice
	for i := range l.a.Holds {
		h := &l.a.Holds[i]
		for _, o := range ops {
			if !slices.Contains(h.LiftedBy, advisor.Settle{Kind: "operation", ID: o.ID}) {
				continue
			}
			if h.When == advisor.True {
				sure = append(sure, h)
			} else {
				unsure = append(unsure, h)
			}
			break
		}
	}
	return append(sure, unsure...)
}

// worst is the suspect of some operations that costs most if left, among those
// that are at least as likely as 1 in 20.
func (l *letter) worst(ops []*advisor.OperationAdvice) *advisor.SuspectAdvice {
	var worst *advisor.SuspectAdvice
	for _, o := range ops {
		for _, id := range o.Suspects {
			s := l.suspect(id)
			if s != nil && s.IfLeft > 0 && s.Chance >= 0.05 && (worst == nil || s.IfLeft > worst.IfLeft) {
				worst = s
			}
		}
	}
	return worst
}

// routineWork is the usual work on waking: one line, and its list.
func (l *letter) routineWork() section {
	s := section{ID: "routine", Title: l.say("title.routine", nil)}
	var rows [][]string
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		if l.chapterOf(o) == inRoutine {
			rows = append(rows, []string{l.title(o.Name), l.taxed(l.mean(o)), l.book(o.Reason)})
		}
	}
	if len(rows) == 0 {
		return s
	}
	s.Blocks = []block{{Kind: paraBlock, Text: l.say("routine.line", with{"Count": len(rows), "Sum": l.taxed(l.shares()[inRoutine].firm)})}, l.threeAnswers(),
		{Kind: tableBlock, Text: l.say("routine.caption", nil), Rows: rows,
			Columns: []string{l.say("routine.work", nil), l.say("sum.sum", nil), l.say("holds.why", nil)}}}
	return s
}
