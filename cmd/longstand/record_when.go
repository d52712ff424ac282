package main

import (
	"slices"
	"strings"
	"time"

	"longstand/advisor/interview"
)

// localTime is how a case writes a day and the time of day.
const localTime = "2006-01-02T15:04:05"

// order stamps what is recorded with the time of day where the order matters:
// work that opens a place again, and what is found there afterwards. It never
// gives the same second twice, nor one before what the case has as done.
type order struct {
	last   time.Time
	iv     *interview.Interview
	undoes map[string]bool // operations after which some answer counts no more
	opened map[string]bool // operations done, before or by this command
}

func (k *desk) order(now time.Time, iv *interview.Interview, rows []row) *order {
	o := &order{last: now.Truncate(time.Second).Add(-time.Second), iv: iv, undoes: map[string]bool{}, opened: map[string]bool{}}
	for i := range k.e.Book().Questions {
		for _, op := range k.e.Book().Questions[i].AgainAfter {
			o.undoes[op] = true
		}
	}
	for _, d := range k.c.Done {
		o.opened[d.Operation] = true
		if at, err := time.ParseInLocation(localTime, d.Date, now.Location()); err == nil && at.After(o.last) {
			o.last = at
		}
	}
	for _, r := range rows {
		if op, ok := strings.CutPrefix(r.said, "done:"); ok {
			o.opened[op] = true
		}
	}
	return o
}

// of is when a thing was so: as the command says; else now, if some answer
// counts no more after it, or if it counts only when later than work done.
func (o *order) of(r row, said string) string {
	if said != "" {
		return said
	}
	if op, ok := strings.CutPrefix(r.said, "done:"); ok {
		if o.undoes[op] {
			return o.next()
		}
		return ""
	}
	id, _, _ := strings.Cut(r.said, "=")
	q := o.iv.Question(strings.TrimSpace(id))
	if q != nil && slices.ContainsFunc(q.AgainAfter, func(op string) bool { return o.opened[op] }) {
		return o.next()
	}
	return ""
}

func (o *order) next() string {
	o.last = o.last.Add(time.Second)
	return o.last.Format(localTime)
}
