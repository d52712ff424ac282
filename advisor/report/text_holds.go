package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

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
				p.para("  ", "  ", advisor.Sentence(h.Because))
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
