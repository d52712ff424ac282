package report

import (
	"fmt"
	"slices"
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

// acts are the acts of a hold as a mechanic says them after DO NOT.
var acts = map[string]string{"lifted": "lift it", "powered": "connect the battery", "charged": "charge the battery",
	"filled": "fill the cooling system", "turned": "turn the engine by hand", "cranked": "use the starter", "run": "run the engine",
	"moved": "roll or tow it", "driven": "drive it in the yard", "road": "take it on the road"}

// first keeps of a hold's stops those that do not follow from another.
func first(stops []string) []string {
	follows := map[string]bool{}
	for _, s := range stops {
		for _, t := range advisor.ActStops[s] {
			follows[t] = true
		}
	}
	var out []string
	for _, s := range stops {
		if !follows[s] {
			out = append(out, acts[s])
		}
	}
	return out
}

func (p *page) holds() {
	if len(p.a.Holds) == 0 {
		return
	}
	p.title("Do not, until")
	for _, act := range advisor.Acts { // in the order of waking a car
		for i := range p.a.Holds {
			if h := &p.a.Holds[i]; h.When == advisor.True && leading(h.Stops) == act {
				p.para("* ", "  ", fmt.Sprintf("DO NOT %s UNTIL %s.", strings.Join(first(h.Stops), " or "), strings.TrimSuffix(h.Name, ".")))
				p.para("  ", "  ", sentence(h.Because))
			}
		}
	}
	p.unsureHolds()
}

// unsureHolds gathers, act by act, the holds of which it is not known whether
// they apply: they stand as well, until the question is answered.
func (p *page) unsureHolds() {
	shown := false
	for _, act := range advisor.Acts {
		var until []string
		for i := range p.a.Holds {
			h := &p.a.Holds[i]
			if h.When != advisor.True && leading(h.Stops) == act {
				until = append(until, strings.TrimSuffix(h.Name, "."))
			}
		}
		if len(until) == 0 {
			continue
		}
		if !shown {
			p.para("* ", "  ", "These stand too, because it is not known yet whether they apply; looking or asking settles them:")
			shown = true
		}
		p.para("  - ", "    ", fmt.Sprintf("DO NOT %s UNTIL %s.", acts[act], strings.Join(until, "; ")))
	}
}

// untils lists act by act what must be so before it.
func (p *page) untils() {
	for _, act := range advisor.Acts {
		var until []string
		for i := range p.a.Holds {
			if h := &p.a.Holds[i]; leading(h.Stops) == act {
				until = append(until, strings.TrimSuffix(h.Name, "."))
			}
		}
		if len(until) > 0 {
			p.para("  - ", "    ", fmt.Sprintf("DO NOT %s UNTIL %s.", acts[act], strings.Join(until, "; ")))
		}
	}
}

// leading is the first act of a list in the order of waking a car.
func leading(stops []string) string {
	for _, act := range advisor.Acts {
		for _, s := range stops {
			if s == act {
				return act
			}
		}
	}
	return ""
}

// names gives the plain names of operations.
func (p *page) names(ids []string) []string {
	var out []string
	for _, id := range ids {
		out = append(out, p.name(id))
	}
	return out
}

// operations gives the plain names of those ids that are operations.
func (p *page) operations(ids []string) (out []string) {
	for _, id := range ids {
		if name := p.name(id); name != id {
			out = append(out, name)
		}
	}
	return out
}

// name is the plain name of an operation; another id is given back.
func (p *page) name(id string) string {
	for i := range p.a.Operations {
		if p.a.Operations[i].ID == id {
			return p.a.Operations[i].Name
		}
	}
	return id
}

// holdNames says of holds what must be so first.
func (p *page) holdNames(ids []string) []string {
	var out []string
	for i := range p.a.Holds {
		if h := &p.a.Holds[i]; slices.Contains(ids, h.ID) {
			out = append(out, strings.TrimSuffix(h.Name, "."))
		}
	}
	return out
}

// cautions prints each safety note beside its step: whole the first time on a
// page, after that by its hazard in one line.
func (p *page) cautions(list []advisor.CautionAdvice, indent string) {
	if p.said == nil {
		p.said = map[string]bool{}
	}
	var again []string
	for _, c := range list {
		if p.said[c.ID] {
			if h := strings.ReplaceAll(c.Hazard, "_", " "); !slices.Contains(again, h) {
				again = append(again, h)
			}
			continue
		}
		p.said[c.ID] = true
		text := sentence(c.Text)
		if c.Defers != "" {
			text += " Defers to: " + sentence(c.Defers)
		}
		p.para(indent+"! ", indent+"  ", text)
	}
	if len(again) > 0 {
		p.para(indent+"! ", indent+"  ", "As above: "+strings.Join(again, ", ")+".")
	}
}

// sentenceOpen is sentence without its full stop, for what goes on after it.
func sentenceOpen(words string) string { return strings.TrimSuffix(sentence(words), ".") }

// sentenceStart is sentence without its capital, for what goes on before it.
func sentenceStart(words string) string {
	r := []rune(sentence(words))
	if len(r) > 1 && strings.ToLower(string(r[1])) == string(r[1]) {
		r[0] = []rune(strings.ToLower(string(r[0])))[0]
	}
	return string(r)
}

// sentence gives words a capital first and a full stop last.
func sentence(words string) string {
	words = strings.TrimSpace(words)
	if words == "" {
		return ""
	}
	r := []rune(words)
	if len(r) > 1 && strings.ToUpper(string(r[1])) != string(r[1]) || len(r) == 1 || r[1] == ' ' {
		r[0] = []rune(strings.ToUpper(string(r[0])))[0]
	}
	if !strings.ContainsRune(".?!", r[len(r)-1]) {
		r = append(r, '.')
	}
	return string(r)
}
