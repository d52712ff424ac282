package report

import (
	"cmp"
	"slices"
	"strings"

	"longstand/advisor"
)

// choice is one decision in prose: the work, what waits for a danger to be
// known, what hangs on a look, what "no" means, and the three answers.
func (l *letter) choice(do, look []*advisor.OperationAdvice) []block {
	var out []block
	now, waits := l.firmNow(do)
	put := func(ops []*advisor.OperationAdvice, label, phrase string, v with) {
		if len(ops) > 0 {
			out = append(out, block{Kind: labelBlock, Text: l.say(label, v)}, block{Kind: worksBlock, Pairs: l.each(ops, phrase)})
		}
	}
	put(now, "decide.now", "decide.work", nil)
	if len(waits) > 0 {
		put(waits, "decide.waits", "decide.work", with{"Fault": l.waitsFor(waits[0].ID)})
	}
	put(look, "decide.look", "decide.perhaps", nil)
	return append(out, block{Kind: paraBlock, Text: l.refusal(append(slices.Clone(do), look...))}, l.threeAnswers())
}

// adds says what a decision adds, what of it waits, and the most that looks may
// add to it.
func (l *letter) adds(sum *share) string {
	return l.say("decide.adds", with{"Firm": l.taxed(sum.firm), "Maybe": l.taxed(sum.maybe), "Waits": l.taxed(sum.waits),
		"HasFirm": sum.firm > 0, "HasWaits": sum.waits > 0, "HasMaybe": sum.maybe > 0})
}

func (l *letter) threeAnswers() block {
	return block{Kind: answersBlock, Text: l.say("answer.ask", nil),
		Items: []string{l.say("answer.yes", nil), l.say("answer.later", nil), l.say("answer.ring", nil)}}
}

// each words operations by a phrase, the dearest first; those that share a
// reason stand together, and it is said once.
func (l *letter) each(ops []*advisor.OperationAdvice, phrase string) []pair {
	var out []pair
	said := ""
	for _, o := range byReason(ops) {
		v := with{"Name": l.title(o.Name), "Sum": l.taxed(l.mean(o)), "Reason": l.reason(o), "First": firstSentence(l.reason(o)), "Chance": Chance(maybeChance(o)), "Variant": l.name(o.Variant)}
		if o.Reason == said && said != "" {
			v["Reason"], v["First"] = l.say("decide.same", nil), l.say("decide.same", nil)
		}
		said = o.Reason
		words := l.say(phrase, v)
		if o.Call == advisor.DoOpen && len(o.SharedWith) > 0 {
			words += " " + l.say("decide.open", with{"Alone": l.taxed(o.Alone)})
		}
		if o.Who != "shop" && o.Who != "" {
			words += " " + l.say("who."+o.Who, nil)
		}
		out = append(out, pair{Lead: l.say("decide.lead", v), Texts: []string{words + l.setByHand(o)}})
	}
	return out
}

// maybeChance is the chance with which an operation is needed in the end.
func maybeChance(o *advisor.OperationAdvice) float64 {
	if o.MaybeChance == 0 && o.Chance != nil {
		return *o.Chance
	}
	return o.MaybeChance
}

// byReason orders operations by cost, the dearest first, and draws up behind
// each those that have its reason.
func byReason(ops []*advisor.OperationAdvice) []*advisor.OperationAdvice {
	ops = slices.Clone(ops)
	slices.SortStableFunc(ops, func(a, b *advisor.OperationAdvice) int { return cmp.Compare(b.Cost, a.Cost) })
	rank := map[string]int{}
	for i, o := range ops {
		if _, known := rank[o.Reason]; !known {
			rank[o.Reason] = i
		}
	}
	slices.SortStableFunc(ops, func(a, b *advisor.OperationAdvice) int { return cmp.Compare(rank[a.Reason], rank[b.Reason]) })
	return ops
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
	return " " + l.say("overruled", with{"By": v.By, "Date": longDay(v.Date, 0, l.a.Settings.Locale), "Was": string(o.Was), "Why": advisor.Sentence(v.Why)})
}

// refusal says what "no" means: what then stays forbidden, and what a fault
// that is left would cost besides.
func (l *letter) refusal(ops []*advisor.OperationAdvice) string {
	out := l.say("no", nil)
	holds := l.liftedBy(ops)
	for _, h := range holds[:min(1, len(holds))] {
		out += " " + l.say("no.hold", with{"Act": l.region.say(acts[leading(h.Stops)]), "Until": l.name(h.Name)})
	}
	if len(holds) > 1 {
		out += " " + l.say("no.more", with{"More": len(holds) - 1})
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
			s := l.a.Suspect(id)
			if s != nil && s.IfLeft > 0 && s.Chance >= 0.05 && (worst == nil || s.IfLeft > worst.IfLeft) {
				worst = s
			}
		}
	}
	return worst
}

// firstSentence is what stands before the second sentence of a text.
func firstSentence(s string) string {
	if i := strings.Index(s, ". "); i >= 0 {
		return s[:i+1]
	}
	return s
}

// short is a reason without what counts as sound, which is for the workshop.
func (l *letter) short(reason string) string {
	reason, _, _ = strings.Cut(reason, "Counts as sound:")
	return l.book(reason)
}

// routine is the usual work on waking.
func (l *letter) routine() []*advisor.OperationAdvice {
	var out []*advisor.OperationAdvice
	for i := range l.a.Operations {
		if o := &l.a.Operations[i]; l.chapterOf(o) == inRoutine {
			out = append(out, o)
		}
	}
	return out
}

// routineWork lists it overleaf.
func (l *letter) routineWork() section {
	s := section{ID: "routine", Title: l.say("title.routine_list", nil)}
	var items []pair
	for _, o := range l.routine() {
		items = append(items, pair{Lead: l.say("routine.lead", with{"Name": l.title(o.Name), "Sum": l.taxed(l.mean(o))}), Texts: []string{l.short(o.Reason)}})
	}
	if len(items) > 0 {
		s.Blocks = []block{{Kind: pairsBlock, Pairs: items}}
	}
	return s
}
