package tomltext

import (
	"bytes"
	"encoding/json"
	"errors"
	"strconv"
	"unicode/utf8"

	"longstand/advisor/diag"
)

// maxDepth bounds how deep lists and objects of JSON may lie in one another.
const maxDepth = 16

// ParseJSON reads one JSON object, a line of a file, into the tree that Parse
// makes of TOML, with the place of every key and value. It returns what it read
// up to the first fault. Dates, which JSON does not have, are texts. It never
// gives a nil Node. Callers limit the size.
func ParseJSON(file string, line int, data []byte) (*Node, diag.List) {
	if line == 1 {
		data = bytes.TrimPrefix(data, []byte("\ufeff")) // some editors begin a file with it
	}
	w := &jsonWalker{src: newSource(file, data), dec: json.NewDecoder(bytes.NewReader(data))}
	w.src.above = line - 1
	w.dec.UseNumber()
	root := &Node{Kind: Table, Span: w.span(0, len(data)), src: w.src}
	if !utf8.Valid(data) {
		w.fault(0, "this is no text in UTF-8")
		return root, w.list
	}
	n := w.value(0)
	switch {
	case len(w.list) > 0:
	case n.Kind != Table:
		w.list.Errorf(n.Span, "wrong-kind", "one object in braces is wanted, and this is %s", n.Kind)
	case w.start() < len(data):
		w.fault(w.start(), "something follows the object")
	}
	if n != nil && n.Kind == Table {
		root = n
	}
	return root, w.list
}

// jsonWalker builds nodes from the tokens of one line.
type jsonWalker struct {
	src  *source
	dec  *json.Decoder
	list diag.List
}

// span is the place of some bytes of the line.
func (w *jsonWalker) span(from, to int) diag.Span { return w.src.span(from, to, 0) }

func (w *jsonWalker) fault(at int, words string) {
	w.list.Errorf(w.span(at, at+1), "json-syntax", "this is not JSON: %s", words)
}

// start is where the next token begins.
func (w *jsonWalker) start() int {
	at := int(w.dec.InputOffset())
	for at < len(w.src.data) && bytes.IndexByte([]byte(" \t\r\n,:"), w.src.data[at]) >= 0 {
		at++
	}
	return at
}

// token gives the next token and where it begins; nil after a fault.
func (w *jsonWalker) token() (t json.Token, at int, ok bool) {
	at = w.start()
	t, err := w.dec.Token()
	var syntax *json.SyntaxError
	switch {
	case err == nil:
		return t, at, true
	case errors.As(err, &syntax):
		w.fault(at, syntax.Error())
	default:
		w.fault(len(w.src.data), "it ends too soon")
	}
	return nil, at, false
}

// value reads one value; nil after a fault.
func (w *jsonWalker) value(depth int) *Node {
	t, at, ok := w.token()
	if !ok {
		return nil
	}
	n := &Node{src: w.src, Span: w.span(at, int(w.dec.InputOffset()))}
	switch x := t.(type) {
	case json.Delim:
		if depth == maxDepth {
			w.fault(at, "lists and objects lie too deep in one another")
			return nil
		}
		ok = w.inside(n, x, depth)
		n.Span = w.span(at, int(w.dec.InputOffset()))
	case string:
		n.Kind, n.Str = String, x
		raw := w.src.data[n.Span.Start:n.Span.End]
		n.Exact, n.TextStart = bytes.IndexByte(raw, '\\') < 0, at+1
	case json.Number:
		ok = w.number(n, x)
	case bool:
		n.Kind, n.Bool = Bool, x
	default:
		w.list.Errorf(n.Span, "bad-value", "null says nothing").Help = "leave the key out"
		return nil
	}
	if !ok {
		return nil
	}
	return n
}

// inside reads the values of a list or an object up to its end.
func (w *jsonWalker) inside(n *Node, open json.Delim, depth int) bool {
	n.Kind = Array
	if open == '{' {
		n.Kind = Table
	}
	for w.dec.More() {
		var f Field
		if n.Kind == Table {
			t, at, ok := w.token()
			if !ok {
				return false
			}
			f.Key, _ = t.(string)
			f.KeySpan = w.span(at, int(w.dec.InputOffset()))
			if before := n.Field(f.Key); before != nil {
				d := w.list.Errorf(f.KeySpan, "duplicate-key", "%q is there already", f.Key)
				d.Related = []diag.Related{{At: before.KeySpan, Message: "the first one"}}
				return false
			}
		}
		v := w.value(depth + 1)
		if v == nil {
			return false
		}
		if f.Value = v; n.Kind == Table {
			n.add(f)
		} else {
			n.Items = append(n.Items, v)
		}
	}
	_, _, ok := w.token()
	return ok
}

// number reads a whole number, or else a number.
func (w *jsonWalker) number(n *Node, x json.Number) bool {
	if i, err := strconv.ParseInt(string(x), 10, 64); err == nil {
		n.Kind, n.Int, n.Float = Integer, i, float64(i)
		return true
	}
	f, err := x.Float64()
	if err != nil {
		w.list.Errorf(n.Span, "bad-value", "%s is too large for a number", x)
		return false
	}
	n.Kind, n.Float = Float, f
	return true
}
