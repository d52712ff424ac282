package interview

import (
	"slices"

	"longstand/advisor"
)

// Back returns to the question or the once-over before, again and again to those
// before that; false when there is none. What was answered stays in the case
// until another answer takes its place, so that nothing is lost by looking back.
func (iv *Interview) Back() bool {
	if len(iv.history) == 0 {
		return false
	}
	last := len(iv.history) - 1
	iv.again, iv.history = iv.history[last], iv.history[:last]
	delete(iv.skipped, iv.again)
	if o := iv.book.OnceOver(iv.again); o != nil {
		iv.reopen(o)
	}
	return true
}

// around are the open questions by which a prompt says what it bears on.
func (iv *Interview) around() []advisor.OpenQuestion {
	if iv.before != nil {
		return iv.before
	}
	return iv.matters()
}

// openWithout are the open questions as they were before some were answered.
func (iv *Interview) openWithout(ids ...string) []advisor.OpenQuestion {
	c := *iv.c
	c.Answers = slices.DeleteFunc(slices.Clone(c.Answers), func(a advisor.Answer) bool { return slices.Contains(ids, a.Question) })
	return iv.adviser.Open(&c)
}
