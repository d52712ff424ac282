package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// unused finds what nothing comes of: questions, options, derived values,
// operations, inspections, cautions, families and sources.
func (p *prover) unused() {
	live := p.live()
	read := make([]bool, len(p.r.Book.Questions))
	for id := range live {
		for _, q := range p.r.Program.Reads(id) {
			read[q] = true
		}
	}
	for i := range p.r.Book.Questions {
		q := &p.r.Book.Questions[i]
		if q.Kind == advisor.Text || q.Always && !read[i] {
			continue
		}
		if !read[i] {
			p.list.Warnf(q.At, "unread-question", "no rule reads %s", q.ID).Help = "a question that changes nothing wastes the owner's time: say always = true if it must be asked"
			continue
		}
		p.options(i, live)
	}
	p.looks(read)
	p.work()
	p.named()
}

// live are the conditions that rules go by. A derived value lives only in
// those that use it.
func (p *prover) live() map[advisor.CondID]bool {
	live := map[advisor.CondID]bool{}
	used := map[string]bool{}
	texts := map[string]string{}
	var use func(text string)
	use = func(text string) {
		for _, name := range condition.Names(text) {
			if !used[name] {
				used[name] = true
				use(texts[name])
			}
		}
	}
	for i := range p.r.Book.Derived {
		texts[p.r.Book.Derived[i].ID] = p.r.Book.Derived[i].Is.Text
	}
	for _, it := range p.r.items {
		for _, c := range it.conds {
			if d, ok := it.value.(*advisor.Derived); ok && (c.to == &d.Is || c.node == nil) {
				if d.Shown.Text != "" {
					use(d.ID)
				}
				continue
			}
			if c.node != nil {
				live[c.to.ID] = true
				use(c.to.Text)
			}
		}
	}
	for i := range p.r.Book.Derived {
		if d := &p.r.Book.Derived[i]; !used[d.ID] {
			p.list.Warnf(d.At, "unread-derived", "no rule reads %s", d.ID).Help = "leave it out"
		}
	}
	return live
}

// options: an option changes nothing when no rule tells it from any other. One
// that is told from some of the others is a word for what people see.
func (p *prover) options(i int, live map[advisor.CondID]bool) {
	q := &p.r.Book.Questions[i]
	if q.Always || q.Kind != advisor.Choice && q.Kind != advisor.Choices {
		return
	}
	var ids []advisor.CondID
	for _, id := range p.r.Program.ReadBy(i) {
		if live[id] {
			ids = append(ids, id)
		}
	}
	alike := p.r.Program.Alike(i, ids)
	if q.Kind == advisor.Choice && (len(alike) != 1 || len(alike[0]) < len(q.Options)) {
		return
	}
	var names []string
	for _, o := range alike {
		names = append(names, q.Options[o[0]].ID)
	}
	switch {
	case q.Kind == advisor.Choice:
		p.list.Warnf(q.At, "idle-option", "no rule tells the options of %s apart", q.ID).Help = "compare it with an option in some rule, or ask a yes or no"
	case len(names) > 0:
		d := p.list.Warnf(q.Options[alike[0][0]].At, "idle-option", "no rule reads %s of %s", diag.OneOf(names), q.ID)
		d.Help = "use it in a rule, or leave it out"
	}
}

// looks: an inspection is worth its minutes when some rule reads what it finds.
func (p *prover) looks(read []bool) {
	for i := range p.r.Book.Inspections {
		l := &p.r.Book.Inspections[i]
		if len(l.Answers) > 0 && !slices.ContainsFunc(l.Answers, func(q string) bool { return read[p.questions[q]] }) {
			p.list.Warnf(l.At, "unused-inspection", "no rule reads what %s finds", l.ID).Help = "let a sign, a hold or another rule read " + diag.OneOf(l.Answers)
		}
	}
}

// work: an operation is advised when it cures something, a standing rule puts
// it in, an inspection or a danger wants it, or other work needs it.
func (p *prover) work() {
	b := p.r.Book
	next, wanted := requiredBy(b), map[string]bool{}
	var want func(ids []string)
	want = func(ids []string) {
		for _, id := range ids {
			if !wanted[id] {
				wanted[id] = true
				want(next[id])
			}
		}
	}
	for _, o := range b.Operations {
		if len(o.Looks) > 0 {
			want([]string{o.ID})
		}
	}
	for _, s := range b.Suspects {
		want(s.CuredBy)
	}
	for _, s := range b.Standing {
		if !s.Out {
			want(s.Operations)
		}
	}
	for _, i := range b.Inspections {
		want(append(slices.Clone(i.Access), i.Needs...))
	}
	for _, o := range b.Operations {
		if !wanted[o.ID] {
			p.list.Warnf(o.At, "never-advised", "nothing can recommend %s", o.ID).Help = "let it cure a suspect, let a standing rule put it in, or let other work need it"
		}
	}
}

// requiredBy lists what every operation and route may require, by id.
func requiredBy(b *advisor.Book) map[string][]string {
	next := map[string][]string{}
	add := func(id string, needs []advisor.Need) {
		for _, n := range needs {
			next[id] = append(next[id], n.Op)
		}
	}
	for _, r := range b.Routes {
		for _, w := range r.Ways {
			next[r.ID] = append(next[r.ID], w.Through...)
		}
	}
	for _, o := range b.Operations {
		add(o.ID, o.Needs)
		add(o.ID, o.Brings)
		for _, v := range o.Variants {
			add(o.ID, v.Needs)
		}
	}
	return next
}

// named: cautions, families and sources that nothing names.
func (p *prover) named() {
	used := map[string]map[string]int{"hazard": {}, "family": {}, "source": {}}
	for _, it := range p.r.items {
		for _, r := range it.refs {
			if names := used[r.to[0]]; names != nil {
				names[r.id]++
			}
		}
	}
	for _, c := range p.r.Book.Cautions {
		if used["hazard"][c.Hazard] == 0 {
			p.list.Warnf(c.At, "unused-caution", "no work, look or question names the hazard %q", c.Hazard).Help = "name it in hazards where it can hurt, or leave the caution out"
		}
	}
	for _, f := range p.r.Book.Families {
		if used["family"][f.ID] < 2 {
			p.list.Warnf(f.At, "lonely-family", "fewer than two suspects are of the family %s", f.ID).Help = "causes that exclude one another are two at least"
		}
	}
	for _, s := range p.r.Book.Sources {
		if used["source"][s.ID] == 0 && s.At.Line > 0 && s.ID != "practice" && s.ID != "shop" {
			p.list.Warnf(s.At, "uncited-source", "no rule cites %s", s.ID).Help = "leave it out"
		}
	}
}
