package report

import (
	"cmp"
	"fmt"
	"slices"

	"longstand/advisor"
)

// Ended writes the page at the end of a job: what was found of the suspects
// beside the forecast that was frozen at the end of intake, and the hours taken
// beside those estimated.
func Ended(a *advisor.Advice, b *advisor.Book) string { return endOf(&page{a: a}, b) }

// EndedMarkdown is Ended in Markdown.
func EndedMarkdown(a *advisor.Advice, b *advisor.Book) string {
	return endOf(&page{a: a, markdown: true}, b)
}

// worthNaming is the forecast from which a suspect is named though nobody
// looked at it, and mostNamed how many such.
const (
	worthNaming = 0.2
	mostNamed   = 8
)

func endOf(p *page, b *advisor.Book) string {
	c, all := p.a.Case, suspectsOf(p.a, b)
	p.ending()
	p.title("What was found, beside the forecast")
	if c.Forecast == nil {
		p.para("", "", "No forecast was frozen before the first finding, so that what was found can be held against none.")
	}
	p.foundThat("Found:", all, advisor.Found, 0)
	p.foundThat("Looked at, and sound:", all, advisor.Sound, 0)
	p.foundThat("Looked at, and nobody could say:", all, advisor.Unsettled, 0)
	if c.Closed != nil { // before that, who knows the forecast of what is still asked finds it
		p.foundThat("Not looked at, and forecast on one car in five or more:", all, advisor.NotLookedAt, worthNaming)
	}
	p.hoursTaken(b)
	p.title("What it is worth")
	looked, found := lookedAt(all)
	was := "suspects were"
	if looked == 1 {
		was = "suspect was"
	}
	p.para("", "", fmt.Sprintf("%d %s looked at in this job, and %d found; of the other %d nothing is known. "+
		"One car proves nothing about a forecast: gather closed cases, and `longstand account` counts them.", looked, was, found, len(all)-looked))
	return p.b.String()
}

// ending is the head of the page.
func (p *page) ending() {
	c := p.a.Case
	if c.Closed == nil {
		p.head("Not closed yet: " + c.Name)
		p.para("", "  ", "job "+c.ID)
		return
	}
	p.head("Closed: " + c.Name)
	words := fmt.Sprintf("job %s, closed on %s", c.ID, longDay(c.Closed.Date, 0, p.a.Settings.Locale))
	if c.Closed.By != "" {
		words += " by " + c.Closed.By
	}
	p.para("", "  ", words)
}

// endedSuspect is one suspect as a job leaves it.
type endedSuspect struct {
	id, name string
	forecast *float64 // nil when the forecast has none
	looked   advisor.Looked
}

// suspectsOf lists, in order of id, the suspects of the forecast and those of
// which the case says something; without a forecast, those of the advice.
func suspectsOf(a *advisor.Advice, b *advisor.Book) (out []endedSuspect) {
	c, r := a.Case, newRegion(b.Words, a.Settings)
	ids := map[string]bool{}
	for id := range c.Forecast {
		ids[id] = true
	}
	for i := range c.Looked {
		ids[c.Looked[i].Suspect] = true
	}
	if c.Forecast == nil {
		for i := range a.Suspects {
			ids[a.Suspects[i].ID] = true
		}
	}
	for id := range ids {
		s := endedSuspect{id: id, name: id, looked: advisor.Looked{Suspect: id, Found: advisor.NotLookedAt}}
		if k := b.Suspect(id); k != nil {
			s.name = r.say(k.Name)
		}
		if f, ok := c.Forecast[id]; ok {
			s.forecast = &f
		}
		if l := c.LookedAt(id); l != nil {
			s.looked = *l
		}
		out = append(out, s)
	}
	slices.SortFunc(out, func(x, y endedSuspect) int { return cmp.Compare(x.id, y.id) })
	return out
}

func lookedAt(all []endedSuspect) (looked, found int) {
	for i := range all {
		if all[i].looked.Found != advisor.NotLookedAt {
			looked++
		}
		if all[i].looked.Found == advisor.Found {
			found++
		}
	}
	return looked, found
}

// foundThat lists the suspects of which one thing was found, the likeliest by
// the forecast first, from a forecast on.
func (p *page) foundThat(title string, all []endedSuspect, found string, from float64) {
	these := slices.DeleteFunc(slices.Clone(all), func(s endedSuspect) bool {
		return s.looked.Found != found || s.chance() < from
	})
	slices.SortStableFunc(these, func(x, y endedSuspect) int { return cmp.Compare(y.chance(), x.chance()) })
	if len(these) == 0 {
		return
	}
	p.para("", "", title)
	for i := range these {
		if found == advisor.NotLookedAt && i == mostNamed {
			p.para("  - ", "    ", fmt.Sprintf("and %d more.", len(these)-i))
			return
		}
		s := &these[i]
		words := s.name + ": no forecast"
		if s.forecast != nil {
			words = s.name + ": forecast on " + Chance(*s.forecast)
		}
		if s.looked.By != "" {
			words += "; " + s.looked.By
		}
		p.para("  - ", "    ", words+".")
		if s.looked.Note != "" {
			p.para("    ", "    ", advisor.Sentence(s.looked.Note))
		}
	}
}

func (s *endedSuspect) chance() float64 {
	if s.forecast == nil {
		return 0
	}
	return *s.forecast
}
