package report

import (
	"fmt"
	"slices"

	"longstand/advisor"
)

// endedWork is one operation as a job leaves it.
type endedWork struct {
	id, name string
	estimate *advisor.Three // nil when the book does not have it any more
	taken    *advisor.Taken // nil when nothing is said
}

// workOf lists what was done, in that order, each once, and what else has hours.
func workOf(a *advisor.Advice, b *advisor.Book) (out []endedWork) {
	c, r := a.Case, newRegion(b.Words, a.Settings)
	add := func(id string) {
		if slices.ContainsFunc(out, func(w endedWork) bool { return w.id == id }) {
			return
		}
		w := endedWork{id: id, name: id, taken: c.Took(id)}
		if o := a.Operation(id); o != nil {
			w.name, w.estimate = r.say(o.Name), o.Estimate()
		}
		if w.taken != nil && w.taken.Estimate != nil {
			w.estimate = w.taken.Estimate
		}
		out = append(out, w)
	}
	for i := range c.Done {
		add(c.Done[i].Operation)
	}
	for i := range c.Taken {
		add(c.Taken[i].Operation)
	}
	return out
}

// hoursTaken lists the hours of what was done.
func (p *page) hoursTaken(b *advisor.Book) {
	work := workOf(p.a, b)
	if len(work) == 0 {
		return
	}
	p.title("Hours taken, beside the estimate")
	for i := range work {
		w := &work[i]
		words := w.name + ": hours not noted"
		if w.taken != nil && w.taken.Known {
			words = w.name + ": " + Hours(minutesOf(w.taken.Hours))
		}
		if e := w.estimate; e != nil {
			words += fmt.Sprintf("; estimated %s, 8 jobs in 10 from %s to %s", Hours(minutesOf(e.Usual)), Hours(minutesOf(e.Low)), Hours(minutesOf(e.High)))
		}
		p.para("  - ", "    ", words+".")
		if w.taken != nil && w.taken.Note != "" {
			p.para("    ", "    ", advisor.Sentence(w.taken.Note))
		}
	}
}

func minutesOf(hours float64) int { return int(hours*60 + 0.5) }
