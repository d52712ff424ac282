package book

import (
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// maxFaults ends the reading of a book; nobody reads more.
const maxFaults = 1000

// decoder reads one item after another. It notes what an item refers to and
// which conditions it has, since those can be looked at only when all is read.
type decoder struct {
	list  diag.List
	minor float64 // minor units in one unit of money
	item  *item
	house map[string]bool // keys that every item may carry besides its own
	depth int             // 0 in the item's own table
}

// item is one item of the book: its table, merged over the layers, and what it
// turned into.
type item struct {
	kind    *kind
	id      string
	layer   string // "" for the built-in book
	at      diag.Span
	node    *tomltext.Node
	order   int // of the file and the place in it
	value   any // *advisor.Suspect and so on
	refs    []reference
	conds   []*pending
	changed []string // layers that adjusted it
}

// reference is an id that must name something of the book.
type reference struct {
	to []string // kinds that it may name
	id string
	at diag.Span
}

// pending is a condition that waits to be compiled, with its specimens.
type pending struct {
	to    *advisor.Condition
	node  *tomltext.Node
	specs [4][]*tomltext.Node // by role
	keys  [4]diag.Span
	roles roles // the names of those keys
}

func (d *decoder) full() bool { return len(d.list) > maxFaults }

// wrong reports a value of the wrong kind.
func (d *decoder) wrong(n *tomltext.Node, want string) *diag.Diagnostic {
	e := d.list.Errorf(n.Span, "wrong-kind", "%s, and this is %s", want, n.Kind)
	if n.Kind == tomltext.String {
		e.Help = barely(n.Str, want)
	}
	return e
}

// barely says how a value that stands in quotes is written without them, ""
// when that is not what was meant.
func barely(s, want string) string {
	s = strings.TrimSpace(s)
	digits := len(s) - len(strings.TrimLeft(s, "0123456789."))
	switch {
	case strings.HasSuffix(want, "is a number") && digits > 0:
		return "write it without quotes and without a unit: " + strings.TrimRight(s[:digits], ".")
	case strings.HasSuffix(want, "is true or false"), strings.HasSuffix(want, "adjust is true"):
		return "yes and no are written true and false, without quotes"
	case strings.Contains(want, "is a date") && digits > 0:
		return "the year comes first, then the month and the day, without quotes"
	}
	return ""
}

// refer notes a reference.
func (d *decoder) refer(n *tomltext.Node, to []string) {
	d.item.refs = append(d.item.refs, reference{to, n.Str, n.Span})
}

// waiting gives the pending condition of a slot, whether its text or its
// specimens come first in the file.
func (d *decoder) waiting(c *advisor.Condition) *pending {
	for _, p := range d.item.conds {
		if p.to == c {
			return p
		}
	}
	p := &pending{to: c}
	d.item.conds = append(d.item.conds, p)
	return p
}
