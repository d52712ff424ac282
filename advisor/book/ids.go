package book

import "longstand/advisor"

// ids lists the ids of a kind in a loaded book.
func (s *schema) ids(kind string) []string {
	b := s.book
	switch kind {
	case "question":
		return idsOf(b.Questions, func(q *advisor.Question) string { return q.ID })
	case "suspect":
		return idsOf(b.Suspects, func(v *advisor.Suspect) string { return v.ID })
	case "inspection":
		return idsOf(b.Inspections, func(v *advisor.Inspection) string { return v.ID })
	case "family":
		return idsOf(b.Families, func(v *advisor.Family) string { return v.ID })
	case "source":
		return idsOf(b.Sources, func(v *advisor.Source) string { return v.ID })
	case "operation": // and the routes, which needs name as well
		return append(idsOf(b.Operations, func(v *advisor.Operation) string { return v.ID }),
			idsOf(b.Routes, func(v *advisor.Route) string { return v.ID })...)
	case "hazard":
		seen := map[string]bool{}
		var out []string
		for i := range b.Cautions {
			if h := b.Cautions[i].Hazard; !seen[h] {
				seen[h] = true
				out = append(out, h)
			}
		}
		return out
	}
	return nil
}

func idsOf[T any](items []T, id func(*T) string) []string {
	out := make([]string, len(items))
	for i := range items {
		out[i] = id(&items[i])
	}
	return out
}
