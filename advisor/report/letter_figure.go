package report

import (
	"fmt"
	"math"
	"slices"

	"longstand/advisor"
)

// figure is a picture: shapes and labels in a box of Width by Height units, in
// which a letter of a label is about 7 wide. Nothing in it is told by colour.
type figure struct {
	ID, Title, Desc string
	Width, Height   int
	Bars            []bar
	Labels          []label
	Rules           []rule
}

// bar is a rectangle with a pattern: "stripes", "dots" or "plain".
type bar struct {
	X, Y, Width, Height int
	Pattern             string
}

// label is a text at a point; Anchor is start, middle or end.
type label struct {
	X, Y         int
	Anchor, Text string
}

// rule is a straight line.
type rule struct{ X1, Y1, X2, Y2 int }

const (
	boxWidth    = 640
	letterWidth = 7
	rowHeight   = 26
)

// fit cuts a label to a width in units.
func fit(text string, width int) string {
	r := []rune(text)
	if most := width / letterWidth; len(r) > most {
		return string(r[:max(0, most-1)]) + "…"
	}
	return text
}

// cause is the operation that the car turns on and the suspect whose signs say most on it.
type cause struct {
	op *advisor.OperationAdvice
	k  *advisor.SuspectAdvice
}

// turnsOn finds the operation that the car turns on: lifting the head when signs
// speak on anything below it, otherwise the operation on which signs say most.
func (l *letter) turnsOn() cause {
	head := l.a.Operation(headOff)
	if head != nil && head.Call != advisor.NotFitted {
		best := cause{op: head}
		for i := range l.a.Operations {
			if o := &l.a.Operations[i]; o == head || slices.Contains(o.Needs, headOff) {
				best.k = l.louder(best.k, o.Suspects)
			}
		}
		if weight(best.k) >= 3 { // as much as doubling or halving the odds
			return best
		}
	}
	var best cause
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		if k := l.louder(best.k, o.Suspects); k != best.k && !o.Access && o.Call != advisor.NotFitted {
			best = cause{o, k}
		}
	}
	return best
}

// louder is the suspect, of one and some more, on which counted signs say most.
func (l *letter) louder(k *advisor.SuspectAdvice, more []string) *advisor.SuspectAdvice {
	for _, id := range more {
		if s := l.a.Suspect(id); weight(s) > weight(k) {
			k = s
		}
	}
	return k
}

// weight is how much the counted signs on a suspect say, for and against together.
func weight(k *advisor.SuspectAdvice) float64 {
	sum := 0.0
	for _, n := range speaking(k) {
		sum += math.Min(math.Abs(n.Decibans), 30)
	}
	return sum
}

// speaking are the counted signs of a suspect that move its odds, the strongest
// first, eight at most.
func speaking(k *advisor.SuspectAdvice) []*advisor.LedgerLine {
	var out []*advisor.LedgerLine
	if k == nil {
		return nil
	}
	for i := range k.Ledger {
		if n := &k.Ledger[i]; n.Counted && n.Ratio != 1 && !math.IsNaN(n.Decibans) && len(out) < 8 {
			out = append(out, n)
		}
	}
	return out
}

// evidence is the picture of the signs for and against the main call, with its table.
func (l *letter) evidence() section {
	m := l.turnsOn()
	s := section{ID: "evidence", Title: l.say("title.evidence", nil), Shape: wideShape}
	lines := speaking(m.k)
	if len(lines) == 0 {
		return s
	}
	v := with{"Work": l.name(m.op.Name), "Fault": l.name(m.k.Name), "Base": Chance(m.k.Base), "Now": Chance(m.k.Chance)}
	var rows [][]string
	for _, n := range lines {
		side := "evidence.for"
		if n.Decibans < 0 {
			side = "evidence.against"
		}
		rows = append(rows, []string{l.title(n.Name), l.say(side, nil), l.times(n.Decibans), l.say("known."+n.How.String(), nil)})
	}
	f := evidencePicture(l, lines)
	f.Title, f.Desc = l.say("evidence.title", v), l.say("evidence.desc", v)
	s.Blocks = []block{{Kind: paraBlock, Text: l.say("evidence.line", v)}, {Kind: pictureBlock, Picture: f},
		{Kind: tableBlock, Text: l.say("evidence.caption", v), Short: true, Rows: rows, Columns: []string{
			l.say("evidence.sign", nil), l.say("evidence.side", nil), l.say("evidence.weight", nil), l.say("found.known", nil)}}}
	return s
}

// times writes decibans with their sign; one that decides alone has no number.
func (l *letter) times(dB float64) string {
	if math.IsInf(dB, 0) {
		return l.say("evidence.alone", nil)
	}
	return fmt.Sprintf("%+.1f", dB)
}

// evidencePicture draws a bar for each sign from a middle line, right for the
// fault and left against it, as long as its decibans, with the sign's name on
// the free side. The scale is ten, or the strongest sign if that is more.
func evidencePicture(l *letter, lines []*advisor.LedgerLine) *figure {
	const middle = boxWidth / 2
	scale := 10.0
	for _, n := range lines {
		if !math.IsInf(n.Decibans, 0) {
			scale = math.Max(scale, math.Abs(n.Decibans))
		}
	}
	f := &figure{ID: "signs", Width: boxWidth, Height: 34 + rowHeight*len(lines)}
	f.Labels = []label{{middle - 8, 14, "end", l.say("evidence.left", nil)}, {middle + 8, 14, "start", l.say("evidence.right", nil)}}
	f.Rules = []rule{{middle, 22, middle, f.Height - 4}}
	for i, n := range lines {
		f.signBar(n, fit(l.times(n.Decibans), 53), 30+rowHeight*i, scale, fit(l.title(n.Name), middle-16))
	}
	return f
}

// signBar draws one sign at a height.
func (f *figure) signBar(n *advisor.LedgerLine, amount string, y int, scale float64, name string) {
	const middle, half = boxWidth / 2, boxWidth/2 - 60 // leaves room for the number
	long := int(math.Round(half * math.Min(math.Abs(n.Decibans)/scale, 1)))
	if n.Decibans < 0 {
		f.Bars = append(f.Bars, bar{middle - long, y, long, 14, "dots"})
		f.Labels = append(f.Labels, label{middle - long - 6, y + 12, "end", amount}, label{middle + 8, y + 12, "start", name})
		return
	}
	f.Bars = append(f.Bars, bar{middle, y, long, 14, "stripes"})
	f.Labels = append(f.Labels, label{middle + long + 6, y + 12, "start", amount}, label{middle - 8, y + 12, "end", name})
}
