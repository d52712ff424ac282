package interview

import (
	"slices"
	"strings"

	"longstand/advisor"
)

// cautions are those of a question's hazards that apply to the case: whole the
// first time, by the hazard's name once a question with the same one was answered.
func (iv *Interview) cautions(q *advisor.Question) (out []string) {
	var before []string
	for _, c := range iv.applying(q) {
		switch name := strings.ReplaceAll(c.Hazard, "_", " "); {
		case iv.warned[c.ID] && !slices.Contains(before, name):
			before = append(before, name)
		case iv.warned[c.ID]:
		case c.Defers != "":
			out = append(out, c.Text+" Defers to: "+strings.TrimSuffix(c.Defers, ".")+".")
		default:
			out = append(out, c.Text)
		}
	}
	if len(before) > 0 {
		out = append(out, "as before: "+strings.Join(before, ", "))
	}
	return out
}

// applying are the cautions of a question's hazards that apply to the case, in
// the book's order: nobody is told of diesel at a petrol car.
func (iv *Interview) applying(q *advisor.Question) (out []advisor.CautionAdvice) {
	if len(q.Hazards) == 0 {
		return nil
	}
	if iv.notes == nil {
		var every []string
		for i := range iv.book.Cautions {
			every = append(every, iv.book.Cautions[i].Hazard)
		}
		iv.notes = iv.adviser.Cautions(iv.c, every)
	}
	for _, c := range iv.notes {
		if slices.Contains(q.Hazards, c.Hazard) {
			out = append(out, c)
		}
	}
	return out
}

// warn notes the cautions that were shown with a question.
func (iv *Interview) warn(q *advisor.Question) {
	for _, c := range iv.applying(q) {
		iv.warned[c.ID] = true
	}
}
