package tomltext

import (
	"bytes"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"longstand/advisor/diag"
)

// part is one part of a key.
type part struct {
	name string
	span diag.Span
}

// keys appends the parts of a key to parts, which the caller keeps on its stack.
func (w *walker) keys(it unstable.Iterator, parts []part) []part {
	for it.Next() {
		start, end := w.bounds(it.Node().Raw)
		name := w.src.text[start:end]
		if name[0] == '"' || name[0] == '\'' {
			name = string(it.Node().Data)
		}
		parts = append(parts, part{name, w.span(start, end)})
		if len(parts) > maxParts {
			w.list.Errorf(parts[0].span, "bad-value", "a key has at most %d parts", maxParts)
			break
		}
	}
	return parts
}

// dot walks down the leading parts of a dotted key, making tables on the way.
// It returns nil after a fault.
func (w *walker) dot(table *Node, parts []part) *Node {
	for _, p := range parts {
		before := table.Field(p.name)
		if before == nil {
			next := w.node(Table, p.span)
			next.made, next.Tail = dotted, p.span.End
			table.add(Field{Key: p.name, KeySpan: p.span, Value: next})
			table = next
			continue
		}
		if before.Value.Kind != Table || before.Value.made != dotted {
			w.duplicate(p, before)
			return nil
		}
		table = before.Value
	}
	return table
}

// header opens the table of a [header] or [[header]].
func (w *walker) header(e *unstable.Node, repeat bool) {
	var few [4]part
	parts := w.keys(e.Key(), few[:0])
	if len(parts) > maxParts {
		w.current = nil
		return
	}
	brackets := 1
	if repeat {
		brackets = 2
	}
	first, last := parts[0].span.Start, parts[len(parts)-1].span.End
	span := w.span(w.back(first)-brackets, w.skip(last, " \t")+brackets)
	w.current = w.open(parts, span, repeat)
	if w.current != nil {
		w.current.Tail = span.End
	}
}

// back steps back over blanks.
func (w *walker) back(at int) int {
	for at > 0 && (w.src.data[at-1] == ' ' || w.src.data[at-1] == '\t') {
		at--
	}
	return at
}

// open finds or makes the table that a header names, or nil after a fault.
func (w *walker) open(parts []part, span diag.Span, repeat bool) *Node {
	table := w.root
	for _, p := range parts[:len(parts)-1] {
		before := table.Field(p.name)
		switch {
		case before == nil:
			next := w.node(Table, p.span)
			next.made = implied
			table.add(Field{Key: p.name, KeySpan: p.span, Value: next})
			table = next
		case before.Value.made == closed:
			w.duplicate(p, before)
			return nil
		case before.Value.made == repeated:
			table = before.Value.Items[len(before.Value.Items)-1]
		default:
			table = before.Value
		}
	}
	last := parts[len(parts)-1]
	if repeat {
		return w.another(table, last, span)
	}
	before := table.Field(last.name)
	if before == nil {
		next := w.node(Table, span)
		next.made = headed
		table.add(Field{Key: last.name, KeySpan: last.span, Value: next})
		return next
	}
	if before.Value.made != implied {
		w.duplicate(last, before)
		return nil
	}
	before.Value.made, before.Value.Span, before.KeySpan = headed, span, last.span
	return before.Value
}

// another adds one table to an array of tables.
func (w *walker) another(table *Node, key part, span diag.Span) *Node {
	before := table.Field(key.name)
	if before == nil {
		list := w.node(Array, span)
		list.made = repeated
		table.add(Field{Key: key.name, KeySpan: key.span, Value: list})
		before = table.Field(key.name)
	}
	if before.Value.made != repeated {
		w.duplicate(key, before)
		return nil
	}
	next := w.node(Table, span)
	next.made = headed
	before.Value.Items = append(before.Value.Items, next)
	return next
}

func (w *walker) duplicate(p part, before *Field) {
	d := w.list.Errorf(p.span, "duplicate-key", "%q is there already", p.name)
	d.Help = "a key stands once in a table: put both into one, or give the second another name"
	d.Related = []diag.Related{{At: before.KeySpan, Message: "the first one"}}
}

// syntaxHelp says what people usually meant; it knows the parser's messages
// by their most telling words and is silent about the rest.
func syntaxHelp(message string, data []byte, at int) string {
	rest, before := data[at:], data[bytes.LastIndexByte(data[:at], '\n')+1:at]
	switch {
	case startsAny(rest, "\u201c", "\u201d", "\u201e", "\u2018", "\u2019", "\u00ab", "\u00bb"):
		return "these are printers' quotes; take the straight ones, \" or '"
	case startsAny(data, "\xff\xfe", "\xfe\xff"):
		return "save the file as UTF-8"
	case strings.Contains(message, "expected newline") && bytes.Count(before, []byte{'"'}) > 1:
		return "a text that has \" in it stands between single quotes, as 'climate == \"dry\"'"
	}
	for _, h := range [][2]string{
		{"basic strings cannot have new lines", "close the text with \" on the same line, or use ''' for one over several lines"},
		{"literal strings cannot have new lines", "close the text with ' on the same line, or use ''' for one over several lines"},
		{"invalid escape", "write the text between single quotes: nothing is escaped there"},
		{"strings must be quoted", "put quotes round a text"},
		{"at start of value", "put quotes round a text; yes and no are written true and false"},
		{"expected keyword", "put quotes round a text; yes and no are written true and false"},
		{"expected '='", "a line is a key, =, and a value"},
		{"close array table", "a table starts with two brackets on either side, as [[standing]]"},
		{"array is incomplete", "a list that opens with [ is never closed with ]"},
		{"after array value", "put a comma between two items of a list"},
		{"after inline table", "put a comma between two keys in braces"},
		{"leading zeroes", "leave the leading zeroes away, or put quotes round a code"},
		{"expected newline", "one key on each line"},
		{"UTF-8", "save the file as UTF-8"},
		{"terminated", "a quote that opens a text is never closed"},
	} {
		if strings.Contains(message, h[0]) {
			return h[1]
		}
	}
	return ""
}

// startsAny tells whether bytes start with one of several texts.
func startsAny(data []byte, texts ...string) bool {
	for _, t := range texts {
		if bytes.HasPrefix(data, []byte(t)) {
			return true
		}
	}
	return false
}
