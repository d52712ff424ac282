package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"longstand/advisor"
)

// number is that of this letter: one more than the last that the case remembers.
func (l *letter) number() int { return nextLetter(l.a.Case) }

func nextLetter(c *advisor.Case) int {
	last := 0
	for i := range c.Letters {
		last = max(last, c.Letters[i].Number)
	}
	return last + 1
}

// LetterSays is what the letter on an advice, written on a day ("" for the
// case's date), says, as the case remembers it so
// that a later one can say what changed.
func LetterSays(a *advisor.Advice, day string) advisor.Letter {
	says := advisor.Letter{Number: nextLetter(a.Case), Date: cmp.Or(day, a.Case.Date), Agree: wholeTaxed(a.Total.Firm, a.Settings), Likely: wholeTaxed(a.Total.Likely, a.Settings)}
	for i := range a.Operations {
		switch o := &a.Operations[i]; callNow(a, o) {
		case "do":
			says.Do = append(says.Do, o.ID)
		case "look":
			says.LookFirst = append(says.LookFirst, o.ID)
		}
	}
	for i := range a.Holds {
		if h := &a.Holds[i]; h.When == advisor.True {
			says.Stops = append(says.Stops, h.ID)
		}
	}
	for i := range a.Case.Answers {
		says.Found = append(says.Found, a.Case.Answers[i].Question)
	}
	return says
}

// wholeTaxed is a sum with tax in whole units, as pages write it.
func wholeTaxed(minor int64, s *advisor.Settings) int64 {
	return int64(math.Floor(float64(minor)*(1+s.Tax)/math.Pow10(s.MinorDigits) + 0.5))
}

// letterNumber is an earlier letter that the case remembers.
func (l *letter) letterNumber(n int) (*advisor.Letter, error) {
	for i := range l.a.Case.Letters {
		if e := &l.a.Case.Letters[i]; e.Number == n {
			return e, nil
		}
	}
	if len(l.a.Case.Letters) == 0 {
		return nil, fmt.Errorf("the case remembers no letter: `longstand letter CASE --send` writes one and notes what it said")
	}
	return nil, fmt.Errorf("the case remembers no letter %d; the last was %d", n, l.number()-1)
}

// changed is a later letter, which says only what changed since an earlier one:
// the sums, what was found, the work and the stops that came and went, and the
// decisions on what is new.
func (l *letter) changed(since *advisor.Letter) []section {
	title := with{"Number": since.Number, "Date": longDay(since.Date, 0, l.a.Settings.Locale)}
	out := []section{{ID: "since", Title: l.say("title.since", title), Shape: sideShape, Front: true, Blocks: l.sumsThen(since)}}
	out = append(out, section{ID: "news", Title: l.say("title.news", nil), Shape: wideShape, Blocks: l.foundSince(since)})
	calls := l.movedCalls(since)
	out = append(out, section{ID: "moved", Title: l.say("title.moved", nil), Shape: wideShape, Blocks: calls})
	out = append(out, section{ID: "never", Title: l.say("title.never", nil), Shape: sideShape, Blocks: append(l.neverDo(false), l.movedStops(since)...)})
	fresh := l.choicesOn(func(o *advisor.OperationAdvice) bool { return l.asks(o) && callThen(since, o.ID) != callNow(l.a, o) })
	out = append(out, fresh)
	if len(fresh.Blocks) > 0 || since.Agree != wholeTaxed(l.a.Total.Firm, l.a.Settings) {
		out = append(out, l.terms())
	}
	out = append(out, l.refused())
	if len(calls) == 0 && len(out[1].Blocks) == 0 {
		out[0].Blocks = append(out[0].Blocks, block{Kind: paraBlock, Text: l.say("since.nothing", nil)})
	}
	return append(out, section{ID: "remarks", Title: l.say("title.remarks", nil), Shape: sideShape, Blocks: l.remarks().Blocks})
}

// asks tells whether an operation is asked for in a decision.
func (l *letter) asks(o *advisor.OperationAdvice) bool {
	return callNow(l.a, o) != "leave" && l.chapterOf(o) >= 0
}

// callNow and callThen name a call as the letters' memory has it: do, look or
// leave. Work that waits for a danger to be known is not asked for yet: look.
func callNow(a *advisor.Advice, o *advisor.OperationAdvice) string {
	if doing(o.Call) && waitsIn(a, o.ID) != "" {
		return "look"
	}
	return phraseOf[o.Call]
}

func callThen(since *advisor.Letter, id string) string {
	switch {
	case slices.Contains(since.Do, id):
		return "do"
	case slices.Contains(since.LookFirst, id):
		return "look"
	}
	return "leave"
}

func (l *letter) sumsThen(since *advisor.Letter) []block {
	day, how := l.likelyDay()
	rows := [][]string{
		{l.say("sum.agree", nil), inFull(since.Agree, l.a.Settings), l.taxed(l.a.Total.Firm)},
		{l.say("sum.likely", nil), inFull(since.Likely, l.a.Settings), l.taxed(l.a.Total.Likely)},
		{l.say("sum.range", nil), "", l.span(l.a.Total.Independent)},
		{l.say("day.likely", nil), "", day},
	}
	out := []block{{Kind: tableBlock, Look: "sums", Text: l.region.say(l.say("sum.caption", with{"Tax": l.number2(l.a.Settings.Tax * 100)})),
		Columns: []string{l.say("sum.what", nil), l.say("since.then", nil), l.say("since.now", nil)}, Rows: rows, Short: true}}
	if done := l.doneAlready(); len(done) > 0 {
		out = append(out, block{Kind: paraBlock, Text: l.say("leave.done", with{"Names": strings.Join(done, "; ")})})
	}
	if _, danger := l.waiting(); danger != "" {
		out = append(out, block{Kind: paraBlock, Text: l.say("money.waits", with{"Fault": danger})})
	}
	return append(out, block{Kind: paraBlock, Text: how})
}

// foundSince are the answers that the earlier letter did not have.
func (l *letter) foundSince(since *advisor.Letter) []block {
	known := map[string]int{}
	for _, q := range since.Found {
		known[q]++
	}
	var found []pair
	for i := range l.a.Case.Answers {
		an := &l.a.Case.Answers[i]
		if known[an.Question]--; known[an.Question] >= 0 {
			continue
		}
		if q := l.b.Question(an.Question); q != nil && an.Value.State != advisor.NotAsked {
			found = append(found, l.finding(q, an))
		}
	}
	if len(found) == 0 {
		return nil
	}
	return []block{{Kind: pairsBlock, Pairs: found}}
}

// movedCalls tells of each operation whose call is another now, ways in aside.
func (l *letter) movedCalls(since *advisor.Letter) []block {
	var items []pair
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		then, now := callThen(since, o.ID), callNow(l.a, o)
		if then == now || o.Access && !o.Door {
			continue
		}
		said := now
		switch {
		case o.Forced == "done":
			said = "done"
		case doing(o.Call) && now == "look":
			said = "waits"
		}
		v := with{"Name": l.title(o.Name), "Then": l.say("since."+then, nil), "Now": l.say("since."+said, nil),
			"Sum": l.taxed(l.mean(o)), "Reason": l.why(o), "Costs": now == "do" || now == "look"}
		items = append(items, pair{Lead: l.say("since.lead", v), Texts: []string{l.say("since.moved", v)}})
	}
	if len(items) == 0 {
		return nil
	}
	return []block{{Kind: worksBlock, Pairs: items}}
}

// movedStops tells of stops that are gone and of new ones.
func (l *letter) movedStops(since *advisor.Letter) []block {
	var gone, fresh []string
	now := map[string]bool{}
	for i := range l.a.Holds {
		h := &l.a.Holds[i]
		now[h.ID] = true
		if h.When == advisor.True && !slices.Contains(since.Stops, h.ID) {
			fresh = append(fresh, l.say("since.fresh", with{"Act": l.region.say(acts[leading(h.Stops)]), "Until": l.name(h.Name)}))
		}
	}
	for i := range l.b.Holds {
		if h := &l.b.Holds[i]; slices.Contains(since.Stops, h.ID) && !now[h.ID] {
			gone = append(gone, l.say("since.gone", with{"Name": l.name(h.Name)}))
		}
	}
	if len(gone)+len(fresh) == 0 {
		return nil
	}
	return []block{{Kind: paraBlock, Text: l.say("since.stops", nil)}, {Kind: listBlock, Items: append(fresh, gone...)}}
}
