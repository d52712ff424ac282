package engine

import (
	"encoding/binary"

	"longstand/advisor"
)

// signature is everything that rules can tell of one question's answer: whether
// it is still open, and of every condition that reads it the truth at each stage
// of channels and what it waits for. Two answers with one signature give the
// same calls.
func (r *reading) signature(q int) string {
	out := []byte{0}
	if !exact(&r.e.book.Questions[q], r.values[q]) {
		out[0] = 1
	}
	var missing []int
	for _, id := range r.e.program.ReadBy(q) {
		for _, v := range r.views {
			t := v.Truth(id)
			out = append(out, byte(t))
			if t == advisor.Unknown {
				missing = v.Missing(id, missing[:0])
				out = binary.AppendUvarint(out, uint64(len(missing)))
				for _, m := range missing {
					out = binary.AppendUvarint(out, uint64(m))
				}
			}
		}
	}
	return string(out)
}

// try answers a question as it is usually known, in place of all that was said
// of it: the owner's word stays the owner's word.
func (r *reading) try(q int, v advisor.Value) {
	question := &r.e.book.Questions[q]
	known, joins := advisor.TruthOf(exact(question, v)), question.How.Stage()
	for stage, view := range r.views {
		if stage < joins {
			view.Set(q, advisor.Value{})
		} else {
			view.Set(q, v)
		}
		if stage < advisor.Stages-1 {
			view.SetKnown(q, known)
		}
	}
	r.values[q] = v
}

// restore takes back what try did to a question.
func (r *reading) restore(q int) {
	for stage, view := range r.views {
		r.values[q], _, _ = strongest(r.answers[q], stage)
		view.Set(q, r.values[q])
	}
	known := advisor.TruthOf(exact(&r.e.book.Questions[q], r.values[q]))
	for _, view := range r.views[:advisor.Stages-1] {
		if view.FreeKnown(q); r.asked[q] {
			view.SetKnown(q, known)
		}
	}
}
