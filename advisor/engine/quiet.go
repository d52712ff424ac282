package engine

import "longstand/advisor"

// Quiet tells whether none of some standing rules and holds, by their places in
// the book, can touch a case: each rule's condition is known to be false, and
// each hold's is from what was seen, measured or read on paper. The advice is
// then the same as without them.
func (e *Engine) Quiet(c *advisor.Case, standing, holds []int) bool {
	r := e.read(c, false)
	for _, i := range standing {
		if r.all(e.book.Standing[i].When.ID) != advisor.False {
			return false
		}
	}
	for _, i := range holds {
		if r.upTo(1, e.book.Holds[i].When.ID) != advisor.False {
			return false
		}
	}
	return true
}
