package book

import (
	"cmp"
	"slices"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

var emptyTable = &tomltext.Node{Kind: tomltext.Table}

// collect makes the book's first outline: the fingerprint, the layers, and the
// questions and operations in the order by which conditions index them.
func (b *builder) collect(files []File) {
	b.book = &advisor.Book{Settings: *b.settings, Fingerprint: fingerprint(files)}
	for _, f := range files {
		if f.Layer != "" && !slices.Contains(b.book.Layers, f.Layer) {
			b.book.Layers = append(b.book.Layers, f.Layer)
		}
	}
	slices.Sort(b.book.Layers)
	b.book.Questions = listed[advisor.Question](b.items)
	order := map[string]int{}
	for _, it := range b.items {
		if it.kind.name == "question" {
			order[it.id] = it.order
		}
	}
	slices.SortFunc(b.book.Questions, func(x, y advisor.Question) int {
		return cmp.Or(cmp.Compare(station(x), station(y)), cmp.Compare(order[x.ID], order[y.ID]))
	})
	b.book.Operations = listed[advisor.Operation](b.items)
}

// flatten copies the items into the book's lists, after the conditions are
// compiled into the items.
func (b *builder) flatten() {
	book := b.book
	book.Settings = *b.settings
	book.Derived = listed[advisor.Derived](b.items)
	book.Suspects = listed[advisor.Suspect](b.items)
	book.Signs = listed[advisor.Sign](b.items)
	book.Families = listed[advisor.Family](b.items)
	book.Inspections = listed[advisor.Inspection](b.items)
	book.Operations = listed[advisor.Operation](b.items)
	book.Routes = listed[advisor.Route](b.items)
	book.Standing = listed[advisor.StandingRule](b.items)
	declineAll(book)
	book.Holds = listed[advisor.Hold](b.items)
	book.Cautions = listed[advisor.Caution](b.items)
	book.Sources = listed[advisor.Source](b.items)
	book.Words = listed[advisor.Word](b.items)
	book.Types = listed[advisor.Type](b.items)
	book.OnceOvers = listed[advisor.OnceOver](b.items)
	book.Withdrawn = b.withdrawals
}

// declineAll gives a declined rule that names no work all of it, but what makes
// safe and what only looks.
func declineAll(book *advisor.Book) {
	for i := range book.Standing {
		s := &book.Standing[i]
		if !s.Declined || len(s.Operations) > 0 {
			continue
		}
		for _, o := range book.Operations {
			if o.Phase != "make_safe" && o.Phase != "look" {
				s.Operations = append(s.Operations, o.ID)
			}
		}
	}
}

// listed copies the items of one noun, in order of id.
func listed[T any](items []*item) []T {
	var out []T
	for _, it := range items {
		if v, ok := it.value.(*T); ok {
			out = append(out, *v)
		}
	}
	return out
}

func station(q advisor.Question) int { return slices.Index(advisor.Stations, q.Station) }
