package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// front is the first page: what an owner must have read if nothing else.
func (l *letter) front() []section {
	asked := block{Kind: quoteBlock, Text: l.a.Case.Words}
	if l.a.Case.Words == "" {
		asked = block{Kind: paraBlock, Text: l.say("asked.nothing", nil)}
	}
	return []section{
		{ID: "asked", Title: l.say("title.asked", nil), Front: true, Shape: sideShape, Blocks: []block{asked}},
		{ID: "matters", Title: l.say("title.matters", nil), Front: true, Shape: sideShape, Blocks: []block{{Kind: orderedBlock, Items: l.three()}}},
		{ID: "money", Title: l.say("title.money", nil), Front: true, Shape: sideShape, Blocks: l.sums()},
		{ID: "never", Title: l.say("title.never", nil), Front: true, Last: true, Shape: sideShape, Blocks: l.neverDo(true)},
	}
}

// three are the three things that matter: whether it may go on the road, what
// is not known yet and is dear, and the call that the car turns on.
func (l *letter) three() []string {
	stands, unsure := 0, 0
	for i := range l.a.Holds {
		switch h := &l.a.Holds[i]; {
		case !slices.Contains(h.Stops, "road"):
		case h.When == advisor.True:
			stands++
		default:
			unsure++
		}
	}
	road := l.say("matters.free", nil)
	if stands+unsure > 0 {
		road = l.say("matters.road", with{"Stands": stands, "Unsure": unsure})
	}
	return []string{road, l.dearest(), l.turning()}
}

// dearest names the job that may add most by its chance, or else the largest firm one.
func (l *letter) dearest() string {
	var most *advisor.Line
	for i := range l.a.Total.Lines {
		n := &l.a.Total.Lines[i]
		if n.Kind != "maybe" && n.Kind != "firm" || n.Waits != "" {
			continue
		}
		if most == nil || n.Kind == "maybe" && most.Kind == "firm" || n.Kind == most.Kind && n.Chance*float64(n.Mean) > most.Chance*float64(most.Mean) {
			most = n
		}
	}
	if most == nil {
		return l.say("matters.nothing", nil)
	}
	return l.say("matters."+most.Kind, with{"Name": l.name(most.Name), "Sum": l.taxed(most.Mean), "Chance": Chance(most.Chance)})
}

// turning words the call on the operation that the car turns on.
func (l *letter) turning() string {
	m := l.turnsOn()
	if m.op == nil {
		return l.say("matters.plain", nil)
	}
	words := l.say("matters."+phraseOf[m.op.Call], with{"Name": l.name(m.op.Name), "Reason": l.book(m.op.Reason)})
	if m.k != nil {
		words += " " + l.say("matters.turns", with{"Fault": l.name(m.k.Name), "Chance": Chance(m.k.Chance)})
	}
	if danger := l.waitsFor(m.op.ID); danger != "" {
		words += " " + l.say("matters.waits", with{"Fault": danger})
	}
	return words
}

// phraseOf names the phrase of a call.
var phraseOf = map[advisor.Call]string{advisor.Do: "do", advisor.DoOpen: "do", advisor.LookFirst: "look", advisor.Leave: "leave", advisor.NotFitted: "leave"}

// sums is the table of the money, with tax, and of the day.
func (l *letter) sums() []block {
	t := &l.a.Total
	rows := [][]string{{l.say("sum.agree", nil), l.taxed(t.Firm)}}
	waits, danger := l.waiting()
	if waits > 0 {
		rows = append(rows, []string{l.say("sum.waits", nil), l.taxed(waits)})
	}
	rows = append(rows, []string{l.say("sum.maybe", nil), l.taxed(t.Maybe - waits)}, []string{l.say("sum.likely", nil), l.taxed(t.Likely)})
	large := map[int]bool{0: true, len(rows) - 1: true}
	day, how := l.likelyDay()
	rows = append(rows, []string{l.say("sum.range", nil), l.span(t.Independent)}, []string{l.say("sum.together", nil), l.span(t.Dependent)},
		[]string{l.say("day.likely", nil), day})
	out := []block{{Kind: tableBlock, Look: "account", Text: l.region.say(l.say("sum.caption", with{"Tax": l.number2(l.a.Settings.Tax * 100)})),
		Columns: []string{l.say("sum.what", nil), l.say("sum.sum", nil)}, Rows: rows, Large: large}}
	if over := l.tooMuch(); over != "" {
		out = append(out, block{Kind: paraBlock, Text: over})
	}
	if waits > 0 {
		out = append(out, block{Kind: paraBlock, Text: l.say("money.waits", with{"Fault": danger})})
	}
	return append(out, block{Kind: paraBlock, Text: how})
}

// neverDo gathers the standing holds, one line for each act that they stop
// first; the others may be listed overleaf.
func (l *letter) neverDo(overleaf bool) []block {
	var items []pair
	for _, act := range advisor.Acts {
		var until, why string
		count, known := 0, false
		for _, sure := range []bool{true, false} {
			for i := range l.a.Holds {
				h := &l.a.Holds[i]
				if (h.When == advisor.True) != sure || leading(h.Stops) != act {
					continue
				}
				if count++; count == 1 {
					known = sure
					because, _, _ := strings.Cut(h.Because, ";") // the rest stands overleaf
					until, why = l.name(h.Name), l.book(because)
				}
			}
		}
		if count > 0 {
			v := with{"Act": l.region.say(acts[act]), "Until": until, "Because": why, "More": count - 1, "Known": known, "Overleaf": overleaf}
			items = append(items, pair{Lead: l.say("never.act", v), Texts: []string{l.say("never.until", v)}})
		}
	}
	if len(items) == 0 {
		return []block{{Kind: paraBlock, Text: l.say("never.none", nil)}}
	}
	return []block{{Kind: stopBlock, Pairs: items}}
}

// holdsInFull lists every hold that stands, overleaf.
func (l *letter) holdsInFull() section {
	s := section{ID: "holds", Title: l.say("title.holds", nil)}
	for _, truth := range []advisor.Truth{advisor.True, advisor.Unknown} {
		var acts []pair
		for _, act := range advisor.Acts {
			if p := l.stopsOn(act, truth); len(p.Texts) > 0 {
				acts = append(acts, p)
			}
		}
		if len(acts) > 0 {
			title := l.say(fmt.Sprintf("holds.%s", map[advisor.Truth]string{advisor.True: "stand", advisor.Unknown: "unknown"}[truth]), nil)
			s.Blocks = append(s.Blocks, block{Kind: pairsBlock, Text: title, Pairs: acts})
		}
	}
	return s
}

// stopsOn are the holds that stop an act first, with the reason of those that
// are sure to apply.
func (l *letter) stopsOn(act string, truth advisor.Truth) pair {
	out := pair{Lead: l.say("holds.act", with{"Act": l.region.say(acts[act])})}
	for i := range l.a.Holds {
		h := &l.a.Holds[i]
		if h.When != truth || leading(h.Stops) != act {
			continue
		}
		because := ""
		if truth == advisor.True {
			because = l.book(h.Because)
		}
		out.Texts = append(out.Texts, l.say("holds.until", with{"Until": l.name(h.Name), "Because": because}))
	}
	return out
}
