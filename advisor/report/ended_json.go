package report

import (
	_ "embed" // the schema
	"encoding/json"

	"longstand/advisor"
)

// endedSchema describes what EndedJSON writes.
//
//go:embed ended.schema.json
var endedSchema []byte

// EndedSchema gives the JSON Schema (2020-12) of the end of a job, format
// version 1.
func EndedSchema() []byte { return endedSchema }

// EndedJSON writes the end of a job as one object, format version 1.
func EndedJSON(a *advisor.Advice, b *advisor.Book) ([]byte, error) {
	c := a.Case
	suspects, work := suspectsOf(a, b), workOf(a, b)
	looked, found := lookedAt(suspects)
	on, by := any(nil), any(nil)
	if c.Closed != nil {
		on, by = c.Closed.Date, orNil(c.Closed.By)
	}
	out, err := json.MarshalIndent(object{
		"closed":     1,
		"case":       object{"id": c.ID, "name": c.Name, "date": c.Date, "closed_on": on, "by": by, "book": orNil(c.Book), "layers": list(c.Layers)},
		"suspects":   each(suspects, endedOne),
		"operations": each(work, endedHours),
		"looked_at":  looked,
		"found":      found,
	}, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}

func endedOne(s *endedSuspect) any {
	return object{"id": s.id, "name": s.name, "forecast": four1(s.forecast), "found": s.looked.Found,
		"by": orNil(s.looked.By), "note": orNil(s.looked.Note)}
}

func endedHours(w *endedWork) any {
	out := object{"id": w.id, "name": w.name, "took": nil, "estimate": nil, "by": nil, "note": nil}
	if e := w.estimate; e != nil {
		out["estimate"] = []float64{e.Low, e.Usual, e.High}
	}
	if t := w.taken; t != nil {
		out["by"], out["note"] = orNil(t.By), orNil(t.Note)
		if t.Known {
			out["took"] = t.Hours
		}
	}
	return out
}
