package casefile

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// photos reads the names of photographs, one or a list. They lie in the case's
// own folder or below it.
func photos(f *tomltext.Field, list *diag.List) (out []advisor.Photo) {
	items := []*tomltext.Node{f.Value}
	if f.Value.Kind == tomltext.Array {
		items = f.Value.Items
	}
	for _, n := range items {
		switch name := n.Str; {
		case n.Kind != tomltext.String || name == "":
			list.Errorf(n.Span, "wrong-kind", "a photograph is the name of a file in quotes, and this is %s", n.Kind)
		case path.IsAbs(name) || strings.ContainsAny(name, "\\:\x00") || slices.Contains(strings.Split(name, "/"), ".."):
			list.Errorf(n.Span, "photo", "the photograph %q lies outside the folder of the case", name).Help = "keep it beside the case, and name it from there"
		default:
			out = append(out, advisor.Photo{File: name, At: n.Span})
		}
	}
	return out
}

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

// LetterKeys lists the keys of an earlier letter.
func LetterKeys() []Key { return listKeys(letterKeys) }

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

// Remember gives a case's bytes with what a letter said added at their end.
func Remember(data []byte, e *advisor.Letter) ([]byte, error) {
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	if l := t.root.Get("letter"); l != nil && !headed(l) {
		return nil, fmt.Errorf("%s: letter does not stand under [[letter]] headers: note it there by hand", l.Span)
	}
	lines := []string{"[[letter]]", fmt.Sprintf("number = %d", e.Number), "date = " + e.Date,
		fmt.Sprintf("agree = %d", e.Agree), fmt.Sprintf("likely = %d", e.Likely)}
	for _, l := range []struct {
		key string
		ids []string
	}{{"do", e.Do}, {"look_first", e.LookFirst}, {"stops", e.Stops}, {"found", e.Found}} {
		lines = append(lines, l.key+" = ["+t.line+t.folded(l.ids)+"]")
	}
	t.tail(strings.Join(lines, t.line))
	return t.done("", "letter")
}

// folded writes ids in quotes, some to a line.
func (t *draft) folded(ids []string) string {
	out, line := "", "  "
	for _, id := range ids {
		if line += encode(id) + ", "; len(line) > 90 {
			out, line = out+strings.TrimRight(line, " ")+t.line, "  "
		}
	}
	if line != "  " {
		out += strings.TrimRight(line, " ") + t.line
	}
	return out
}
