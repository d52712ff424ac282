package book

import (
	"fmt"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// onceOvers checks the once-overs. Nobody is told that a brake is sound by
// keeping silent: what a danger's good or a hold's until reads has no usual answer.
func (b *builder) onceOvers() {
	if len(b.book.OnceOvers) == 0 {
		return
	}
	readers := b.readByHolds()
	taken := map[string]diag.Span{}
	for i := range b.book.OnceOvers {
		o := &b.book.OnceOvers[i]
		list := b.live[onceTable.name][o.ID].node.Get("questions")
		if n := len(o.Members); list != nil && (n < leastAtOnce || n > mostAtOnce) {
			b.list.Errorf(list.Span, "out-of-range", "a once-over has from %d to %d questions, this one %d", leastAtOnce, mostAtOnce, n)
		}
		for j := range o.Members {
			b.member(o, &o.Members[j], readers, taken)
		}
	}
}

// member checks one question of a once-over.
func (b *builder) member(o *advisor.OnceOver, m *advisor.OnceMember, readers map[string]reader, taken map[string]diag.Span) {
	q := b.book.Question(m.Question)
	if q == nil {
		return // said where references are followed
	}
	if first, twice := taken[q.ID]; twice {
		b.list.Errorf(m.At, "duplicate-id", "%s is asked by two once-overs, or twice by one", q.ID).Related = []diag.Related{{At: first, Message: "here as well"}}
	}
	taken[q.ID] = m.At
	if q.Station != o.Station && o.Station != "" {
		b.list.Errorf(m.At, "not-at-once", "%s is asked at station %s, and %s stands at %s", q.ID, q.Station, o.ID, o.Station).Help = "a once-over is taken in from one place"
	}
	if q.Kind == advisor.Text {
		b.list.Errorf(m.At, "not-at-once", "%s wants a text, which is asked by itself", q.ID).Help = "leave it out of the once-over"
	}
	if m.Usual == "" {
		return
	}
	if !hasUsual(q) {
		b.noUsual(m, "a question of kind "+q.Kind.String(), nil)
		return
	}
	if _, ok := q.OptionBit(m.Usual); !ok {
		options := optionIDs(q)
		if q.Kind == advisor.YesNoKind {
			options = []string{"yes", "no"}
		}
		b.list.Errorf(m.At, "unknown-option", "%s has no option %q", q.ID, m.Usual).Help = diag.DidYouMean(m.Usual, options)
	}
	switch r, read := readers[q.ID]; {
	case q.Always:
		b.noUsual(m, q.ID+", which is asked of every car,", nil)
	case q.Rank > 0:
		b.noUsual(m, q.ID+", which is one of the first questions,", nil)
	case read && r.layer != "" && r.layer != o.Layer:
		m.Usual = "" // the shop guards what this once-over took for granted: it is asked
	case read:
		b.noUsual(m, q.ID+", which "+r.what+" reads,", &diag.Related{At: r.at, Message: "read here"})
	}
}

// noUsual says that a question can have no usual answer.
func (b *builder) noUsual(m *advisor.OnceMember, which string, read *diag.Related) {
	d := b.list.Errorf(m.At, "no-usual", "%s can have no usual answer", which)
	d.Help = fmt.Sprintf("name the question alone, %q: it is asked by itself, or the whole once-over is can't tell", m.Question)
	if read != nil {
		d.Related = []diag.Related{*read}
	}
}

// hasUsual tells whether a question's kind has options to choose from.
func hasUsual(q *advisor.Question) bool {
	return q.Kind == advisor.YesNoKind || q.Kind == advisor.Choice || q.Kind == advisor.Choices
}

// reader is the hold or danger that reads a question, and the layer that it is of.
type reader struct {
	what, layer string
	at          diag.Span
}

// readByHolds finds, for each question that a hold's until or a danger's good
// reads, one reader; one of the built-in book goes before one of a house layer.
func (b *builder) readByHolds() map[string]reader {
	out := map[string]reader{}
	note := func(c advisor.Condition, r reader) {
		if b.program == nil || !c.Given() {
			return
		}
		for _, i := range b.program.Reads(c.ID) {
			id := b.book.Questions[i].ID
			if before, ok := out[id]; !ok || before.layer != "" && r.layer == "" {
				out[id] = r
			}
		}
	}
	for i := range b.book.Suspects {
		if s := &b.book.Suspects[i]; s.Danger != nil {
			note(s.Danger.Good, reader{"the danger " + s.ID, s.Layer, s.Danger.At})
		}
	}
	for i := range b.book.Holds {
		h := &b.book.Holds[i]
		note(h.Until, reader{"the hold " + h.ID, h.Layer, h.At})
	}
	return out
}
