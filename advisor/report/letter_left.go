package report

import (
	"cmp"
	"slices"
	"strings"

	"longstand/advisor"
)

// leftAlone says what an owner would ask about most: the ways in that stay
// shut, what the foreman set, and the dearest. The others stand overleaf.
func (l *letter) leftAlone() section {
	s := section{ID: "leave", Title: l.say("title.leave", nil), Shape: sideShape}
	chief, rest := l.leftShut()
	if len(chief) > 0 {
		s.Blocks = append(s.Blocks, block{Kind: paraBlock, Text: l.say("leave.line", with{"More": len(rest)})}, block{Kind: worksBlock, Pairs: ended(l.leaving(chief))})
	}
	if done := l.doneAlready(); len(done) > 0 {
		s.Blocks = append(s.Blocks, block{Kind: paraBlock, Text: l.say("leave.done", with{"Names": strings.Join(done, "; ")})})
	}
	return s
}

// leftInFull lists what else is left alone.
func (l *letter) leftInFull() section {
	s := section{ID: "left", Title: l.say("title.left", nil)}
	if _, rest := l.leftShut(); len(rest) > 0 {
		s.Blocks = []block{{Kind: pairsBlock, Pairs: l.leaving(rest)}}
	}
	return s
}

// leftShut are the operations left alone: five at most that are told first, and
// the rest.
func (l *letter) leftShut() (chief, rest []*advisor.OperationAdvice) {
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		if o.Call == advisor.Leave && o.Forced != "done" && told(o) {
			rest = append(rest, o)
		}
	}
	first := func(o *advisor.OperationAdvice) bool { return o.Overruled != nil || o.Door }
	slices.SortStableFunc(rest, func(a, b *advisor.OperationAdvice) int {
		switch {
		case first(a) && !first(b):
			return -1
		case first(b) && !first(a):
			return 1
		}
		return cmp.Compare(b.Cost, a.Cost)
	})
	n := min(5, len(rest))
	for n < len(rest) && rest[n].Overruled != nil {
		n++
	}
	return rest[:n], rest[n:]
}

// leaving words what is left, why, and until when.
func (l *letter) leaving(ops []*advisor.OperationAdvice) []pair {
	var out []pair
	for _, o := range ops {
		until := l.book(o.Until)
		if up := l.a.Operation(o.ContainedIn); up != nil {
			until = l.say("leave.contained", with{"Name": l.name(up.Name)})
		}
		out = append(out, pair{Lead: l.title(o.Name), Texts: []string{
			l.say("leave.why", with{"Reason": l.why(o), "Until": until})}})
	}
	return out
}

// why is the reason of a call, and whose word it is when the foreman set it.
func (l *letter) why(o *advisor.OperationAdvice) string { return l.reason(o) + l.setByHand(o) }

// reason is that of a call for its owner, to whom nobody speaks of "the owner".
func (l *letter) reason(o *advisor.OperationAdvice) string {
	switch o.Forced {
	case "accepted":
		return l.say("decide.accepted", nil)
	case "declined":
		if !l.declinedByName(o.ID) {
			return l.short(o.Reason) // a rule said it for the owner
		}
		return l.say("leave.declined", with{"Danger": l.dangerous(o)})
	case "done":
		return l.say("leave.is_done", nil)
	}
	return l.short(o.Reason)
}

// declinedByName tells whether the owner declined this very work.
func (l *letter) declinedByName(id string) bool {
	return slices.ContainsFunc(l.a.Case.Declined, func(d advisor.Decision) bool { return d.Operation == id })
}

// dangerous tells whether an operation cures a danger that is not known to be
// absent.
func (l *letter) dangerous(o *advisor.OperationAdvice) bool {
	for _, id := range o.Suspects {
		if k := l.a.Suspect(id); k != nil && k.Danger != "" && k.Looked != advisor.True {
			return true
		}
	}
	return false
}

// ended gives each lead a full stop.
func ended(list []pair) []pair {
	for i := range list {
		list[i].Lead = advisor.Sentence(list[i].Lead)
	}
	return list
}
