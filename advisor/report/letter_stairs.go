package report

import (
	"fmt"

	"longstand/advisor"
)

// howFar is the ladder as one staircase, with its table.
func (l *letter) howFar() section {
	s := section{ID: "how-far", Title: l.say("title.ladder", nil), Shape: wideShape}
	steps := l.a.Ladder.Steps
	if len(steps) == 0 {
		return s
	}
	here := &steps[l.a.Ladder.Here]
	v := with{"Last": len(steps) - 1, "Here": l.a.Ladder.Here, "Care": l.a.Care, "First": l.taxed(steps[0].Cost),
		"Sum": l.taxed(here.Cost), "Most": l.taxed(steps[len(steps)-1].Cost)}
	f := stairs(l, steps)
	f.Title, f.Desc = l.say("ladder.title", v), l.say("ladder.desc", v)
	var rows [][]string
	for i := range steps {
		enters := l.names(steps[i].Enters)
		if i == 0 {
			enters = l.say("ladder.zero", with{"Count": len(steps[0].Enters)})
		}
		if i == l.a.Ladder.Here {
			enters += " " + l.say("ladder.here", v)
		}
		rows = append(rows, []string{fmt.Sprint(i), enters, l.taxed(steps[i].AddCost), l.taxed(steps[i].Cost)})
	}
	s.Blocks = []block{{Kind: paraBlock, Text: l.say("ladder.line", v)}, {Kind: pictureBlock, Picture: f},
		{Kind: tableBlock, Look: "stairs", Text: l.say("ladder.caption", nil), Rows: rows, Columns: []string{
			l.say("ladder.step", nil), l.say("ladder.enters", nil), l.say("ladder.adds", nil), l.say("ladder.whole", nil)}}}
	return s
}

// names lists operations by name, each with a capital.
func (l *letter) names(ids []string) string {
	out := ""
	for _, id := range ids {
		if o := l.a.Operation(id); o != nil {
			out += l.book(o.Name) + " "
		}
	}
	return out
}

// stairs draws the steps as columns side by side, each as high as its whole
// sum; the step that fits this owner is striped.
func stairs(l *letter, steps []advisor.Step) *figure {
	const top, floor, left = 34, 230, 10
	f := &figure{ID: "stairs", Width: boxWidth, Height: floor + 40}
	most := int64(1)
	for i := range steps {
		most = max(most, steps[i].Cost)
	}
	wide := max(1, min(80, (boxWidth-2*left)/len(steps)))
	every := (3*letterWidth + wide) / wide // so that the numbers below stay apart
	for i := range steps {
		high := int(max(0, steps[i].Cost) * (floor - top) / most)
		b := bar{left + i*wide, floor - high, max(1, wide-2), high, "plain"}
		if i == l.a.Ladder.Here {
			b.Pattern = "stripes"
		}
		f.Bars = append(f.Bars, b)
		if i%every == 0 {
			f.Labels = append(f.Labels, label{b.X + b.Width/2, floor + 16, "middle", fmt.Sprint(i)})
		}
	}
	f.Rules = []rule{{left, floor, boxWidth - left, floor}}
	f.Labels = append(f.Labels, label{left, floor + 34, "start", l.say("ladder.axis", nil)})
	f.Labels = append(f.Labels, sumLabels(l, steps, f.Bars)...)
	return f
}

// sumLabels writes the sums of the first step, the one that fits and the last
// above their columns, each pushed aside where it would meet the one before or
// leave the box.
func sumLabels(l *letter, steps []advisor.Step, bars []bar) []label {
	var out []label
	free := 0
	for i := range steps {
		if i != 0 && i != l.a.Ladder.Here && i != len(steps)-1 {
			continue
		}
		text := l.taxed(steps[i].Cost)
		wide := len([]rune(text)) * letterWidth
		x := min(max(bars[i].X+bars[i].Width/2-wide/2, free), boxWidth-wide)
		y := bars[i].Y - 6
		if x < free { // no room beside: a line higher
			y = max(12, y-16)
		}
		out = append(out, label{x, y, "start", text})
		free = x + wide + letterWidth
	}
	return out
}
