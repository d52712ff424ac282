package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

func (p *page) whyLook(k *advisor.InspectionAdvice) {
	verdict := "called for, not to be skipped"
	if !k.Advised {
		verdict = "not called for"
	}
	p.head(sentenceOpen(k.Name) + ": " + verdict)
	p.para("", "", advisor.Sentence(k.Reason))
	if len(k.Dangers) > 0 {
		p.para("It looks at a danger: ", "  ", strings.Join(p.suspectNames(k.Dangers), "; ")+".")
	}
	if len(k.Lifts) > 0 {
		p.para("It can lift: do not, until ", "  ", strings.Join(p.holdNames(k.Lifts), "; ")+".")
	}
	if len(k.Settles) > 0 {
		p.para("It can change the call on: ", "  ", strings.Join(p.names(k.Settles), "; ")+".")
	}
	p.title("Money")
	m := func(x int64) string { return Money(x, p.a.Settings) }
	p.para("", "", fmt.Sprintf("It takes %s, %s. Knowing is worth %s.", Hours(k.Minutes), m(k.Cost), m(k.Worth)))
	if k.Net >= 0 {
		p.para("", "", fmt.Sprintf("Worth it by %s.", m(k.Net)))
	} else {
		p.para("", "", fmt.Sprintf("Falls short by %s in money alone.", m(-k.Net)))
	}
	switch {
	case k.WhenOpen:
		p.para("", "", p.whenOpen(k))
	case len(k.Access) > 0:
		p.para("", "", "To get at it: "+strings.Join(p.names(k.Access), "; ")+".")
	}
	p.care = k.Cautions
	p.cite(k.Sources)
}

func (p *page) whyHold(h *advisor.HoldAdvice) {
	p.para("", "  ", fmt.Sprintf("DO NOT %s UNTIL %s.", strings.Join(first(h.Stops), " or "), strings.TrimSuffix(h.Name, ".")))
	p.para("", "", advisor.Sentence(h.Because))
	if h.When != advisor.True {
		p.para("", "", "It is not known yet whether it applies; until then it stands.")
	}
	by := func(kind string) (ids []string) {
		for _, s := range h.LiftedBy {
			if s.Kind == kind {
				ids = append(ids, s.ID)
			}
		}
		return ids
	}
	if work := p.names(by("operation")); len(work) > 0 {
		p.para("Lifted by the work: ", "  ", strings.Join(work, "; ")+".")
	}
	if looks := p.lookNames(by("inspection")); len(looks) > 0 {
		p.para("Lifted by a look that finds it so: ", "  ", strings.Join(looks, "; ")+".")
	}
	p.cite(h.Sources)
}

func (p *page) whyQuestion(w *advisor.Why) {
	p.head(w.Name)
	if w.Because != "" {
		p.para("", "", advisor.Sentence(w.Because))
	}
	if w.Now != "" {
		p.para("Known now: ", "  ", w.Now+".")
	}
	i := slices.IndexFunc(p.a.Open, func(q advisor.OpenQuestion) bool { return q.ID == w.ID })
	switch {
	case i < 0 && w.Now == "":
		p.para("", "", "Not asked: no answer to it can change this advice any more.")
	case i >= 0:
		q := &p.a.Open[i]
		p.para("", "", "Still open, not idle: it can change this advice.")
		if names := p.suspectNames(q.Suspects); len(names) > 0 {
			p.para("It speaks for or against: ", "  ", strings.Join(names, "; ")+".")
		}
		if q.Worth > 0 {
			p.para("", "", fmt.Sprintf("Knowing is worth %s; it takes %s.", Money(q.Worth, p.a.Settings), Hours(w.Minutes)))
		}
	}
}
