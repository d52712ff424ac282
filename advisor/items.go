package advisor

import "strings"

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
