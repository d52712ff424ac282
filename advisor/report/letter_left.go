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
	var done []string
	for i := range l.a.Operations {
		if o := &l.a.Operations[i]; o.Call == advisor.Leave && o.Forced == "done" {
			done = append(done, l.name(o.Name))
		}
	}
	if len(done) > 0 {
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
	first := func(o *advisor.OperationAdvice) bool { return o.Overruled != nil || slices.Contains(bigDoors, o.ID) }
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
			l.say("leave.why", with{"Reason": l.short(o.Reason) + l.setByHand(o), "Until": until})}})
	}
	return out
}

// ended gives each lead a full stop.
func ended(list []pair) []pair {
	for i := range list {
		list[i].Lead = advisor.Sentence(list[i].Lead)
	}
	return list
}
