package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// forcedWords say what decided a call whatever the price.
var forcedWords = map[string]string{"standing rule": "a firm rule of the shop", "danger": "a danger found bad",
	"accepted": "the owner accepted it", "declined": "the owner declined it", "done": "it is done",
	"needed": "other work that is decided needs it", "to look": "it is opened to look"}

// moneyOf tells what an operation costs, alone and shared, and at which chance
// the call would turn.
func (p *page) moneyOf(o *advisor.OperationAdvice) {
	if o.Call == advisor.NotFitted || o.Forced == "done" {
		return
	}
	m := func(x int64) string { return Money(x, p.a.Settings) }
	p.title("Money")
	words := fmt.Sprintf("Itself %s on average.", m(o.Cost))
	if o.Alone != o.Cost {
		words += fmt.Sprintf(" Alone, with all that it needs, %s.", m(o.Alone))
	}
	if o.Saved > 0 {
		words += fmt.Sprintf(" %s less while other work has it open.", m(o.Saved))
	}
	p.para("", "", words)
	p.figures(o)
	if len(o.Needs) > 0 {
		p.para("It needs: ", "  ", strings.Join(p.names(o.Needs), "; ")+".")
	}
	switch {
	case o.Access && len(o.NeededBy) > 0:
		p.para("Opens the way for: ", "  ", some(p.names(o.NeededBy), 6)+".")
	case !o.Access && len(o.SharedWith) > 0:
		p.para("Shares the way in with: ", "  ", some(p.names(o.SharedWith), 6)+".")
	}
	p.worth(o)
	p.breakEven(o)
	if names := p.standing(o.WouldIf); len(names) > 0 {
		p.para("A firm rule would decide it if more were known: ", "  ", strings.Join(names, " "))
	}
}

// figures gives the three figures of an operation that is advised or may be
// needed, and what may go wrong in it.
func (p *page) figures(o *advisor.OperationAdvice) {
	m := func(x int64) string { return Money(x, p.a.Settings) }
	for i := range p.a.Total.Lines {
		l := &p.a.Total.Lines[i]
		switch {
		case l.Operation != o.ID:
		case l.Kind == "risk":
			p.para("", "", fmt.Sprintf("Risk, %s: %s: %s more.", Chance(l.Chance), strings.TrimSuffix(l.Name, "."), m(l.Mean)))
		case l.Low < l.High:
			p.para("", "", fmt.Sprintf("Usually %s; 1 in 10 is under %s, 1 in 10 over %s.", m(l.Usual), m(l.Low), m(l.High)))
		}
	}
}

// worth says what decided the call, and by how much it pays or does not.
func (p *page) worth(o *advisor.OperationAdvice) {
	forced := forcedWords[o.Forced]
	if forced != "" {
		p.para("", "", "Decided whatever the price: "+forced+".")
	}
	if o.Margin == nil {
		return
	}
	words, by := "Worth it by %s", *o.Margin
	if by < 0 {
		words, by = "Falls short by %s", -by
	}
	if forced != "" {
		words += " by money alone"
	}
	p.para("", "", fmt.Sprintf(words+".", Money(by, p.a.Settings)))
}

// some joins the first few of a list and counts the rest.
func some(list []string, most int) string {
	if len(list) <= most {
		return strings.Join(list, "; ")
	}
	return fmt.Sprintf("%s; and %d more", strings.Join(list[:most], "; "), len(list)-most)
}

// breakEven says at which chance of the fault that asks most for it the call
// would turn.
func (p *page) breakEven(o *advisor.OperationAdvice) {
	s := p.a.Suspect(o.Lead)
	if o.BreakEven == nil || s == nil {
		return
	}
	now, turn := apart(s.Chance, *o.BreakEven)
	words := "It would pay from %s on; now it is %s: %s."
	if *o.BreakEven <= s.Chance {
		words = "It pays down to %s; now it is %s: %s."
	}
	p.para("", "", fmt.Sprintf(words, turn, now, s.Name))
}

// standing gives the reasons of standing rules.
func (p *page) standing(ids []string) (out []string) {
	for i := range p.a.Standing {
		if s := &p.a.Standing[i]; slices.Contains(ids, s.ID) {
			out = append(out, advisor.Sentence(s.Because))
		}
	}
	return out
}

// apart writes two chances as natural frequencies, fine enough to differ.
func apart(a, b float64) (string, string) {
	if Chance(a) != Chance(b) {
		return Chance(a), Chance(b)
	}
	of := 100.0
	for of < 1e4 && fmt.Sprintf("%.0f", a*of) == fmt.Sprintf("%.0f", b*of) {
		of *= 10
	}
	return fmt.Sprintf("about %.0f in %.0f", a*of, of), fmt.Sprintf("about %.0f in %.0f", b*of, of)
}
