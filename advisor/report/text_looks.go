package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

func (p *page) looks() {
	if len(p.a.Open) > 0 {
		defer p.openCount()
	}
	if !p.anyAdvised() {
		return
	}
	p.title("Look at first")
	for _, st := range advisor.Stations {
		here := p.looksAt(st)
		if len(here) == 0 {
			continue
		}
		p.sub(p.station(st) + ":")
		shared := sharedHolds(here)
		if words := p.notBefore(shared); words != "" {
			p.para("  ", "  ", "For all of these, "+words)
		}
		for _, k := range here {
			p.look(k, shared)
		}
	}
}

// looksAt lists the advised looks of a station.
func (p *page) looksAt(station string) (out []*advisor.InspectionAdvice) {
	for i := range p.a.Inspections {
		if k := &p.a.Inspections[i]; k.Where == station && k.Advised {
			out = append(out, k)
		}
	}
	return out
}

// sharedHolds are the holds that stop every one of several looks: said once.
func sharedHolds(looks []*advisor.InspectionAdvice) (out []string) {
	if len(looks) < 2 {
		return nil
	}
	for _, id := range looks[0].Blocked {
		if !slices.ContainsFunc(looks, func(k *advisor.InspectionAdvice) bool { return !slices.Contains(k.Blocked, id) }) {
			out = append(out, id)
		}
	}
	return out
}

// notBefore says what must be so before a look: the holds that stand, and that
// there are some of which it is not known yet whether they apply.
func (p *page) notBefore(holds []string) string {
	var stand, unsure []string
	for i := range p.a.Holds {
		if h := &p.a.Holds[i]; slices.Contains(holds, h.ID) && h.When == advisor.True {
			stand = append(stand, strings.TrimSuffix(h.Name, "."))
		} else if slices.Contains(holds, h.ID) {
			unsure = append(unsure, strings.TrimSuffix(h.Name, "."))
		}
	}
	switch {
	case len(stand)+len(unsure) == 0:
		return ""
	case len(unsure) > 2:
		stand = append(stand, fmt.Sprintf("%d of the stops above that may apply", len(unsure)))
	default:
		stand = append(stand, unsure...)
	}
	return "not before: " + strings.Join(stand, "; ") + "."
}

func (p *page) anyAdvised() bool {
	for i := range p.a.Inspections {
		if p.a.Inspections[i].Advised {
			return true
		}
	}
	return false
}

// look tells of one look; the holds in said were said of all its station.
func (p *page) look(k *advisor.InspectionAdvice, said []string) {
	p.para(fmt.Sprintf("%3d. ", k.Rank), "     ", fmt.Sprintf("%s [%s], %s", sentenceOpen(k.Name), k.ID, Hours(k.Minutes)))
	say := func(words string, ids ...string) {
		if len(ids) > 0 {
			p.para("     ", "     ", words+strings.Join(ids, "; ")+".")
		}
	}
	if k.Reason != "" {
		p.para("     ", "     ", advisor.Sentence(k.Reason))
	}
	switch {
	case k.WhenOpen:
		p.para("     ", "     ", p.whenOpen(k))
	case len(k.Access) > 0:
		say("To get at it: ", p.names(k.Access)...)
	}
	if with := p.oneByOne(k); with != "" {
		p.para("     ", "     ", "Does in one go what "+with+" ask one by one.")
	}
	if len(k.Lacks) > 0 {
		p.para("     ", "     ", "The shop does not have: "+strings.Join(k.Lacks, "; ")+". Borrow what is missing, or have this look done elsewhere.")
	}
	own := slices.DeleteFunc(slices.Clone(k.Blocked), func(id string) bool { return slices.Contains(said, id) })
	if words := p.notBefore(own); words != "" {
		p.para("     ", "     ", advisor.Sentence(words))
	}
	say("Done first: ", append(p.lookNames(k.Before), p.operations(k.Before)...)...)
	if k.Breaks != "" {
		p.para("     ", "     ", "Risk: "+advisor.Sentence(k.Breaks))
	}
	p.cautions(k.Cautions, "     ")
}

// whenOpen says of a look behind a closed door whether the work is sure to open it.
func (p *page) whenOpen(k *advisor.InspectionAdvice) string {
	for _, id := range k.Access {
		if o := p.a.Operation(id); o != nil && o.Call == advisor.LookFirst {
			return "Look when open, if the work opens it."
		}
	}
	return "Look when open: the work opens it anyway."
}

// oneByOne gives the numbers of the advised looks that a set of looks takes in,
// where it takes in more than one.
func (p *page) oneByOne(k *advisor.InspectionAdvice) string {
	var out []string
	for i := range p.a.Inspections {
		if one := &p.a.Inspections[i]; one.Advised && slices.Contains(k.Bundle, one.ID) {
			out = append(out, fmt.Sprint(one.Rank))
		}
	}
	if len(out) < 2 {
		return ""
	}
	return joined(out)
}

// openCount says how many questions of the walk-round are still worth asking.
func (p *page) openCount() {
	p.para("", "", fmt.Sprintf("%d questions of the walk-round are still open and can change this advice; `longstand intake` asks them.", len(p.a.Open)))
}
