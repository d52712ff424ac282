// Package tomltext reads TOML in one walk that keeps the place of every key
// and value. It is the only room that knows go-toml, whose parser promises no
// stable interface; everyone else sees Node.
package tomltext

import (
	"unicode/utf8"

	"longstand/advisor/diag"
)

// Kind is the kind of a value.
type Kind uint8

// The kinds of value. A Date stands for TOML's four kinds of date and time.
const (
	Table Kind = iota
	Array
	String
	Integer
	Float
	Bool
	Date
)

var kindNames = []string{"a table", "a list", "a text", "a whole number", "a number", "true or false", "a date"}

// String names the kind as a diagnostic does: "a list".
func (k Kind) String() string { return kindNames[k] }

// Node is one value and where it stands.
type Node struct {
	Kind Kind
	Bool bool
	// Exact tells that a String's text is the file's own bytes from TextStart
	// on: no escapes, so a place inside the text is known.
	Exact bool
	made  making
	Span  diag.Span // a table with a header: the header; the root: the file as a whole
	Str   string    // the text of a String; a Date as it was written
	Int   int64
	Float float64 // of an Integer too
	Items []*Node // of an Array, in order
	// Fields of a Table in the order of the file.
	Fields    []Field
	TextStart int // byte offset of a String's text
	// Tail is, for a Table, the byte offset just behind the last thing in its
	// own body; a new key goes on a line after it.
	Tail int

	src   *source
	index map[string]int // of Fields, once there are many
}

// Field is one key of a table.
type Field struct {
	Key     string
	KeySpan diag.Span
	Value   *Node
}

// making is how a table came to be, which decides what may still be added.
type making uint8

const (
	closed   making = iota // a plain value, an inline table
	implied                // on the way to another header: its own header may follow
	headed                 // by its own header
	dotted                 // by a dotted key
	repeated               // an array of tables with [[headers]]
)

// fields is how many keys such a table is likely to get.
func (m making) fields() int {
	if m == headed {
		return 8
	}
	return 2
}

// Get gives the value of a key, or nil. It may be asked of any node.
func (n *Node) Get(key string) *Node {
	if f := n.Field(key); f != nil {
		return f.Value
	}
	return nil
}

// Field gives a key of a table with its place, or nil.
func (n *Node) Field(key string) *Field {
	if n == nil {
		return nil
	}
	if n.index != nil {
		if i, ok := n.index[key]; ok {
			return &n.Fields[i]
		}
		return nil
	}
	for i := range n.Fields {
		if n.Fields[i].Key == key {
			return &n.Fields[i]
		}
	}
	return nil
}

// manyFields is where a table gets an index of its keys.
const manyFields = 24

// add appends a field; the caller has looked for the key before.
func (n *Node) add(f Field) {
	if n.Fields == nil {
		n.Fields = make([]Field, 0, n.made.fields())
	}
	n.Fields = append(n.Fields, f)
	if n.index != nil {
		n.index[f.Key] = len(n.Fields) - 1
	} else if len(n.Fields) > manyFields {
		n.index = make(map[string]int, 4*manyFields)
		for i := range n.Fields {
			n.index[n.Fields[i].Key] = i
		}
	}
}

// Inside gives the span of a piece of a String's text, counted in characters.
// When the text is not the file's own bytes, or the piece lies outside it, it
// is the whole value.
func (n *Node) Inside(fromRune, toRune int) diag.Span {
	if !n.Exact || fromRune < 0 || toRune < fromRune {
		return n.Span
	}
	from, ok := runeOffset(n.Str, fromRune)
	if !ok {
		return n.Span
	}
	to, ok := runeOffset(n.Str, toRune)
	if !ok {
		return n.Span
	}
	return n.src.span(n.TextStart+from, n.TextStart+to, max(n.Span.Line-1-n.src.above, 0))
}

// runeOffset is the byte offset of the rune with number want.
func runeOffset(s string, want int) (int, bool) {
	at := 0
	for range want {
		if at >= len(s) {
			return 0, false
		}
		_, size := utf8.DecodeRuneInString(s[at:])
		at += size
	}
	return at, true
}

// Raw is the value as it stands in the file; "" for a table that With made.
func (n *Node) Raw() string {
	if n.src == nil {
		return ""
	}
	return n.src.text[n.Span.Start:n.Span.End]
}

// With is a table like this one, in the same place, with other fields.
func (n *Node) With(fields []Field) *Node {
	return &Node{Kind: Table, Span: n.Span, Fields: fields, Tail: n.Tail, src: n.src}
}
