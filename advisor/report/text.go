package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Text writes the advice for a terminal 80 columns wide, top down as a mechanic
// works: what must not be done, where to look, what to do, what to leave, money.
func Text(a *advisor.Advice) string { return whole(&page{a: a}) }

// whole writes the page of the whole advice.
func whole(p *page) string {
	p.heading()
	p.short()
	p.holds()
	p.looks()
	p.work()
	p.leave()
	p.reckoned()
	p.money()
	p.footer()
	return p.b.String()
}

func (p *page) heading() {
	c := p.a.Case
	p.head(c.Name)
	p.para("", "  ", fmt.Sprintf("job %s, reckoned to %s; care: %s (%s)", c.ID, longDay(c.Date, 0, p.a.Settings.Locale), p.a.Care, p.a.CareBecause))
	if c.Words != "" {
		p.para("The owner's wish: ", "  ", c.Words)
	}
	for i := range p.a.Conflicts {
		p.para("DISAGREEMENT: ", "  ", p.a.Conflicts[i].Text)
	}
	p.house()
}

// house names the house rules that took part, each with what it says of
// itself, and those whose day to be looked at again has come.
func (p *page) house() {
	var all, due []string
	for i := range p.a.HouseRules {
		r := &p.a.HouseRules[i]
		var about []string
		add := func(before, what string) {
			if what != "" {
				about = append(about, before+what)
			}
		}
		add("withdrawn: ", strings.TrimSuffix(r.Withdrawn, "."))
		add("by ", r.By)
		add("learned on ", r.Learned)
		if r.Due {
			due = append(due, r.ID+" ("+r.Again+")")
		} else {
			add("look again on ", r.Again)
		}
		one := r.ID
		if len(about) > 0 {
			one += " (" + strings.Join(about, "; ") + ")"
		}
		all = append(all, one)
	}
	if len(all) > 0 {
		p.para("House rules that took part: ", "  ", strings.Join(all, ", "))
	}
	if len(due) > 0 {
		p.para("To be looked at again, their day has come: ", "  ", strings.Join(due, ", "))
	}
}
