package engine

import (
	"fmt"

	"longstand/advisor"
)

// A finding speaks of the car as it was. Work that opens the place again undoes
// it: from then on the question counts as not asked, so that what was proved by
// it stands to be proved again.

// overtaken names the work, done since, that undoes an answer; "" when there is
// none. An answer counts only if it is known to be later than the work.
func (e *Engine) overtaken(c *advisor.Case, q *advisor.Question, a *advisor.Answer) string {
	given := a.On
	if given == "" {
		given = c.Date
	}
	for _, op := range q.AgainAfter {
		for i := range c.Done {
			if d := &c.Done[i]; d.Operation == op && (d.Date == "" || startOf(given) <= endOf(d.Date)) {
				return op
			}
		}
	}
	return ""
}

// startOf and endOf are the ends of a day, or a time of day as it is. Both are
// ISO 8601 local times, which sort as text.
func startOf(moment string) string { return timed(moment, "T00:00:00") }
func endOf(moment string) string   { return timed(moment, "T23:59:59") }

func timed(moment, end string) string {
	if len(moment) == len("2006-01-02") {
		return moment + end
	}
	return moment
}

// overtakenBy says that an answer was overtaken.
func (e *Engine) overtakenBy(q *advisor.Question, op string) string {
	return fmt.Sprintf("%s: answered before %s was done, or not known to be later: it counts as not looked at since",
		q.Name, e.ops[e.operation[op]].Name)
}
