package book

import (
	"strings"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// table is one kind of table in a rule file: its keys are declared once, and
// the reader, the nearest names, the schema and the docs all go by that.
type table[T any] struct {
	name   string // as in [[suspect]]
	doc    string
	fields []field[T]
}

// field is one key of a table: what it means, whether it must be there, and
// the slot that its value fills.
type field[T any] struct {
	key  string
	need bool
	doc  string
	into func(*T) slot
}

// slot is a place that one value fills, and the form in which it is written.
type slot interface {
	// read takes the value of a key, or places what is wrong with it.
	read(d *decoder, f *tomltext.Field)
	// form says how the value is written.
	form() form
}

// form is how a value is written, for docs and schemas.
type form struct {
	Type  string       // one of the forms below
	Names string       // the kind of item that a text names, or ""
	Enum  []string     // the words allowed, nil for any
	Of    string       // what the tables are called: base, need, ...
	Keys  func() []Key // of the tables
}

// The forms of a value.
const (
	asText      = "text"
	asCondition = "condition" // a text
	asCount     = "count"     // a text, "3 of 10"
	asDate      = "date"      // a date, or a text
	asWords     = "words"     // a list of texts, or one text
	asNumber    = "number"    //
	asWhole     = "whole"     //
	asDecimal   = "decimal"   // a number, or a text that keeps it exact
	asFlag      = "flag"      // true or false
	asFigures   = "figures"   // three numbers
	asRange     = "range"     // two numbers
	asTable     = "table"     // one table
	asTables    = "tables"    // a list of tables
	asMixed     = "mixed"     // a list of tables and ids, or one of either
	asLosses    = "losses"    // a number, or a list of tables
	asPairs     = "pairs"     // a table of words of the author's own
	asSpecimens = "specimens" // a list of tables, question = answer
	asAnswers   = "answers"   // a table, question = value
)

// Key is one key of a table as docs and schemas see it.
type Key struct {
	Name, Doc string
	Need      bool
	form
}

// must declares a key that has to be there.
func must[T any](key, doc string, into func(*T) slot) field[T] {
	return field[T]{key: key, need: true, doc: doc, into: into}
}

// may declares a key that can be left out.
func may[T any](key, doc string, into func(*T) slot) field[T] {
	return field[T]{key: key, doc: doc, into: into}
}

func (t *table[T]) keys() []Key {
	var zero T
	keys := make([]Key, 0, len(t.fields))
	for _, f := range t.fields {
		keys = append(keys, Key{Name: f.key, Doc: f.doc, Need: f.need, form: f.into(&zero).form()})
	}
	return keys
}

func (t *table[T]) find(key string) *field[T] {
	for i := range t.fields {
		if t.fields[i].key == key {
			return &t.fields[i]
		}
	}
	return nil
}

// decode fills a value from a table of a file.
func (t *table[T]) decode(d *decoder, n *tomltext.Node, v *T) {
	if n.Kind != tomltext.Table {
		d.wrong(n, a(t.name)+" is a table")
		return
	}
	for i := range n.Fields {
		f := &n.Fields[i]
		if known := t.find(f.Key); known != nil {
			known.into(v).read(d, f)
		} else if !d.house[f.Key] || d.depth > 0 {
			t.unknown(d, f)
		}
		if d.full() {
			return
		}
	}
	for i := range t.fields {
		if t.fields[i].need && n.Field(t.fields[i].key) == nil {
			e := d.list.Errorf(n.Span, "missing-key", "this %s has no %s", t.name, t.fields[i].key)
			e.Help = t.fields[i].key + ": " + t.fields[i].doc
		}
	}
}

func (t *table[T]) unknown(d *decoder, f *tomltext.Field) {
	names := make([]string, len(t.fields))
	for i := range t.fields {
		names[i] = t.fields[i].key
	}
	e := d.list.Errorf(f.KeySpan, "unknown-key", "%s has no key %q", a(t.name), f.Key)
	if near := diag.Nearest(f.Key, names); near != "" {
		e.Help = "did you mean " + quote(near) + "?"
	} else {
		e.Help = "its keys are " + diag.OneOf(names)
	}
}

// a puts the article before a kind's name.
func a(name string) string {
	switch {
	case name == settingsName:
		return "the table of " + name
	case strings.ContainsRune("aeiou", rune(name[0])) && name != onceTable.name:
		return "an " + name
	}
	return "a " + name
}

func quote(s string) string { return `"` + s + `"` }
