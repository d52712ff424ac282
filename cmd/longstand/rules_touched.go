package main

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// touch is a table of a rule file that makes or changes an item.
type touch struct {
	kind, done string // written, adjusted or withdrawn
	at         diag.Span
}

// touches finds the tables that make or change the items of an id: its own
// first, then those of house rules in order of place.
func (d *door) touches(id string) (out []touch) {
	for _, file := range slices.Sorted(maps.Keys(d.sources)) {
		root, _ := tomltext.Parse(file, d.sources[file])
		for _, f := range root.Fields {
			for _, n := range f.Value.Items {
				own := n.Get("id")
				switch {
				case own == nil || own.Str != id:
				case f.Key == "withdraw" && n.Get("kind") != nil:
					out = append(out, touch{n.Get("kind").Str, "withdrawn", n.Span})
				case n.Get("adjust") != nil:
					out = append(out, touch{f.Key, "adjusted", n.Span})
				case f.Key != "withdraw":
					out = append(out, touch{f.Key, "written", n.Span})
				}
			}
		}
	}
	slices.SortFunc(out, func(x, y touch) int {
		return cmp.Or(firstWritten(x)-firstWritten(y), strings.Compare(x.at.File, y.at.File), cmp.Compare(x.at.Line, y.at.Line))
	})
	return out
}

func firstWritten(t touch) int {
	if t.done == "written" {
		return 0
	}
	return 1
}

// showTouched prints what house rules change in an item, below its own text. Of
// one that they took out, so that the book no longer has it, the own text comes
// first. It tells whether there was anything to print.
func (d *door) showTouched(id string, inBook bool) bool {
	touches := d.touches(id)
	gone := slices.ContainsFunc(touches, func(t touch) bool { return t.done == "withdrawn" })
	shown := false
	for _, t := range touches {
		if t.done == "written" && (inBook || !gone) {
			continue
		}
		shown = true
		fmt.Fprintf(d.out, "%s %s, %s, %s:%d\n%s\n", t.kind, id, t.done, t.at.File, t.at.Line, written(d.sources[t.at.File], t.at.Line))
	}
	return shown
}
