package interview

import (
	"cmp"
	"slices"

	"longstand/advisor"
)

// left lists what is still to be asked, in order: the first ten, then station
// by station.
func (iv *Interview) left() []advisor.OpenQuestion {
	all := iv.candidates()
	return slices.DeleteFunc(all, func(o advisor.OpenQuestion) bool {
		return iv.skipped[o.ID] || iv.options.Brief && !iv.worthAsking(&o)
	})
}

// LeftOut lists the open questions that a brief interview does not ask.
func (iv *Interview) LeftOut() (ids []string) {
	if !iv.options.Brief {
		return nil
	}
	for _, o := range iv.candidates() {
		if !iv.worthAsking(&o) {
			ids = append(ids, o.ID)
		}
	}
	return ids
}

// worthAsking tells whether a brief interview asks a question: one of the
// first ten, one asked whatever it changes, one that the structure reads, or
// one whose answer is worth more than its minutes.
func (iv *Interview) worthAsking(o *advisor.OpenQuestion) bool {
	q := iv.Question(o.ID)
	return q.Rank > 0 || q.Always || o.Structure || o.Net > 0
}

// spared tells whether a brief interview does not ask a question by itself.
func (iv *Interview) spared(id string) bool {
	open := iv.around()
	i := slices.IndexFunc(open, func(o advisor.OpenQuestion) bool { return o.ID == id })
	return iv.options.Brief && (i < 0 || !iv.worthAsking(&open[i]))
}

// candidates are all questions not yet answered that may be asked, in order.
func (iv *Interview) candidates() []advisor.OpenQuestion {
	open := slices.Clone(iv.matters())
	there := map[string]bool{}
	for _, o := range open {
		there[o.ID] = true
	}
	for i := range iv.c.Answers {
		there[iv.c.Answers[i].Question] = true
	}
	place := map[string]int{}
	for i := range iv.book.Questions {
		q := &iv.book.Questions[i]
		place[q.ID] = i
		if !there[q.ID] && q.Station != "inspection" && (q.Rank > 0 || iv.options.All) {
			open = append(open, advisor.OpenQuestion{ID: q.ID, Station: q.Station})
		}
	}
	slices.SortStableFunc(open, func(a, b advisor.OpenQuestion) int { return iv.order(&a, &b, place) })
	return open
}

// order puts the first ten first, then station after station. Within a station
// the adviser's order holds, but of those that the structure reads the one that
// bears on most comes first: its answer closes the most others.
func (iv *Interview) order(a, b *advisor.OpenQuestion, place map[string]int) int {
	p, q := &iv.book.Questions[place[a.ID]], &iv.book.Questions[place[b.ID]]
	if p.Rank > 0 && q.Rank > 0 {
		return cmp.Or(cmp.Compare(p.Rank, q.Rank), cmp.Compare(place[a.ID], place[b.ID]))
	}
	if p.Rank > 0 || q.Rank > 0 {
		return cmp.Compare(q.Rank, p.Rank)
	}
	if c := cmp.Compare(slices.Index(advisor.Stations, a.Station), slices.Index(advisor.Stations, b.Station)); c != 0 {
		return c
	}
	if !a.Structure || !b.Structure {
		return 0
	}
	return cmp.Compare(len(b.Feeds)+len(b.Suspects), len(a.Feeds)+len(a.Suspects))
}

// Open lists the questions still to be asked, in order.
func (iv *Interview) Open() (ids []string) {
	for _, o := range iv.left() {
		ids = append(ids, o.ID)
	}
	return ids
}
