package report

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"longstand/advisor"
)

// chapters are the decisions that an owner is asked for, eight at most, each
// with the parts of the car that it takes in, in the order in which they matter.
// A part that no chapter names is taken in by the last.
var chapters = []struct {
	id    string
	parts []string
}{
	{"shell", []string{"structure"}},
	{"brakes", []string{"brakes"}},
	{"wheels", []string{"wheels", "steering", "suspension"}},
	{"fuel", []string{"fuel", "ignition", "electrics"}},
	{"cooling", []string{"cooling"}},
	{"engine", []string{"engine_top", "engine_bottom", "timing", "crank_seals", "lubrication"}},
	{"clutch", []string{"clutch", "gearbox", "driveline"}},
	{"rest", []string{"belts", "interior", "exhaust"}},
}

// share is the money of one decision, of the routine, or of getting at things:
// firm, what waits for a danger to be known, and what looks may add, whole and
// by its chance.
type share struct{ firm, waits, maybe, expected int64 }

func (s *share) add(n *advisor.Line) {
	if n.Kind == "firm" || n.Kind == "look" {
		s.firm += n.Mean
		return
	}
	if n.Waits != "" {
		s.waits += n.Mean
		return
	}
	s.maybe += n.Mean
	s.expected += int64(math.Floor(n.Chance*float64(n.Mean) + 0.5))
}

// chapterOf is where an operation is decided: the index of its chapter, or one
// of the places below.
func (l *letter) chapterOf(o *advisor.OperationAdvice) int {
	switch {
	case o.Routine && o.Call == advisor.Do && o.Overruled == nil:
		return inRoutine
	case o.Access && (o.Part == "access" || o.Part == ""):
		return l.opensFor(o)
	}
	for i := range chapters {
		if slices.Contains(chapters[i].parts, o.Part) {
			return i
		}
	}
	return len(chapters) - 1
}

// opensFor is the one chapter whose work a way in is opened for; a way in that
// serves several is paid once, outside them.
func (l *letter) opensFor(way *advisor.OperationAdvice) int {
	at := inAccess
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		if o.Access || o.Call == advisor.Leave || o.Call == advisor.NotFitted || !slices.Contains(o.Needs, way.ID) {
			continue
		}
		switch c := l.chapterOf(o); {
		case c < 0 || at >= 0 && c != at:
			return inAccess
		default:
			at = c
		}
	}
	return at
}

// Where money goes that is not asked for in a decision.
const (
	inRoutine = -1
	inAccess  = -2
	inLooks   = -3
)

// shares lays out the lines of the total: every line in exactly one place.
func (l *letter) shares() map[int]*share {
	out := map[int]*share{inRoutine: {}, inAccess: {}, inLooks: {}}
	for i := range l.a.Total.Lines {
		n := &l.a.Total.Lines[i]
		at := inLooks
		if o := l.a.Operation(n.Operation); o != nil && n.Kind != "look" {
			at = l.chapterOf(o)
		}
		if out[at] == nil {
			out[at] = &share{}
		}
		out[at].add(n)
	}
	return out
}

// choicesOn are the decisions on work for which only holds, nil for all.
func (l *letter) choicesOn(only func(*advisor.OperationAdvice) bool) section {
	s := section{ID: "decisions", Title: l.say("title.decisions", nil), Shape: wideShape}
	shares := l.shares()
	for i := range chapters {
		var now, look []*advisor.OperationAdvice
		for o := range l.a.Operations {
			op := &l.a.Operations[o]
			switch {
			case l.chapterOf(op) != i:
			case op.Call == advisor.Do || op.Call == advisor.DoOpen:
				now = append(now, op)
			case op.Call == advisor.LookFirst:
				look = append(look, op)
			}
		}
		if len(now)+len(look) == 0 {
			continue
		}
		if only != nil && !slices.ContainsFunc(append(now, look...), only) {
			continue
		}
		name := l.say("chapter."+chapters[i].id, nil)
		s.Blocks = append(s.Blocks, block{Kind: decisionBlock, Text: fmt.Sprintf("%d. %s", len(s.Blocks)+1, name),
			Adds: l.adds(cmp.Or(shares[i], &share{})), Inside: l.choice(now, look)})
	}
	return s
}

// choices are all decisions, with the routine work in one line.
func (l *letter) choices() section {
	s := l.choicesOn(nil)
	lead := "decide.lead_in"
	if len(s.Blocks) == 0 {
		lead = "decide.none"
	}
	s.Blocks = append([]block{{Kind: paraBlock, Text: l.say(lead, nil)}}, s.Blocks...)
	if n := len(l.routine()); n > 0 {
		s.Blocks = append(s.Blocks, block{Kind: decisionBlock, Text: l.say("title.routine", nil), Inside: []block{
			{Kind: paraBlock, Text: l.say("routine.line", with{"Count": n, "Sum": l.taxed(l.shares()[inRoutine].firm)})},
			{Kind: paraBlock, Text: l.refusal(l.routine())}, l.threeAnswers()}})
	}
	return s
}

// sumsInFull shows how the decisions make up the likely sum.
func (l *letter) sumsInFull() section {
	s := section{ID: "sums", Title: l.say("title.sums", nil)}
	shares := l.shares()
	rows := [][]string{}
	for i := range chapters {
		if shares[i] != nil {
			rows = append(rows, l.shareRow(l.say("chapter."+chapters[i].id, nil), shares[i]))
		}
	}
	for _, at := range []int{inRoutine, inAccess, inLooks} {
		rows = append(rows, l.shareRow(l.say(fmt.Sprintf("share.%d", -at), nil), shares[at]))
	}
	t := &l.a.Total
	rows = append(rows, []string{l.say("share.all", nil), l.taxed(t.Firm), l.taxed(t.Maybe), l.taxed(t.Likely)})
	s.Blocks = append(s.Blocks, block{Kind: tableBlock, Text: l.say("share.caption", nil), Look: "sums", Short: true, Rows: rows, Columns: []string{
		l.say("share.what", nil), l.say("share.firm", nil), l.say("share.maybe", nil), l.say("share.likely", nil)}})
	return s
}

func (l *letter) shareRow(name string, s *share) []string {
	return []string{name, l.taxed(s.firm), l.taxed(s.waits + s.expected), l.taxed(s.firm + s.waits + s.expected)}
}
