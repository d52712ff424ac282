package book

import (
	"math"
	"slices"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/tomltext"
)

var questionTable = table[advisor.Question]{
	name: "question", doc: "something that can be known about a car",
	fields: []field[advisor.Question]{
		must("id", "its name in conditions and cases", func(q *advisor.Question) slot { return ownID(&q.ID) }),
		must("kind", "what an answer is", func(q *advisor.Question) slot {
			return wordIndex(advisor.Kinds, func(i int) { q.Kind = advisor.Kind(i) })
		}),
		must("ask", "the question as put to a person", func(q *advisor.Question) slot { return text(&q.Ask) }),
		must("name", "a short label for pages", func(q *advisor.Question) slot { return text(&q.Name) }),
		must("station", "where on the walk-round it is asked; inspection: only an inspection answers it", func(q *advisor.Question) slot { return word(&q.Station, advisor.Stations) }),
		may("help", "how to see or measure it", func(q *advisor.Question) slot { return text(&q.Help) }),
		may("options", "of a choice: option id = words", func(q *advisor.Question) slot { return optionsSlot{&q.Options} }),
		may("unit", "of a number or of readings", func(q *advisor.Question) slot { return text(&q.Unit) }),
		may("range", "of a number: [least, most]", func(q *advisor.Question) slot { return rangeSlot{&q.Low, &q.High} }),
		may("step", "the resolution of a number", func(q *advisor.Question) slot { return number(&q.Step, 1e-6, 1e6) }),
		may("code", "what a code is a code of", func(q *advisor.Question) slot { return word(&q.CodeOf, casefile.Decoders) }),
		may("how", "how an answer is known when nobody says", func(q *advisor.Question) slot {
			return wordIndex(advisor.Channels, func(i int) { q.How = advisor.Channel(i) })
		}),
		may("minutes", "how long it takes", func(q *advisor.Question) slot { return whole(&q.Minutes, 0, 600) }),
		may("always", "asked whatever it changes", func(q *advisor.Question) slot { return yes(&q.Always) }),
		may("fixed", "layout, age: not varied in what-ifs", func(q *advisor.Question) slot { return yes(&q.Fixed) }),
		may("first", "its rank, 1 to 10, among the first questions of an intake", func(q *advisor.Question) slot { return whole(&q.Rank, 1, 10) }),
		may("hazards", "what can hurt while looking", func(q *advisor.Question) slot { return names(&q.Hazards, aHazard) }),
		may("again_after", "work that undoes what was known: an answer older than it counts as not asked", func(q *advisor.Question) slot { return names(&q.AgainAfter, anOperation) }),
	},
}

// rangeSlot is [least, most].
type rangeSlot struct{ low, high *float64 }

func (s rangeSlot) form() form { return form{Type: asRange} }

func (s rangeSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Array || len(f.Value.Items) != 2 {
		d.wrong(f.Value, "range is [least, most]")
		return
	}
	low, ok := d.number(f.Value.Items[0], "range", -math.MaxFloat64, math.MaxFloat64)
	high, ok2 := d.number(f.Value.Items[1], "range", -math.MaxFloat64, math.MaxFloat64)
	if ok && ok2 && low >= high {
		d.list.Errorf(f.Value.Span, "not-increasing", "a range goes from the lesser to the greater")
		return
	}
	*s.low, *s.high = low, high
}

// optionsSlot is a table of options, in order: id = words.
type optionsSlot struct{ to *[]advisor.Option }

func (s optionsSlot) form() form { return form{Type: asPairs} }

// maxOptions is the number of options that a set of them can hold.
const maxOptions = 64

// notOptions mean something else in an answer.
var notOptions = []string{casefile.Hidden, "or", "not", "to"}

func (s optionsSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Table {
		d.wrong(f.Value, `options are a table, id = "words"`)
		return
	}
	if n := len(f.Value.Fields); n < 2 || n > maxOptions {
		d.list.Errorf(f.Value.Span, "out-of-range", "a question has from 2 to %d options, this one %d", maxOptions, n)
	}
	for i := range f.Value.Fields {
		o := &f.Value.Fields[i]
		switch {
		case o.Value.Kind != tomltext.String:
			d.wrong(o.Value, "an option's words are a text in quotes")
		case !goodID(o.Key):
			d.badID(o.Key, o.KeySpan)
		case slices.Contains(notOptions, o.Key):
			d.list.Errorf(o.KeySpan, "reserved-id", "%q already means something in an answer", o.Key)
		default:
			*s.to = append(*s.to, advisor.Option{ID: o.Key, Name: o.Value.Str, At: o.KeySpan})
		}
	}
}

// finishQuestion settles what a question leaves out and what its kind demands.
func finishQuestion(d *decoder, q *advisor.Question, n *tomltext.Node) {
	q.At = n.Span
	if n.Get("how") == nil {
		q.How = usualChannel(q)
	}
	demand := func(key string, kinds ...advisor.Kind) {
		given, wanted := n.Field(key), slices.Contains(kinds, q.Kind)
		if given == nil && wanted && key != "unit" && key != "range" && key != "step" {
			d.list.Errorf(n.Span, "missing-key", "a question of kind %s has no %s", q.Kind, key)
		}
		if given != nil && !wanted && n.Get("kind") != nil {
			d.list.Errorf(given.KeySpan, "useless-key", "a question of kind %s takes no %s", q.Kind, key)
		}
	}
	demand("options", advisor.Choice, advisor.Choices)
	demand("code", advisor.Code)
	demand("unit", advisor.NumberKind, advisor.ReadingsKind)
	demand("range", advisor.NumberKind, advisor.ReadingsKind, advisor.Year)
	demand("step", advisor.NumberKind, advisor.ReadingsKind)
	if n.Get("range") == nil && (q.Kind == advisor.NumberKind || q.Kind == advisor.ReadingsKind) {
		e := d.list.Warnf(n.Span, "no-range", "the number %s has no range", q.ID)
		e.Help = "a range catches slips of the pen: range = [0, 100]"
	}
}

// usualChannel is how an answer is known when neither it nor its question says:
// what is told at the desk comes from the owner, a figure was measured, the
// rest was seen.
func usualChannel(q *advisor.Question) advisor.Channel {
	switch {
	case q.Station == "story" || q.Station == "papers":
		return advisor.Owner
	case q.Kind == advisor.NumberKind || q.Kind == advisor.ReadingsKind:
		return advisor.Measured
	}
	return advisor.Seen
}
