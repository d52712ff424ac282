package book

import (
	"cmp"
	"slices"

	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// Open is a condition whose specimens leave something open.
type Open struct {
	Kind, ID, Layer string // of the item
	Class           Class
	Condition       string // its text
	// The keys under which a case that changes the first specimen stands when it
	// is so and when it is not, and those of one told in full.
	Key, KeyNot, Full, FullNot string
	At                         diag.Span
	Tally                      condition.Tally
	Points                     []Point
	Bare                       bool // there is no specimen at all
	Ask                        []Suggestion
}

// Suggestion is a case for a person to answer, and how many open points it
// would show as a specimen.
type Suggestion struct {
	Try   *Try
	Shows int
}

// Open lists the conditions whose specimens leave something open, in order of
// their places, with the cases that would show it. Of the items only those
// that keep picks; their layer is "" for the built-in book.
func (r *Result) Open(keep func(id, layer string) bool) (out []Open) {
	if !r.provable {
		return nil
	}
	p := newProver(r)
	for _, it := range r.items {
		for _, c := range it.conds {
			if c.node == nil || !keep(it.id, it.layerOf(c)) || !p.boolean(it, c) {
				continue
			}
			if o := p.open(it, c); len(o.Points) > 0 {
				out = append(out, o)
			}
		}
	}
	slices.SortStableFunc(out, func(x, y Open) int {
		return cmp.Or(cmp.Compare(x.At.File, y.At.File), cmp.Compare(x.At.Start, y.At.Start))
	})
	return out
}

func (p *prover) open(it *item, c *pending) Open {
	l := p.lens(it, c, p.run(it, c))
	o := Open{Kind: it.kind.name, ID: it.id, Layer: it.layerOf(c), Class: classOf(it, c), Condition: c.to.Text, At: c.node.Span, Tally: l.tally, Bare: len(c.to.Specimens) == 0}
	for i, point := range l.points() {
		if !l.owed[i].Possible {
			o.Points = append(o.Points, point)
		}
	}
	o.Ask = l.asks
	r := c.roles
	o.Key, o.KeyNot, o.Full, o.FullNot = r[butFires], r[butNot], r[fires], r[firesNot]
	return o
}

// greedy picks cases until every point that any of them shows is shown: each
// time the one that shows most, the nearest of those. Each point gets the case
// that shows it.
func (l *lens) greedy(points []Point) (out []Suggestion) {
	open := map[int]bool{}
	by := map[int][]int{} // case -> points
	for i, point := range points {
		open[i] = len(point.shown) > 0
		for _, s := range point.shown {
			by[s] = append(by[s], i)
		}
	}
	for {
		best, most := -1, 0
		for s := range l.cases {
			n := 0
			for _, i := range by[s] {
				if open[i] {
					n++
				}
			}
			if n > most {
				best, most = s, n
			}
		}
		if best < 0 {
			return out
		}
		for _, i := range by[best] {
			if open[i] {
				open[i], points[i].Try = false, &l.cases[best]
			}
		}
		out = append(out, Suggestion{&l.cases[best], most})
	}
}

// IDs lists the ids of all items that have a condition, in order.
func (r *Result) IDs() (ids []string) {
	for _, it := range r.items {
		if len(it.conds) > 0 {
			ids = append(ids, it.id)
		}
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}
