package book

import (
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// structure checks what no single item can show.
func (b *builder) structure() {
	b.cases()
	b.cycles()
	b.signPaths()
	b.dangers()
	b.answered()
	b.tools()
	b.onceOvers()
}

// tools warns of a tool that no look and no way needs: a slip of the pen would
// have the shop lack the one that was meant.
func (b *builder) tools() {
	var needed []string
	for i := range b.book.Inspections {
		needed = append(needed, b.book.Inspections[i].Tools...)
	}
	for i := range b.book.Routes {
		for w := range b.book.Routes[i].Ways {
			needed = append(needed, b.book.Routes[i].Ways[w].Tools...)
		}
	}
	slices.Sort(needed)
	needed = slices.Compact(needed)
	for _, key := range []string{"tools", "hand_tools"} {
		nodes := []*tomltext.Node{b.item0.node.Get(key)}
		if nodes[0] != nil && nodes[0].Kind == tomltext.Array {
			nodes = nodes[0].Items
		}
		for _, n := range nodes {
			if n != nil && n.Kind == tomltext.String && !slices.Contains(needed, n.Str) {
				b.list.Warnf(n.Span, "unused-tool", "no look needs the tool %q", n.Str).Help = diag.DidYouMean(n.Str, needed)
			}
		}
	}
}

// bundles gives a bundle the minutes of its parts, where it states none.
func (b *builder) bundles() {
	for _, it := range b.items {
		i, ok := it.value.(*advisor.Inspection)
		if !ok || len(i.Bundle) == 0 || i.Minutes > 0 {
			continue
		}
		for _, id := range i.Bundle {
			if part := b.live["inspection"][id]; part != nil {
				i.Minutes += part.value.(*advisor.Inspection).Minutes
			}
		}
	}
}

// cases checks ordered lists of cases and the sums of levels.
func (b *builder) cases() {
	for _, it := range b.items {
		switch v := it.value.(type) {
		case *advisor.Suspect:
			lastWithout(b, "base", len(v.Bases), func(i int) (advisor.Condition, diag.Span) { return v.Bases[i].When, v.Bases[i].At })
			lastWithout(b, "if_left", len(v.IfLeft), func(i int) (advisor.Condition, diag.Span) { return v.IfLeft[i].When, v.IfLeft[i].At })
			if len(v.Bases) == 0 && it.node.Get("base") != nil {
				b.list.Errorf(it.node.Get("base").Span, "no-last-case", "base has no case")
			}
		case *advisor.Sign:
			b.levels(it, v)
		case *advisor.Operation:
			for i := range v.Variants {
				if i < len(v.Variants)-1 && !v.Variants[i].When.Given() {
					b.list.Errorf(v.Variants[i].At, "never-reached", "the variants after this one are never reached").Help = "only the last goes without a condition"
				}
			}
		}
	}
}

// levels: of the cars with the fault each is at one level at most.
func (b *builder) levels(it *item, s *advisor.Sign) {
	with, without := 0.0, 0.0
	for i, l := range s.Levels {
		if l.With.Of > 0 && l.Without.Of > 0 {
			with += l.With.Raw()
			without += l.Without.Raw()
		}
		if i < len(s.Levels)-1 && !l.When.Given() {
			b.list.Errorf(it.node.Field("levels").KeySpan, "never-reached", "the levels after %q are never reached", l.Name).Help = "only the last goes without a condition"
		}
	}
	if most := max(with, without); most > 1.05 {
		d := b.list.Warnf(it.node.Field("levels").KeySpan, "levels-overlap", "the counts of the levels add up to %.2f of all cars", most)
		d.Help = "levels exclude one another: each car is at one of them"
	}
}

// cycles: an upgrade of an upgrade ends somewhere, an inspection cannot come
// after itself. An opening and what it brings may need one another.
func (b *builder) cycles() {
	after, bundle, upgrade, needs := map[string][]string{}, map[string][]string{}, map[string][]string{}, map[string][]string{}
	for _, it := range b.items {
		switch v := it.value.(type) {
		case *advisor.Inspection:
			after[v.ID], bundle[v.ID] = v.After, v.Bundle
		case *advisor.Operation:
			if v.Upgrade != "" {
				upgrade[v.ID] = []string{v.Upgrade}
			}
			for _, n := range v.Needs {
				needs[v.ID] = append(needs[v.ID], n.Op)
			}
		}
	}
	b.cycle("inspection", "comes after itself", after)
	b.cycle("inspection", "consists of itself", bundle)
	b.cycle("operation", "is an upgrade of itself", upgrade)
	b.cycle("operation", "needs itself", needs)
}

// cycle reports every circle once, from its first id in order.
func (b *builder) cycle(kind, what string, next map[string][]string) {
	state := map[string]int{}
	var path []string
	var visit func(id string)
	visit = func(id string) {
		switch state[id] {
		case 1:
			circle := append(slices.Clone(path[slices.Index(path, id):]), id)
			it := b.live[kind][id]
			d := b.list.Errorf(it.at, "cycle", "%s %s %s: %s", kind, id, what, strings.Join(circle, " -> "))
			for _, other := range circle[1 : len(circle)-1] {
				d.Related = append(d.Related, diag.Related{At: b.live[kind][other].at, Message: other + " is part of the circle"})
			}
			return
		case 2:
			return
		}
		state[id] = 1
		path = append(path, id)
		for _, n := range next[id] {
			if b.live[kind][n] != nil {
				visit(n)
			}
		}
		path = path[:len(path)-1]
		state[id] = 2
	}
	for _, id := range b.ids(kind) {
		visit(id)
	}
}

// answered: a question of the station "inspection" must be answered by one.
func (b *builder) answered() {
	answered := map[string]bool{}
	for _, i := range b.book.Inspections {
		for _, q := range i.Answers {
			answered[q] = true
		}
	}
	for _, q := range b.book.Questions {
		if q.Station == "inspection" && !answered[q.ID] {
			d := b.list.Errorf(q.At, "never-answered", "no inspection answers %s", q.ID)
			d.Help = "add it to the answers of an inspection, or give it a station of the walk-round"
		}
	}
}
