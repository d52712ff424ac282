package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// loosening are the keys of an item by which a house layer can let a car go
// sooner.
var loosening = map[string][]string{"hold": {"when", "until", "stops"}, "suspect": {"danger", "when"}}

// loosens tells whether a house layer touched what a hold or a danger waits for.
func (l *lens) loosens() bool {
	if s, ok := l.it.value.(*advisor.Suspect); ok && s.Danger == nil {
		return false
	}
	if l.replaces() {
		return true
	}
	return slices.ContainsFunc(loosening[l.it.kind.name], func(key string) bool {
		_, ok := l.p.r.adjusted[l.it][key]
		return ok
	})
}

// demandOfLoosened: what loosens a hold must meet class A, as an error.
func (l *lens) demandOfLoosened() {
	if classOf(l.it, l.c) == ClassB && l.it.kind.name != "suspect" {
		return
	}
	if len(l.c.to.Specimens) > 0 && len(l.owed) == l.possible() {
		return
	}
	d := l.p.list.Errorf(l.c.node.Span, "loosens-hold", "a house rule loosens %s, and its specimens leave %s open", l.it.id, l.openWords())
	d.Help = "what lets a car go sooner is shown from every side: longstand rules check --suggest " + l.it.id
	for _, key := range loosening[l.it.kind.name] {
		if at, ok := l.p.r.adjusted[l.it][key]; ok {
			d.Related = append(d.Related, diag.Related{At: at, Message: "loosened here"})
			break
		}
	}
}

func (l *lens) openWords() string {
	if len(l.c.to.Specimens) == 0 {
		return "everything"
	}
	for _, o := range l.owed {
		if !o.Possible {
			if n := len(l.owed) - l.possible() - 1; n > 0 {
				return o.Words + " and " + several(n, "other point")
			}
			return o.Words
		}
	}
	return ""
}

func (l *lens) possible() (n int) {
	for _, o := range l.owed {
		if o.Possible {
			n++
		}
	}
	return n
}

// withdrawnHolds: a house layer may take out a hold only for another of its own
// that stops the same; that one must meet class A.
func (p *prover) withdrawnHolds() {
	for _, w := range p.r.withdrawn {
		if w.Kind != "hold" || w.own || p.stopsAll(w.Layer, w.stops) {
			continue
		}
		d := p.list.Errorf(w.At, "loosens-hold", "a house rule withdraws the hold %s, and none of its own stops the same", w.ID)
		d.Help = "write the hold as this shop keeps it, with its specimens"
	}
}

// easedHolds: no specimen shows that an act may go free, so a house layer may
// take one off a hold only when a hold of its own stops it.
func (p *prover) easedHolds() {
	for _, e := range p.r.eased {
		var free []string
		stopped := stopping(e.it.value.(*advisor.Hold))
		for _, act := range e.stops {
			if !slices.Contains(stopped, act) && !p.stopsAll(e.layer, []string{act}) {
				free = append(free, act)
			}
		}
		if len(free) > 0 {
			d := p.list.Errorf(e.at, "loosens-hold", "a house rule takes %s off what the hold %s stops, and no hold of its own stops the same", diag.OneOf(free), e.it.id)
			d.Help = "keep it, or write the hold that stops it here, with its specimens"
		}
	}
}

// stopsAll tells whether a hold of a layer's own stops all these acts.
func (p *prover) stopsAll(layer string, acts []string) bool {
	return slices.ContainsFunc(p.r.items, func(it *item) bool {
		h, ok := it.value.(*advisor.Hold)
		return ok && it.layer == layer && !slices.ContainsFunc(acts, func(act string) bool { return !slices.Contains(h.Stops, act) })
	})
}

// replaces tells whether a hold stands in a layer that withdrew one or changed
// what one stops.
func (l *lens) replaces() bool {
	return l.it.kind.name == "hold" && (slices.ContainsFunc(l.p.r.withdrawn, func(w *withdrawal) bool { return w.Kind == "hold" && w.Layer == l.it.layer }) ||
		slices.ContainsFunc(l.p.r.eased, func(e easing) bool { return e.layer == l.it.layer }))
}
