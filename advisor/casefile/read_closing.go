package casefile

import (
	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// The keys of how a job ended, with what they mean.
var (
	closedKeys = []struct{ key, doc string }{
		{"on", "the day on which the job ended"},
		{"by", "who says so"},
	}
	lookedKeys = []struct{ key, doc string }{
		{"is", "found, sound, can't tell or not looked at"},
		{"by", "who looked"},
		{"note", "a remark"},
	}
	hoursKeys = []struct{ key, doc string }{
		{"took", "the hours that it took, or can't tell"},
		{"estimate", "hours as the book had them then: 1 in 10 is less, usual, 1 in 10 is more"},
		{"by", "who did it"},
		{"note", "a remark"},
	}
)

// mostHours bounds the hours of one operation: a year's work of one person.
const mostHours = 2000

// closed reads when and by whom a job was ended.
func (r *caseReader) closed(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	c := advisor.Closed{At: f.Value.Span}
	for i := range f.Value.Fields {
		k := &f.Value.Fields[i]
		switch k.Key {
		case "on":
			c.Date = date(k.Value, &r.list)
		case "by":
			c.By = text(k, &r.list)
		default:
			r.unknownKey(k, "closed", keysOf(closedKeys))
		}
	}
	if f.Value.Get("on") == nil {
		r.list.Errorf(f.Value.Span, "missing-key", "closed does not say on which day").Help = "add the day, as: on = 2025-10-14"
	}
	r.c.Closed = &c
}

// looked reads what was found of each suspect. One that the book no longer has
// is kept with a warning: what was found on a car stays true.
func (r *caseReader) looked(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	for i := range f.Value.Fields {
		k := &f.Value.Fields[i]
		l := advisor.Looked{Suspect: k.Key, At: k.Value.Span}
		is := tomltext.Field{Key: "finding", Value: k.Value}
		if k.Value.Kind == tomltext.Table {
			is.Value = nil
			for j := range k.Value.Fields {
				switch a := &k.Value.Fields[j]; a.Key {
				case "is":
					is.Value = a.Value
				case "by":
					l.By = text(a, &r.list)
				case "note":
					l.Note = text(a, &r.list)
				default:
					r.unknownKey(a, "what was found", keysOf(lookedKeys))
				}
			}
		}
		if is.Value == nil {
			r.list.Errorf(k.Value.Span, "missing-key", "it does not say what was found").Help = `add: is = "found", "sound", "can't tell" or "not looked at"`
			continue
		}
		if l.Found = r.word(&is, advisor.Findings); l.Found == "" {
			continue
		}
		r.warnUnless(k, "suspect", suspectIDs(r.book))
		r.c.Looked = append(r.c.Looked, l)
	}
}

// taken reads the hours that operations took.
func (r *caseReader) taken(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	for i := range f.Value.Fields {
		k := &f.Value.Fields[i]
		t := advisor.Taken{Operation: k.Key, At: k.Value.Span}
		took := k.Value
		if k.Value.Kind == tomltext.Table {
			took = r.longHours(&t, k.Value)
		}
		switch {
		case took == nil:
			r.list.Errorf(k.Value.Span, "missing-key", "it does not say how long it took").Help = "add: took = 2.5"
			continue
		case took.Kind == tomltext.String && took.Str == CantTell:
		default:
			if t.Hours, t.Known = r.hours(took); !t.Known {
				continue
			}
		}
		r.warnUnless(k, "operation", operationIDs(r.book))
		r.c.Taken = append(r.c.Taken, t)
	}
}

func (r *caseReader) longHours(t *advisor.Taken, n *tomltext.Node) (took *tomltext.Node) {
	for i := range n.Fields {
		switch a := &n.Fields[i]; a.Key {
		case "took":
			took = a.Value
		case "estimate":
			t.Estimate = r.estimate(a.Value)
		case "by":
			t.By = text(a, &r.list)
		case "note":
			t.Note = text(a, &r.list)
		default:
			r.unknownKey(a, "hours", keysOf(hoursKeys))
		}
	}
	return took
}

// hours reads a number of hours.
func (r *caseReader) hours(n *tomltext.Node) (float64, bool) {
	if k := n.Kind; (k == tomltext.Float || k == tomltext.Integer) && 0 <= n.Float && n.Float <= mostHours {
		return n.Float, true
	}
	r.list.Errorf(n.Span, "out-of-range", "hours are a number from 0 to %d, and this is %s", mostHours, shown(n))
	return 0, false
}

// estimate reads three figures, the least first.
func (r *caseReader) estimate(n *tomltext.Node) *advisor.Three {
	if n.Kind != tomltext.Array || len(n.Items) != 3 {
		r.list.Errorf(n.Span, "wrong-kind", "an estimate is three figures in brackets, and this is %s", shown(n))
		return nil
	}
	var three [3]float64
	for i, item := range n.Items {
		h, ok := r.hours(item)
		if !ok {
			return nil
		}
		three[i] = h
	}
	if three[0] > three[1] || three[1] > three[2] {
		r.list.Errorf(n.Span, "out-of-range", "an estimate has its least figure first").Help = "1 in 10 is less, usual, 1 in 10 is more"
		return nil
	}
	return &advisor.Three{Low: three[0], Usual: three[1], High: three[2]}
}

// warnUnless warns of an id that the book does not have.
func (r *caseReader) warnUnless(k *tomltext.Field, kind string, known []string) {
	for _, id := range known {
		if id == k.Key {
			return
		}
	}
	d := r.list.Warnf(k.KeySpan, "unknown-"+kind, "the book has no %s %q", kind, k.Key)
	d.Help = diag.DidYouMean(k.Key, known)
}

func suspectIDs(b *advisor.Book) (ids []string) {
	for i := range b.Suspects {
		ids = append(ids, b.Suspects[i].ID)
	}
	return ids
}

func operationIDs(b *advisor.Book) (ids []string) {
	for i := range b.Operations {
		ids = append(ids, b.Operations[i].ID)
	}
	return ids
}
