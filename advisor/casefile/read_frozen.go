package casefile

import (
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// forecast reads the chances that intake wrote. They are never reckoned again,
// so one for a suspect that the book no longer has is only a warning.
func (r *caseReader) forecast(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	known := map[string]bool{}
	var ids []string
	for i := range r.book.Suspects {
		known[r.book.Suspects[i].ID] = true
		ids = append(ids, r.book.Suspects[i].ID)
	}
	r.c.Forecast = map[string]float64{}
	for i := range f.Value.Fields {
		s := &f.Value.Fields[i]
		if k := s.Value.Kind; k != tomltext.Float && k != tomltext.Integer || !(0 <= s.Value.Float && s.Value.Float <= 1) {
			r.list.Errorf(s.Value.Span, "out-of-range", "a chance is a number from 0 to 1, and this is %s", shown(s.Value))
			continue
		}
		if !known[s.Key] {
			d := r.list.Warnf(s.KeySpan, "unknown-suspect", "the book has no suspect %q", s.Key)
			d.Help = diag.DidYouMean(s.Key, ids)
		}
		r.c.Forecast[s.Key] = s.Value.Float
	}
}

// fromBook reads which book was used at intake.
func (r *caseReader) fromBook(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	for i := range f.Value.Fields {
		b := &f.Value.Fields[i]
		switch b.Key {
		case "fingerprint":
			r.c.Book = text(b, &r.list)
		case "layers":
			if b.Value.Kind != tomltext.Array {
				r.list.Errorf(b.Value.Span, "wrong-kind", "layers is a list of texts, and this is %s", b.Value.Kind)
			}
			for _, item := range b.Value.Items {
				r.c.Layers = append(r.c.Layers, text(&tomltext.Field{Key: "a layer", Value: item}, &r.list))
			}
		default:
			r.unknownKey(b, "book", []string{"fingerprint", "layers"})
		}
	}
}
