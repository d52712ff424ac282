package casefile

import (
	"bytes"
	"fmt"
	"strings"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// Set gives a case's bytes with one key of one table set to a value, which is
// written in TOML; table "" is the file's own. Only the value's bytes change,
// or one line is added behind the table's last key, so what a person wrote
// around it stays. It errs when the bytes are not TOML, or when the change
// would not read back.
func Set(data []byte, table, key, value string) ([]byte, error) {
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	if err := t.set(table, key, value); err != nil {
		return nil, err
	}
	return t.done(table, key)
}

// draft is a case's bytes under change.
type draft struct {
	data []byte
	root *tomltext.Node
	line string // the file's own line end
}

func open(data []byte) (*draft, error) {
	root, faults := tomltext.Parse("case", data)
	if faults.HasErrors() {
		return nil, unreadable(faults)
	}
	t := &draft{data: data, root: root, line: "\n"}
	if bytes.Contains(data, []byte("\r\n")) {
		t.line = "\r\n"
	}
	return t, nil
}

func unreadable(faults diag.List) error {
	for i := range faults {
		if faults[i].Severity == diag.Error {
			return fmt.Errorf("%s", faults[i].Line())
		}
	}
	return nil
}

// done checks that the changed bytes are still TOML and hold the key.
func (t *draft) done(table, key string) ([]byte, error) {
	root, faults := tomltext.Parse("case", t.data)
	if faults.HasErrors() {
		return nil, fmt.Errorf("the change would not read back: %w", unreadable(faults))
	}
	if table != "" {
		root = root.Get(table)
	}
	if root.Get(key) == nil {
		return nil, fmt.Errorf("the change would not read back: %s is not in it", key)
	}
	return t.data, nil
}

// splice replaces some bytes by a text.
func (t *draft) splice(from, to int, text string) {
	out := make([]byte, 0, len(t.data)+len(text))
	out = append(append(append(out, t.data[:from]...), text...), t.data[to:]...)
	t.data = out
}

// headed tells whether a list stands in the file as [[headers]], not in
// brackets behind a key.
func headed(n *tomltext.Node) bool {
	return strings.HasPrefix(n.Raw(), "[[") && n.Kind == tomltext.Array && isHeader(n)
}

// isHeader tells a [[header]] from a list of lists: a header's span ends with
// its brackets, and its first item is a table that begins at the same place.
func isHeader(n *tomltext.Node) bool {
	return len(n.Items) > 0 && n.Items[0].Kind == tomltext.Table && n.Items[0].Span.Start == n.Span.Start
}

func (t *draft) set(table, key, value string) error {
	in := t.root
	if table != "" {
		in = t.root.Get(table)
	}
	if in != nil && in.Kind != tomltext.Table {
		return fmt.Errorf("%s: %s is not a table", in.Span, table)
	}
	if before := in.Get(key); before != nil {
		if headed(before) || before.Kind == tomltext.Table && !strings.HasPrefix(before.Raw(), "{") {
			return fmt.Errorf("%s: %s has a header of its own: change it there by hand", before.Span, key)
		}
		t.splice(before.Span.Start, before.Span.End, value)
		return nil
	}
	t.add(in, table, key, value)
	return nil
}

// add puts a new key behind the last one of its table, however the table is written.
func (t *draft) add(in *tomltext.Node, table, key, value string) {
	line := key + " = " + value
	switch {
	case in == nil || table != "" && in.Tail == 0 && !strings.HasPrefix(in.Raw(), "{"):
		t.tail("[" + table + "]" + t.line + line)
	case table == "":
		t.after(t.root.Tail, line)
	case strings.HasPrefix(in.Raw(), "["):
		t.after(in.Tail, line)
	case strings.HasPrefix(in.Raw(), "{"):
		t.inside(in, line)
	default: // table.key = value
		t.after(t.root.Tail, table+"."+line)
	}
}

// after adds a line below the one that holds an offset, whose comment stays with it.
func (t *draft) after(at int, line string) {
	if at == 0 {
		t.splice(0, 0, line+t.line)
		return
	}
	for at < len(t.data) && t.data[at] != '\n' && t.data[at] != '\r' {
		at++
	}
	t.splice(at, at, t.line+line)
	if at+len(t.line)+len(line) == len(t.data) {
		t.data = append(t.data, t.line...)
	}
}

// tail adds a block of its own at the end of the file.
func (t *draft) tail(block string) {
	gap := ""
	switch {
	case len(t.data) == 0:
	case !bytes.HasSuffix(t.data, []byte("\n")):
		gap = t.line + t.line
	default:
		gap = t.line
	}
	t.splice(len(t.data), len(t.data), gap+block+t.line)
}

// inside adds to a list or table in brackets, before the closing one.
func (t *draft) inside(n *tomltext.Node, item string) {
	last := -1
	if n.Kind == tomltext.Array && len(n.Items) > 0 {
		last = n.Items[len(n.Items)-1].Span.End
	} else if len(n.Fields) > 0 {
		last = n.Fields[len(n.Fields)-1].Value.Span.End
	}
	if last < 0 {
		t.splice(n.Span.Start+1, n.Span.End-1, item)
		if n.Kind == tomltext.Table {
			t.splice(n.Span.Start+1, n.Span.Start+1+len(item), " "+item+" ")
		}
		return
	}
	t.splice(last, last, ", "+item)
}
