package casefile

import (
	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// decisions reads what the owner accepted and declined, and what is done.
func (r *caseReader) decisions(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	for i := range f.Value.Fields {
		d := &f.Value.Fields[i]
		switch d.Key {
		case "accepted":
			r.c.Accepted = r.listOf(d)
		case "declined":
			r.c.Declined = r.listOf(d)
		case "done":
			r.c.Done = r.listOf(d)
		default:
			r.unknownKey(d, "decisions", []string{"accepted", "declined", "done"})
		}
	}
	for _, a := range r.c.Accepted {
		for _, d := range r.c.Declined {
			if a.Operation == d.Operation {
				fault := r.list.Errorf(d.At, "both-ways", "%s is declined, and accepted as well", d.Operation)
				fault.Help = "leave the decision that holds"
				fault.Related = []diag.Related{{At: a.At, Message: "accepted here"}}
			}
		}
	}
}

// listOf reads operations, each by its id or as a table with who, when and a note.
func (r *caseReader) listOf(f *tomltext.Field) (out []advisor.Decision) {
	if f.Value.Kind != tomltext.Array {
		r.list.Errorf(f.Value.Span, "wrong-kind", "%s is a list of operations, and this is %s", f.Key, f.Value.Kind)
		return nil
	}
	first := map[string]diag.Span{} // by operation and time: work may be done again later
	for _, item := range f.Value.Items {
		d := advisor.Decision{At: item.Span}
		id := item
		if item.Kind == tomltext.Table {
			id = r.long(&d, item)
		}
		var ok bool
		if d.Operation, ok = r.operation(id, item.Span); !ok {
			continue
		}
		key := d.Operation
		if f.Key == "done" && d.Date != "" {
			key += " " + d.Date
		}
		if at, twice := first[key]; twice {
			fault := r.list.Errorf(item.Span, "duplicate-id", "%s is %s twice", d.Operation, f.Key)
			fault.Related = []diag.Related{{At: at, Message: "the first one"}}
			continue
		}
		first[key] = item.Span
		out = append(out, d)
	}
	return out
}

func (r *caseReader) long(d *advisor.Decision, n *tomltext.Node) (id *tomltext.Node) {
	for i := range n.Fields {
		f := &n.Fields[i]
		switch f.Key {
		case "operation":
			id = f.Value
		case "by":
			d.By = text(f, &r.list)
		case "note":
			d.Note = text(f, &r.list)
		case "on":
			d.Date = dateOrTime(f.Value, &r.list)
		default:
			r.unknownKey(f, "a decision", []string{"operation", "by", "on", "note"})
		}
	}
	return id
}

// operation reads the id of an operation of the book.
func (r *caseReader) operation(n *tomltext.Node, at diag.Span) (string, bool) {
	if n == nil {
		r.list.Errorf(at, "missing-key", "it does not say which operation").Help = `add: operation = "..."`
		return "", false
	}
	if n.Kind != tomltext.String {
		r.list.Errorf(n.Span, "wrong-kind", "an operation is named by its id in quotes, and this is %s", n.Kind)
		return "", false
	}
	var known []string
	for i := range r.book.Operations {
		if r.book.Operations[i].ID == n.Str {
			return n.Str, true
		}
		known = append(known, r.book.Operations[i].ID)
	}
	d := r.list.Errorf(n.Span, "unknown-operation", "there is no operation %q", n.Str)
	d.Help = diag.DidYouMean(n.Str, known)
	return "", false
}

// overruled reads calls that the foreman set by hand.
func (r *caseReader) overruled(f *tomltext.Field) {
	if f.Value.Kind != tomltext.Array {
		r.list.Errorf(f.Value.Span, "wrong-kind", "overruled is a list of tables, and this is %s", f.Value.Kind).Help = "start each with [[overruled]]"
		return
	}
	first := map[string]diag.Span{}
	for _, item := range f.Value.Items {
		if item.Kind != tomltext.Table {
			r.list.Errorf(item.Span, "wrong-kind", "overruled is a list of tables, and this is %s", item.Kind)
			continue
		}
		o, ok := r.overruling(item)
		if at, twice := first[o.Operation]; twice && ok {
			d := r.list.Errorf(item.Span, "duplicate-id", "%s is overruled twice", o.Operation)
			d.Related = []diag.Related{{At: at, Message: "the first one"}}
			continue
		}
		if ok {
			first[o.Operation] = item.Span
			r.c.Overruled = append(r.c.Overruled, o)
		}
	}
}

func (r *caseReader) overruling(n *tomltext.Node) (advisor.Overruling, bool) {
	before := len(r.list)
	o := advisor.Overruling{At: n.Span}
	for i := range n.Fields {
		f := &n.Fields[i]
		switch f.Key {
		case "operation":
		case "call":
			o.Call = r.word(f, Calls())
		case "by":
			o.By = text(f, &r.list)
		case "why":
			o.Why = text(f, &r.list)
		case "on":
			o.Date = date(f.Value, &r.list)
		default:
			r.unknownKey(f, "an overruling", []string{"operation", "call", "by", "why", "on"})
		}
	}
	o.Operation, _ = r.operation(n.Get("operation"), n.Span)
	for _, key := range []string{"call", "by", "why"} {
		if n.Get(key) == nil {
			r.list.Errorf(n.Span, "missing-key", "an overruling says %s", key).Help = "every page shows by whom a call was set, and why"
		}
	}
	return o, len(r.list) == before
}

// Calls lists the words of the calls that an overruling can give.
func Calls() (words []string) {
	for _, c := range advisor.Calls {
		words = append(words, string(c))
	}
	return words
}
