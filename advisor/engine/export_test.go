package engine

import "longstand/advisor"

// SumUp is sum, for the tests of its numbers.
var SumUp = sum

// Tries are the answers that a why tries, for the tests that try them through
// the whole advice.
func (e *Engine) Tries(c *advisor.Case, q *advisor.Question) []advisor.Turn {
	var out []advisor.Turn
	for _, t := range e.tries(c, q) {
		out = append(out, advisor.Turn{Question: q.ID, Name: q.Name, Value: t.value, Written: t.written})
	}
	return out
}
