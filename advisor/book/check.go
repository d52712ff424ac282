package book

import (
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// Check loads a book and proves it: every specimen is run against its
// condition, and the specimens must be as sharp as the class of theirs asks.
func Check(files []File) *Result { return check(files, true) }

// check is Check; a book that is not held to its classes still has every atom
// of its conditions pinned.
func check(files []File, held bool) *Result {
	r := Load(files)
	if r.provable {
		p := newProver(r)
		p.held = held
		for _, it := range r.items {
			for _, c := range it.conds {
				if c.node != nil {
					p.prove(it, c)
				}
			}
		}
		p.withdrawnHolds()
		p.easedHolds()
		whole := !r.Diagnostics.HasErrors() // else what seems unused may only be misspelt
		p.misspelt = slices.ContainsFunc(r.Diagnostics, func(d diag.Diagnostic) bool { return strings.HasPrefix(d.Code, "unknown-") })
		p.anomalies()
		if whole {
			p.unused()
		}
		r.Score = p.score
		r.Diagnostics = append(r.Diagnostics, p.list...)
		r.hush()
		if whole {
			r.idleSilences()
		}
	}
	r.Diagnostics.Sort()
	return r
}

// prover runs specimens on one view, setting and unsetting their answers.
type prover struct {
	r          *Result
	held       bool // the built-in book to its classes
	list       diag.List
	view       *condition.View
	year       float64
	questions  map[string]int
	operations map[string]int
	score      Score
	misspelt   bool               // something named is not there
	compared   int                // pairs of rules
	told       map[diag.Span]bool // rules that add nothing
	nevers     map[advisor.CondID]bool
	standing   map[string]advisor.Truth // of holds: True, it never stands

}

func newProver(r *Result) *prover {
	p := &prover{
		r: r, view: r.Program.NewView(), year: SpecimenYear, questions: map[string]int{}, operations: map[string]int{},
		told: map[diag.Span]bool{}, nevers: map[advisor.CondID]bool{}, standing: map[string]advisor.Truth{},
	}
	p.view.Reset(p.year)
	for i := range r.Book.Questions {
		p.questions[r.Book.Questions[i].ID] = i
	}
	for i := range r.Book.Operations {
		p.operations[r.Book.Operations[i].ID] = i
	}
	return p
}

// load lays a specimen into the view; the function returned takes it out again.
func (p *prover) load(s *advisor.Specimen) (unload func()) {
	year := s.Year
	if year == 0 {
		year = SpecimenYear
	}
	if year != p.year {
		p.view.Reset(year)
		p.year = year
	}
	for _, a := range s.Answers {
		p.view.Set(p.questions[a.Question], a.Value)
	}
	for _, id := range s.Done {
		p.view.SetDone(p.operations[id], advisor.True)
	}
	return func() {
		for _, a := range s.Answers {
			p.view.Set(p.questions[a.Question], advisor.Value{})
		}
		for _, id := range s.Done {
			p.view.SetDone(p.operations[id], advisor.False)
		}
	}
}

// prove runs the specimens of one condition and measures what they pin.
func (p *prover) prove(it *item, c *pending) {
	if !p.boolean(it, c) {
		if len(c.to.Specimens) > 0 {
			p.list.Errorf(c.node.Span, "stray-specimen", "%s is a number: specimens pin what is true or false", it.id)
		}
		return
	}
	p.measure(it, c, p.run(it, c))
}

// boolean tells whether a condition of an item is true or false, and not the
// reckoning of a number.
func (p *prover) boolean(it *item, c *pending) bool {
	if d, ok := it.value.(*advisor.Derived); !ok || c.to != &d.Is {
		return true
	}
	i, ok := p.r.Program.DerivedIndex(it.id)
	return ok && !p.r.Program.DerivedIsNumber(i)
}

// run runs the specimens of one condition.
func (p *prover) run(it *item, c *pending) *condition.Measure {
	id := c.to.ID
	m := p.r.Program.Measure(id)
	for i := range c.to.Specimens {
		s := &c.to.Specimens[i]
		if s.Want == advisor.Unknown {
			continue
		}
		p.score.Specimens++
		unload := p.load(s)
		if !m.Add(p.view, s.Want) {
			p.score.Bad++
			p.disagrees(it, id, s)
		}
		unload()
	}
	return m
}

// disagrees reports a specimen on which the condition says something else.
func (p *prover) disagrees(it *item, id advisor.CondID, s *advisor.Specimen) {
	truth := p.view.Truth(id)
	d := p.list.Errorf(s.At, "specimen-disagrees", "the condition of %s is %s on this, and should be %s", it.id, truth, s.Want)
	if truth != advisor.Unknown {
		d.Help = "one of the two is wrong: ask which a mechanic would say"
		return
	}
	var open []string
	for _, q := range p.view.Missing(id, nil) {
		open = append(open, p.r.Book.Questions[q].ID)
	}
	d.Help = "it still reads " + strings.Join(open, ", ")
}
