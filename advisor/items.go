package advisor

import (
	"maps"
	"slices"
	"strings"
)

// Item is one item of a book, as its rule file has it. A question has only its
// place: it gives no reason.
type Item struct {
	Kind, ID, Name string
	*Ground
}

// Items lists the items of a book kind by kind, each kind in the book's order.
// Families, sources and words are not among them: no advice speaks of one.
func (b *Book) Items() []Item {
	var out []Item
	add := func(kind, id, name string, g *Ground) { out = append(out, Item{kind, id, name, g}) }
	for i := range b.Questions {
		q := &b.Questions[i]
		add("question", q.ID, q.Name, &Ground{At: q.At})
	}
	for i := range b.Derived {
		add("derived", b.Derived[i].ID, b.Derived[i].Name, &b.Derived[i].Ground)
	}
	for i := range b.Suspects {
		add("suspect", b.Suspects[i].ID, b.Suspects[i].Name, &b.Suspects[i].Ground)
	}
	for i := range b.Signs {
		add("sign", b.Signs[i].ID, b.Signs[i].Name, &b.Signs[i].Ground)
	}
	for i := range b.Inspections {
		add("inspection", b.Inspections[i].ID, b.Inspections[i].Name, &b.Inspections[i].Ground)
	}
	for i := range b.Operations {
		add("operation", b.Operations[i].ID, b.Operations[i].Name, &b.Operations[i].Ground)
	}
	for i := range b.Routes {
		add("route", b.Routes[i].ID, b.Routes[i].Name, &b.Routes[i].Ground)
	}
	for i := range b.Standing {
		add("standing", b.Standing[i].ID, strings.Join(b.Standing[i].Operations, ", "), &b.Standing[i].Ground)
	}
	for i := range b.Holds {
		add("hold", b.Holds[i].ID, b.Holds[i].Name, &b.Holds[i].Ground)
	}
	for i := range b.Cautions {
		add("caution", b.Cautions[i].ID, b.Cautions[i].Hazard, &b.Cautions[i].Ground)
	}
	for i := range b.Types {
		add("type", b.Types[i].ID, b.Types[i].Name, &b.Types[i].Ground)
	}
	for i := range b.OnceOvers {
		add("once_over", b.OnceOvers[i].ID, b.OnceOvers[i].Name, &b.OnceOvers[i].Ground)
	}
	return out
}

// Figure is one figure of a book, or a group of them that stands in one place:
// whose it is, what it is, and why it is so. What gives no reason of its own rests
// on its item's.
type Figure struct {
	Of, What string
	Ground
}

// Figures lists every figure of a book with its reason and source: the shop's own
// settings, chances, counts, losses, hours, parts, savings, risks and minutes.
func (b *Book) Figures() []Figure {
	var out []Figure
	add := func(of, what string, own *Ground, item *Ground) {
		f := Figure{of, what, *item}
		if own != nil && own.Because != "" {
			f.Because = own.Because
		}
		if own != nil && len(own.Sources) > 0 {
			f.Sources = own.Sources
		}
		out = append(out, f)
	}
	b.Settings.figures(add)
	for i := range b.Suspects {
		s := &b.Suspects[i]
		for j := range s.Bases {
			add(s.ID, "base", &s.Bases[j].Ground, &s.Ground)
		}
		for j := range s.IfLeft {
			add(s.ID, "if_left", &s.IfLeft[j].Ground, &s.Ground)
		}
	}
	for i := range b.Signs {
		add(b.Signs[i].ID, "counts", nil, &b.Signs[i].Ground)
	}
	for i := range b.Inspections {
		add(b.Inspections[i].ID, "minutes", nil, &b.Inspections[i].Ground)
	}
	for i := range b.Operations {
		b.Operations[i].figures(add)
	}
	return out
}

func (o *Operation) figures(add func(of, what string, own, item *Ground)) {
	add(o.ID, "hours and parts", nil, &o.Ground)
	for j := range o.Variants {
		add(o.ID, "variant", &o.Variants[j].Ground, &o.Ground)
	}
	for j := range o.Savings {
		add(o.ID, "saving", &Ground{Because: o.Savings[j].Because}, &o.Ground)
	}
	for j := range o.Risks {
		add(o.ID, "risk", &o.Risks[j].Ground, &o.Ground)
	}
}

func (s *Settings) figures(add func(of, what string, own, item *Ground)) {
	for _, key := range slices.Sorted(maps.Keys(s.Grounds)) {
		g := s.Grounds[key]
		add("settings", key, nil, &g)
	}
	for i := range s.Hours {
		add("settings", "hours_factor", nil, &s.Hours[i].Ground)
	}
	for i := range s.CareWhen {
		add("settings", "care_when", nil, &s.CareWhen[i].Ground)
	}
}
