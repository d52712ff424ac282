package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/report"
)

// contrast is what two books say differently of one car. It keeps no advice,
// since there may be one for each of very many cars.
type contrast struct {
	calls, holds, chances []turned
	likely                [2]int64 // minor units, before and after
	money                 [2]string
}

// turned is one thing that says something else than before.
type turned struct{ id, from, to, because string }

func (t turned) String() string {
	line := fmt.Sprintf("%s: %s, now %s", t.id, t.from, t.to)
	if t.because != "" {
		line += "; " + t.because
	}
	return line
}

// contrasted compares the advice of two books on one car.
func contrasted(before, after *advisor.Advice) contrast {
	c := contrast{
		likely: [2]int64{before.Total.Likely, after.Total.Likely},
		money:  [2]string{report.Money(before.Total.Likely, before.Settings), report.Money(after.Total.Likely, after.Settings)},
	}
	old, now := map[string]string{}, map[string]string{}
	for i := range before.Operations {
		old[before.Operations[i].ID] = string(before.Operations[i].Call)
	}
	why := map[string]string{}
	for i := range after.Operations {
		o := &after.Operations[i]
		if _, was := old[o.ID]; was || o.InScope || o.Call == advisor.LookFirst {
			now[o.ID], why[o.ID] = string(o.Call), o.Reason
		}
	}
	c.calls = turns(old, now, "not in the book", why)
	old, now = map[string]string{}, map[string]string{}
	for i := range before.Holds {
		old[before.Holds[i].ID] = holdSays(&before.Holds[i])
	}
	for i := range after.Holds {
		now[after.Holds[i].ID] = holdSays(&after.Holds[i])
	}
	c.holds = turns(old, now, "no hold", nil)
	c.chances = moved(before, after)
	return c
}

// turns lists what differs, in order of id; what one side lacks is called absent.
func turns(old, now map[string]string, absent string, why map[string]string) (out []turned) {
	for id, to := range now {
		from, was := old[id]
		if !was {
			from = absent
		}
		if from != to {
			out = append(out, turned{id, from, to, why[id]})
		}
	}
	for id, from := range old {
		if _, still := now[id]; !still {
			out = append(out, turned{id: id, from: from, to: absent})
		}
	}
	slices.SortFunc(out, func(x, y turned) int { return strings.Compare(x.id, y.id) })
	return out
}

// moved lists the suspects whose chance differs by more than 1 in 200.
func moved(before, after *advisor.Advice) (out []turned) {
	old := map[string]float64{}
	for i := range before.Suspects {
		old[before.Suspects[i].ID] = before.Suspects[i].Chance
	}
	for i := range after.Suspects {
		k := &after.Suspects[i]
		if was, there := old[k.ID]; there && math.Abs(was-k.Chance) > 0.005 {
			out = append(out, turned{id: k.ID, from: report.Chance(was), to: report.Chance(k.Chance)})
		}
	}
	return out
}

// nothing tells whether calls, holds and the likely sum stay as they are.
func (c *contrast) nothing() bool {
	return len(c.calls) == 0 && len(c.holds) == 0 && c.money[0] == c.money[1]
}

// write prints what differs, each kind under its head.
func (c *contrast) write(w io.Writer, indent string) {
	for _, part := range []struct {
		head  string
		lines []turned
	}{{"calls", c.calls}, {"holds", c.holds}, {"chances", c.chances}} {
		if len(part.lines) == 0 {
			continue
		}
		fmt.Fprintf(w, "%s%s\n", indent, part.head)
		for _, line := range part.lines {
			fmt.Fprintf(w, "%s  %s\n", indent, line)
		}
	}
	if c.money[0] != c.money[1] {
		fmt.Fprintf(w, "%slikely sum: %s, now %s\n", indent, c.money[0], c.money[1])
	}
}
