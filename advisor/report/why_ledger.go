package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// ledger tells what speaks for a suspected fault and against it: the base, each
// sign with what it counted and how it is known, and what being there costs.
// What the page has said already is not said again.
func (p *page) ledger(s *advisor.SuspectAdvice, said string) {
	if !strings.Contains(said, strings.TrimSuffix(s.Because, ".")) {
		p.para("  ", "  ", advisor.Sentence(s.Because))
	}
	base := "Before any sign: " + Chance(s.Base) + "."
	if s.BaseNote != "" && s.BaseNote != s.Because {
		base += " " + advisor.Sentence(s.BaseNote)
	}
	p.para("  ", "  ", base)
	p.signs("For:", s, func(l *advisor.LedgerLine) bool { return l.Counted && l.Ratio >= tells })
	p.signs("Against:", s, func(l *advisor.LedgerLine) bool { return l.Counted && l.Ratio <= 1/tells })
	p.signs("Also seen, not counted again:", s, func(l *advisor.LedgerLine) bool { return !l.Counted && l.Ratio != 1 })
	if s.Conflict {
		p.para("  ", "  ", "Two decisive findings contradict one another; the chance is taken without them.")
	}
	if s.IfLeft > 0 {
		p.para("  ", "  ", fmt.Sprintf("If it is there and is left: %s more, besides the work itself later.", Money(s.IfLeft, p.a.Settings)))
	}
	if s.Danger != "" {
		p.para("  ", "  ", "A danger ("+strings.ReplaceAll(s.Danger, "_", " ")+"), "+map[advisor.Truth]string{
			advisor.True: "looked at and found sound.", advisor.False: "known bad.", advisor.Unknown: "not yet looked at."}[s.Looked])
	}
	p.cite(s.Sources)
	p.cite(s.BaseSources)
}

// tells is the least that a sign must have multiplied the odds by, or divided
// them, to be worth a line.
const tells = 1.05

// signs lists the signs of one kind, strongest first.
func (p *page) signs(title string, s *advisor.SuspectAdvice, of func(*advisor.LedgerLine) bool) {
	shown := false
	for i := range s.Ledger {
		l := &s.Ledger[i]
		if !of(l) {
			continue
		}
		if !shown {
			p.para("  ", "  ", title)
			shown = true
		}
		weight := ""
		switch {
		case l.Counted && l.Ratio > 1:
			weight = fmt.Sprintf(", odds x %s", odds(l.Ratio))
		case l.Counted:
			weight = fmt.Sprintf(", odds / %s", odds(1/l.Ratio))
		}
		p.para("    - ", "      ", fmt.Sprintf("%s (%s%s)", strings.TrimSuffix(l.Name, "."), known[l.How], weight))
		p.cite(l.Sources)
	}
}

// known says how a sign is known.
var known = map[advisor.Channel]string{advisor.Seen: "seen or measured", advisor.Measured: "measured", advisor.Paper: "on paper",
	advisor.Owner: "the owner saw it", advisor.Secondhand: "hearsay", advisor.Nohow: "not known how"}

// odds writes what the odds were multiplied or divided by.
func odds(ratio float64) string {
	if ratio > 1e6 {
		return "settles it"
	}
	return fmt.Sprintf("%.1f", ratio)
}

// cite keeps the sources of what was said, each once.
func (p *page) cite(ids []string) {
	for _, id := range ids {
		if !slices.Contains(p.cited, id) {
			p.cited = append(p.cited, id)
		}
	}
}

// sources says in full where the rules of the page come from.
func (p *page) sources(w *advisor.Why) {
	if len(p.cited) == 0 {
		return
	}
	p.title("Sources")
	for _, id := range p.cited {
		words := id
		for i := range w.Sources {
			if s := &w.Sources[i]; s.ID == id {
				words = s.Cite
				if s.Recalled && !strings.Contains(words, "memory") {
					words += " (figures from memory, not read again)"
				}
			}
		}
		p.para("  - ", "    ", advisor.Sentence(words))
	}
}
