package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

type withdrawal struct {
	advisor.Withdrawal
	kind  *kind
	idAt  diag.Span
	stops []string // a hold's acts
	own   bool     // it came from a house layer, not from the built-in book
}

var withdrawTable = table[withdrawal]{
	name: "withdraw", doc: "house rules: takes an item out of the book",
	fields: []field[withdrawal]{
		must("id", "the item", func(w *withdrawal) slot { return text(&w.ID) }),
		must("kind", "its kind", func(w *withdrawal) slot { return word(&w.Kind, kindNames) }),
		must("because", "why, in one line", func(w *withdrawal) slot { return text(&w.Because) }),
		may("by", "who withdrew it", func(w *withdrawal) slot { return text(&w.By) }),
		may("learned_on", "the case it was learned on", func(w *withdrawal) slot { return text(&w.Learned) }),
		may("look_again", "the day to look at it again", func(w *withdrawal) slot { return day(&w.Again) }),
	},
}

func (b *builder) readWithdrawal(layer string, n *tomltext.Node) *withdrawal {
	w := &withdrawal{idAt: n.Span}
	withdrawTable.decode(&b.decoder, n, w)
	if f := n.Field(silenceKey); f != nil {
		b.list.Errorf(f.KeySpan, "useless-key", "a withdraw silences nothing")
	}
	w.Layer, w.At, w.kind = layer, n.Span, kindNamed(w.Kind)
	if id := n.Get("id"); id != nil {
		w.idAt = id.Span
	}
	return w
}

// lay lays the layers over one another: items are added, adjusted by field,
// and withdrawn. No layer stands above another, so two that touch the same
// thing clash, and both places are told.
func (b *builder) lay() {
	for _, it := range b.in.added {
		if b.full() {
			return
		}
		if first := b.live[it.kind.name][it.id]; first != nil {
			b.twice(it, first)
			if it.layer == first.layer || len(it.node.Fields) > 3 {
				b.astray = append(b.astray, it) // else an adjust = true was forgotten, and no key is missing
			}
			continue
		}
		b.put(it)
	}
	for _, a := range b.in.adjusted {
		b.adjust(a)
	}
	for _, w := range b.in.withdrawn {
		b.withdraw(w)
	}
}

func (b *builder) put(it *item) {
	if b.live[it.kind.name] == nil {
		b.live[it.kind.name] = map[string]*item{}
	}
	b.live[it.kind.name][it.id] = it
}

func (b *builder) twice(it, first *item) {
	d := b.list.Errorf(idAt(it), "duplicate-id", "there is %s %q already", a(it.kind.name), it.id)
	d.Help = "give it another id"
	if it.layer != "" && it.layer != first.layer {
		d.Help = "give it another id, or say adjust = true to change only some fields"
	}
	d.Related = []diag.Related{{At: idAt(first), Message: "the first one"}}
}

func idAt(it *item) diag.Span {
	if id := it.node.Get("id"); id != nil {
		return id.Span
	}
	return it.at
}

// target finds the item that a layer wants to change, or places why not.
func (b *builder) target(k *kind, id, layer string, at diag.Span, what string) *item {
	if k == nil || id == "" {
		return nil
	}
	it := b.live[k.name][id]
	switch {
	case layer == "":
		b.list.Errorf(at, "house-only", "the built-in book %ss nothing of itself", what).Help = "change the item where it stands"
		return nil
	case it == nil:
		d := b.list.Errorf(at, "unknown-id", "there is no %s %q to %s", k.name, id, what)
		d.Help = diag.DidYouMean(id, b.ids(k.name))
		return nil
	case it.layer == layer && b.adjustedBy[it] == nil:
		d := b.list.Errorf(at, "house-only", "%s %q is of this layer itself", k.name, id)
		d.Help = "change the item where it stands"
		d.Related = []diag.Related{{At: it.at, Message: "here"}}
		return nil
	}
	return it
}

// easing is a hold of the book whose acts a house layer changed.
type easing struct {
	it    *item
	layer string
	at    diag.Span
	stops []string // as the book has them
}

// adjust replaces the fields of an item by those of another layer's table.
func (b *builder) adjust(a *item) {
	it := b.target(a.kind, a.id, a.layer, idAt(a), "adjust")
	if it == nil {
		return
	}
	fields := slices.Clone(it.node.Fields)
	if b.adjustedBy[it] == nil {
		b.adjustedBy[it] = map[string]diag.Span{}
	}
	for _, f := range a.node.Fields {
		if f.Key == "id" || f.Key == "adjust" {
			continue
		}
		if before, clash := b.adjustedBy[it][f.Key]; clash {
			b.clash(f.KeySpan, before, f.Key+" of "+it.kind.name+" "+quote(it.id)+" is adjusted twice")
			continue
		}
		b.adjustedBy[it][f.Key] = f.KeySpan
		if it.kind.name == "hold" && f.Key == "stops" && it.layer == "" {
			b.eased = append(b.eased, easing{it, a.layer, f.KeySpan, textsOf(it.node.Get("stops"))})
		}
		if i := slices.IndexFunc(fields, func(x tomltext.Field) bool { return x.Key == f.Key }); i >= 0 {
			fields[i] = f
		} else {
			fields = append(fields, f)
		}
	}
	it.node = it.node.With(fields)
	it.changed = append(it.changed, a.layer)
}

func (b *builder) clash(at, before diag.Span, message string) {
	d := b.list.Errorf(at, "house-clash", "%s", message)
	d.Help = "no house layer stands above another: settle which one holds"
	d.Related = []diag.Related{{At: before, Message: "the other place"}}
}

// withdraw takes an item out. The signs of a withdrawn suspect go with it.
func (b *builder) withdraw(w *withdrawal) {
	if first := b.gone[w.Kind][w.ID]; first != nil {
		b.clash(w.idAt, first.idAt, w.Kind+" "+quote(w.ID)+" is withdrawn twice")
		return
	}
	it := b.target(w.kind, w.ID, w.Layer, w.idAt, "withdraw")
	if it == nil {
		return
	}
	for key, at := range b.adjustedBy[it] {
		if key == firstKey(b.adjustedBy[it]) {
			b.clash(w.idAt, at, w.Kind+" "+quote(w.ID)+" is withdrawn, and adjusted elsewhere")
		}
	}
	b.remove(it, w)
	if it.kind.name == "hold" {
		w.stops, w.own = textsOf(it.node.Get("stops")), it.layer != ""
	}
	b.withdrawals = append(b.withdrawals, w.Withdrawal)
	b.withdrawn = append(b.withdrawn, w)
	if it.kind.name != "suspect" {
		return
	}
	for _, sign := range b.live["sign"] {
		if of := sign.node.Get("suspect"); of != nil && of.Str == it.id {
			b.remove(sign, w)
		}
	}
}

// textsOf are the texts of a list, or the one that stands without brackets.
func textsOf(n *tomltext.Node) (out []string) {
	if n == nil {
		return nil
	}
	for _, text := range append([]*tomltext.Node{n}, n.Items...) {
		if text.Kind == tomltext.String {
			out = append(out, text.Str)
		}
	}
	return out
}

func (b *builder) remove(it *item, w *withdrawal) {
	delete(b.live[it.kind.name], it.id)
	if b.gone[it.kind.name] == nil {
		b.gone[it.kind.name] = map[string]*withdrawal{}
	}
	b.gone[it.kind.name][it.id] = w
}

func firstKey(m map[string]diag.Span) (first string) {
	for key := range m {
		if first == "" || key < first {
			first = key
		}
	}
	return first
}
