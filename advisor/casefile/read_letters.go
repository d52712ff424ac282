package casefile

import (
	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// letterKeys are the keys of an earlier letter, with what they mean.
var letterKeys = []struct{ key, doc string }{
	{"number", "from 1 on"},
	{"date", "the day of the case when it was written"},
	{"agree", "the sum to agree that it gave: with tax, in whole units"},
	{"likely", "the likely sum that it gave"},
	{"do", "operations that it advised"},
	{"look_first", "operations that it left to a look"},
	{"stops", "holds that were sure to apply"},
	{"found", "questions answered, once for each answer"},
}

// letters reads what earlier letters said. Ids that the book no longer has are
// kept: a letter that was sent is not changed by a newer book.
func (r *caseReader) letters(f *tomltext.Field) {
	if f.Value.Kind != tomltext.Array {
		r.list.Errorf(f.Value.Span, "wrong-kind", "letter is a list of tables, and this is %s", f.Value.Kind).Help = "start each with [[letter]]"
		return
	}
	for _, n := range f.Value.Items {
		if n.Kind != tomltext.Table {
			r.list.Errorf(n.Span, "wrong-kind", "letter is a list of tables, and this is %s", n.Kind)
			continue
		}
		before := len(r.list)
		e := r.letter(n)
		for i := range r.c.Letters {
			if r.c.Letters[i].Number == e.Number {
				r.list.Errorf(n.Span, "duplicate-id", "letter %d stands twice", e.Number).Related = []diag.Related{{At: r.c.Letters[i].At, Message: "the first one"}}
			}
		}
		if !r.list[before:].HasErrors() {
			r.c.Letters = append(r.c.Letters, e)
		}
	}
}

func (r *caseReader) letter(n *tomltext.Node) advisor.Letter {
	e := advisor.Letter{At: n.Span}
	for i := range n.Fields {
		f := &n.Fields[i]
		switch f.Key {
		case "number":
			e.Number = int(r.whole(f, 1))
		case "agree":
			e.Agree = r.whole(f, 0)
		case "likely":
			e.Likely = r.whole(f, 0)
		case "date":
			e.Date = date(f.Value, &r.list)
		case "do":
			e.Do = r.ids(f)
		case "look_first":
			e.LookFirst = r.ids(f)
		case "stops":
			e.Stops = r.ids(f)
		case "found":
			e.Found = r.ids(f)
		default:
			r.unknownKey(f, "a letter", keysOf(letterKeys))
		}
	}
	for _, key := range []string{"number", "date"} {
		if n.Get(key) == nil {
			r.list.Errorf(n.Span, "missing-key", "a letter says its %s", key)
		}
	}
	return e
}

func (r *caseReader) whole(f *tomltext.Field, least int64) int64 {
	if f.Value.Kind != tomltext.Integer || f.Value.Int < least || f.Value.Int > 1<<40 {
		r.list.Errorf(f.Value.Span, "wrong-kind", "%s is a whole number of %d or more", f.Key, least)
	}
	return f.Value.Int
}

func (r *caseReader) ids(f *tomltext.Field) []string {
	ok := f.Value.Kind == tomltext.Array
	for _, n := range f.Value.Items {
		ok = ok && n.Kind == tomltext.String
	}
	if !ok {
		r.list.Errorf(f.Value.Span, "wrong-kind", "%s is a list of ids in quotes", f.Key)
		return nil
	}
	return words(f.Value)
}
