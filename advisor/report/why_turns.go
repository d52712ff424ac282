package report

import (
	"fmt"
	"strconv"
	"strings"

	"longstand/advisor"
)

// turns lists the single answers that would change a call, the unknown ones
// first: a line for each question, with how to find out and what that costs.
func (p *page) turns(w *advisor.Why) {
	p.title(turnsTitle[w.Kind])
	if len(w.Turns) == 0 {
		words := fmt.Sprintf("No single answer changes this (%d were tried).", w.Tried)
		if w.Tried == 0 {
			words = "None is tried: it is settled for this car, or no rule reads it by itself."
		}
		p.para("", "", words)
		return
	}
	if w.Kind == "question" {
		p.answers(w.Turns)
		return
	}
	group := ""
	for i := 0; i < len(w.Turns); {
		t := &w.Turns[i]
		j := i + 1
		for j < len(w.Turns) && w.Turns[j].Question == t.Question && p.changes(&w.Turns[j]) == p.changes(t) {
			j++
		}
		g := "Not known yet, the cheapest to find out first:"
		if t.Asked {
			g = "Answered already; the call would change if it were instead:"
		}
		if g != group {
			p.sub(g)
			group = g
		}
		p.para("  - ", "    ", fmt.Sprintf("%s: %s -> %s", t.Name, either(w.Turns[i:j]), p.changes(t)))
		p.findOut(t)
		i = j
	}
}

var turnsTitle = map[string]string{"operation": "What single answer would change this", "suspect": "What single answer would change the call",
	"inspection": "What single answer would change this", "hold": "What single answer would change this",
	"question": "What each answer would change"}

// answers lists what each answer to one question would change.
func (p *page) answers(turns []advisor.Turn) {
	for i := 0; i < len(turns); {
		j := i + 1
		for j < len(turns) && p.changes(&turns[j]) == p.changes(&turns[i]) {
			j++
		}
		p.para("  - ", "    ", either(turns[i:j])+":")
		for _, c := range turns[i].Changes {
			p.para("    - ", "      ", fmt.Sprintf("%s: %s, not %s", p.thing(c.ID), c.To, c.From))
		}
		i = j
	}
}

// either joins the answers of one question that do the same; numbers of one
// unit say it once.
func either(turns []advisor.Turn) string {
	var words []string
	unit := ""
	for i := range turns {
		number, after, _ := strings.Cut(turns[i].Written, " ")
		if _, err := strconv.ParseFloat(number, 64); err != nil || i > 0 && after != unit {
			return strings.Join(allWritten(turns), ", or ")
		}
		words, unit = append(words, number), after
	}
	last := len(words) - 1
	if last > 0 {
		words = []string{strings.Join(words[:last], ", ") + " or " + words[last]}
	}
	return strings.TrimSpace(words[0] + " " + unit)
}

func allWritten(turns []advisor.Turn) (out []string) {
	for i := range turns {
		out = append(out, turns[i].Written)
	}
	return out
}

// changes words what an answer does: to the one call that was asked about, or
// to each of several.
func (p *page) changes(t *advisor.Turn) string {
	if len(t.Changes) == 1 {
		return t.Changes[0].To
	}
	var out []string
	for _, c := range t.Changes {
		out = append(out, p.thing(c.ID)+": "+c.To)
	}
	return strings.Join(out, "; ")
}

// asking says of a walk-round question where its answer is found.
var asking = map[string]string{"story": "Ask the owner", "papers": "Look in the papers", "outside": "Look, outside",
	"cabin": "Look, in the cabin", "luggage": "Look, at the luggage space", "bonnet": "Look, under the bonnet",
	"underneath": "Look, underneath", "bench": "Look, on the bench"}

// findOut says how an answer is found out by the cheapest way, and what that
// costs; of what is known already, what that is.
func (p *page) findOut(t *advisor.Turn) {
	if t.Now != "" {
		p.para("    ", "    ", "Now: "+t.Now+".")
		if t.Asked && t.How <= advisor.Measured {
			return
		}
	}
	if len(t.Ways) == 0 {
		return
	}
	f := &t.Ways[0]
	how := asking[f.Station]
	if f.Look != "" {
		how = sentenceOpen(f.Name)
	}
	words := how + ", which costs nothing"
	if f.Minutes > 0 {
		words = fmt.Sprintf("%s: %s, %s", how, Hours(f.Minutes), Money(f.Cost, p.a.Settings))
	}
	if len(f.Opens) > 0 {
		words += " with what it opens: " + strings.Join(p.names(f.Opens), "; ")
	}
	p.para("    ", "    ", words+".")
}
