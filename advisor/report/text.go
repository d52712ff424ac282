package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// width is the width of a terminal page, in characters.
const width = 80

// Closing is the line that ends every page of advice.
const Closing = "This is advice, not a licence. Local codes, the maker's data and licensed practice come first wherever they differ from it."

// Text writes the advice for a terminal 80 columns wide, top down as a mechanic
// works: what must not be done, where to look, what to do, what to leave, money.
func Text(a *advisor.Advice) string {
	p := &page{a: a}
	p.heading()
	p.holds()
	p.looks()
	p.work()
	p.leave()
	p.money()
	p.footer()
	return p.b.String()
}

// page gathers the lines of one page.
type page struct {
	a *advisor.Advice
	b strings.Builder
	// said are the cautions already printed in full on this page.
	said map[string]bool
}

func (p *page) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

func (p *page) para(first, rest, text string) { p.b.WriteString(wrap(text, first, rest, width)) }

// title sets a section's title, underlined.
func (p *page) title(words string) {
	p.line("\n%s\n%s", words, strings.Repeat("-", runes(words)))
}

func (p *page) heading() {
	c := p.a.Case
	p.line("%s", c.Name)
	p.para("", "  ", fmt.Sprintf("job %s, reckoned to %s; care: %s (%s)", c.ID, c.Date, p.a.Care, p.a.CareBecause))
	if c.Words != "" {
		p.para("The owner's wish: ", "  ", c.Words)
	}
	for i := range p.a.Conflicts {
		p.para("DISAGREEMENT: ", "  ", p.a.Conflicts[i].Text)
	}
	if len(p.a.HouseRules) > 0 {
		p.para("House rules that took part: ", "  ", strings.Join(p.a.HouseRules, ", "))
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

// stationNames are where one stands, as said on pages.
var stationNames = map[string]string{"story": "With the owner", "papers": "With the papers", "outside": "Outside, walking round",
	"cabin": "In the cabin", "luggage": "At the luggage space", "bonnet": "Under the bonnet, cold", "underneath": "Underneath, on stands or lift",
	"bench": "On the bench", "inspection": "On the bench"}

func (p *page) looks() {
	if len(p.a.Open) > 0 && p.a.Open[0].Structure {
		defer p.openCount()
	}
	if !p.anyAdvised() {
		return
	}
	p.title("Look at first")
	for _, st := range advisor.Stations {
		shown := false
		for i := range p.a.Inspections {
			k := &p.a.Inspections[i]
			if k.Where != st || !k.Advised {
				continue
			}
			if !shown {
				p.line("%s:", stationNames[st])
				shown = true
			}
			p.look(k)
		}
	}
}

func (p *page) anyAdvised() bool {
	for i := range p.a.Inspections {
		if p.a.Inspections[i].Advised {
			return true
		}
	}
	return false
}

func (p *page) look(k *advisor.InspectionAdvice) {
	p.para(fmt.Sprintf("%3d. ", k.Rank), "     ", fmt.Sprintf("%s (%s)", sentence(k.Name), Hours(k.Minutes)))
	if k.Reason != "" {
		p.para("     ", "     ", sentence(k.Reason))
	}
	switch {
	case k.WhenOpen:
		p.para("     ", "     ", "Look when open: the work opens it anyway.")
	case len(k.Access) > 0:
		p.para("     ", "     ", "To get at it: "+strings.Join(p.names(k.Access), ", ")+".")
	}
	if len(k.Blocked) > 0 {
		p.para("     ", "     ", "Not before: "+strings.Join(p.holdNames(k.Blocked), "; ")+".")
	}
	p.cautions(k.Cautions, "     ")
}

// openCount says how many questions of the walk-round are still worth asking.
func (p *page) openCount() {
	n := 0
	for i := range p.a.Open {
		if p.a.Open[i].Structure {
			n++
		}
	}
	p.para("", "", fmt.Sprintf("%d questions of the walk-round can still change this advice, %d of them its rules; `longstand intake` asks them.", len(p.a.Open), n))
}

// names gives the plain names of operations.
func (p *page) names(ids []string) []string {
	var out []string
	for _, id := range ids {
		name := id
		for i := range p.a.Operations {
			if p.a.Operations[i].ID == id {
				name = p.a.Operations[i].Name
			}
		}
		out = append(out, name)
	}
	return out
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

func (p *page) footer() {
	for _, n := range p.a.Notes {
		p.para("Note: ", "  ", n)
	}
	p.line("")
	p.para("", "", Closing)
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
