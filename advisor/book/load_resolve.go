package book

import (
	"maps"
	"slices"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// resolve demands that every id names something, and that names which
// conditions and needs share are not given twice.
func (b *builder) resolve() {
	b.live["hazard"] = map[string]*item{}
	for _, it := range b.live["caution"] {
		if c := it.value.(*advisor.Caution); b.live["hazard"][c.Hazard] == nil {
			b.live["hazard"][c.Hazard] = it
		}
	}
	for _, it := range b.read() {
		for _, r := range it.refs {
			if b.full() {
				return
			}
			b.follow(&b.list, r)
		}
	}
	b.shared("question", "derived", "a condition could mean either")
	b.shared("operation", "route", "a need could mean either")
	b.shared("question", "once_over", "an answer from a file could be to either")
}

// follow finds what a reference names, or says in a list that it is not there.
func (b *builder) follow(list *diag.List, r reference) {
	var known []string
	for _, kind := range r.to {
		if b.live[kind][r.id] != nil {
			return
		}
		known = append(known, b.ids(kind)...)
	}
	d := list.Errorf(r.at, "unknown-"+r.to[0], "there is no %s %q", r.to[0], r.id)
	d.Help = diag.DidYouMean(r.id, known)
	if r.to[0] == "hazard" {
		d.Message = "no caution speaks of the hazard " + quote(r.id)
	}
	switch {
	case d.Help != "":
	case r.to[0] == "hazard":
		d.Help = "write a [[caution]] with this hazard, or name one that has a caution"
	case r.to[0] == "operation" || r.to[0] == "question" || r.to[0] == "suspect" || r.to[0] == "inspection":
		d.Help = "an id is wanted; `longstand rules list` has every " + r.to[0]
	}
	for _, kind := range r.to {
		if w := b.gone[kind][r.id]; w != nil {
			d.Message = r.to[0] + " " + quote(r.id) + " is withdrawn"
			d.Help = "withdraw or adjust this as well"
			d.Related = []diag.Related{{At: w.At, Message: "withdrawn here"}}
			return
		}
	}
	for _, k := range kindNames { // another sort of thing gets its own sentence
		if b.live[k][r.id] != nil {
			d.Help = quote(r.id) + " is " + a(k)
			d.Related = []diag.Related{{At: b.live[k][r.id].at, Message: "declared here"}}
		}
	}
}

// shared reports ids that stand in two kinds which are named in the same place.
func (b *builder) shared(x, y, why string) {
	for _, id := range slices.Sorted(maps.Keys(b.live[x])) {
		if other := b.live[y][id]; other != nil {
			d := b.list.Errorf(idAt(other), "duplicate-id", "%q is %s and %s: %s", id, a(x), a(y), why)
			d.Related = []diag.Related{{At: idAt(b.live[x][id]), Message: "the " + x}}
		}
	}
}

// among demands that a key is one of a few words.
func (d *decoder) among(f *tomltext.Field, allowed []string) bool {
	if slices.Contains(allowed, f.Key) {
		return true
	}
	d.list.Errorf(f.KeySpan, "unknown-key", "there is no %q here", f.Key).Help = diag.DidYouMean(f.Key, allowed)
	return false
}
