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
		if w.Kind != "hold" || w.own || p.replaced(w) {
			continue
		}
		d := p.list.Errorf(w.At, "loosens-hold", "a house rule withdraws the hold %s, and none of its own stops the same", w.ID)
		d.Help = "write the hold as this shop keeps it, with its specimens"
	}
}

// replaced tells whether a hold of the same layer stops all that a withdrawn
// one stopped.
func (p *prover) replaced(w *withdrawal) bool {
	return slices.ContainsFunc(p.r.items, func(it *item) bool {
		h, ok := it.value.(*advisor.Hold)
		return ok && it.layer == w.Layer && !slices.ContainsFunc(w.stops, func(act string) bool { return !slices.Contains(h.Stops, act) })
	})
}

// replaces tells whether a hold stands in a layer that withdrew one.
func (l *lens) replaces() bool {
	return l.it.kind.name == "hold" && slices.ContainsFunc(l.p.r.withdrawn, func(w *withdrawal) bool { return w.Kind == "hold" && w.Layer == l.it.layer })
}
