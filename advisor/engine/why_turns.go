package engine

import (
	"cmp"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"longstand/advisor"
)

// job is one answer to be tried.
type job struct {
	q    int
	try  try
	like int // the first answer that every rule takes alike; none: the case as it is
	does []advisor.Change
}

// none stands for the case as it is: an answer like it changes nothing.
const none = -1

// turns tries single answers, each by working the case out again with that one
// answer seen, and keeps those that change a verdict on the subject. It tries
// the questions of only, or every one. Answers that every rule takes alike are
// worked out once.
func (e *Engine) turns(c *advisor.Case, about *subject, only []int) (turns []advisor.Turn, tried int) {
	now := e.weigh(c)
	was := now.verdicts(about)
	jobs := e.jobs(c, only)
	abreast(len(jobs), func() func(int) {
		r := e.read(c, false)
		return func(i int) {
			if j := &jobs[i]; j.like == i {
				r.try(j.q, j.try.value)
				j.does = changed(was, r.weigh(c).verdicts(about))
				r.restore(j.q)
			}
		}
	})
	for i := range jobs {
		j := &jobs[i]
		if j.like != none {
			j.does = jobs[j.like].does
		}
		if len(j.does) > 0 {
			turns = append(turns, now.turn(j))
		}
	}
	slices.SortStableFunc(turns, func(a, b advisor.Turn) int {
		return cmp.Or(last(!a.Asked, !b.Asked), last(len(a.Ways) > 0, len(b.Ways) > 0), cmp.Compare(dearness(&a), dearness(&b)))
	})
	return turns, len(jobs)
}

// jobs lists the answers to be tried. Fixed questions, and those that nothing
// reads, are left out.
func (e *Engine) jobs(c *advisor.Case, only []int) []job {
	r := e.read(c, false)
	var out []job
	for q := range e.book.Questions {
		question := &e.book.Questions[q]
		if question.Fixed || len(e.program.ReadBy(q)) == 0 || only != nil && !slices.Contains(only, q) {
			continue
		}
		seen := map[string]int{r.signature(q): none}
		for _, t := range e.tries(c, question) {
			r.try(q, t.value)
			mark := r.signature(q)
			like, ok := seen[mark]
			if !ok {
				like = len(out)
				seen[mark] = like
			}
			out = append(out, job{q: q, try: t, like: like})
		}
		r.restore(q)
	}
	return out
}

// abreast does n pieces of work on as many processors as there are, each with a
// worker of its own. Every piece writes its own result, so that the order of
// doing does not show.
func abreast(n int, worker func() func(i int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			do := worker()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	all.Wait()
}

// dearness is what finding out costs by the cheapest way.
func dearness(t *advisor.Turn) int64 {
	if len(t.Ways) == 0 {
		return 0
	}
	return t.Ways[0].Cost
}

// turn tells of an answer that changes something: what is known of it now, and
// how to find out.
func (s *situation) turn(j *job) advisor.Turn {
	q, question := j.q, &s.e.book.Questions[j.q]
	return advisor.Turn{Question: question.ID, Name: question.Name, Value: j.try.value, Written: j.try.written, Changes: j.does,
		Asked: s.values[q].State == advisor.Told, Now: present(s.c, question), How: s.how[q], Ways: s.findings(q)}
}

// findings are the ways to find out an answer, the cheapest first.
func (s *situation) findings(q int) []advisor.Finding {
	var out []advisor.Finding
	for i := range s.e.looks {
		l := &s.e.looks[i]
		if _, ok := slices.BinarySearch(l.answers, q); !ok || len(l.Bundle) > 0 {
			continue
		}
		f := advisor.Finding{Look: l.ID, Name: l.Name, Station: l.Where, Minutes: l.minutes, Cost: s.e.minutesCost(l.minutes)}
		opens := newSet(len(s.e.ops))
		for _, o := range s.e.opens(l, s.combo) {
			opens.addAll(s.net.reach[o])
		}
		for _, o := range opens.list() {
			if !s.member[o] && !s.done[o] && !s.off[o] {
				f.Opens, f.Cost = append(f.Opens, s.e.ops[o].ID), f.Cost+s.figures.cost[o]
			}
		}
		out = append(out, f)
	}
	// What no time was set for is found by the look, where there is one.
	if question := &s.e.book.Questions[q]; question.Station != "inspection" && (question.Minutes > 0 || len(out) == 0) {
		out = append(out, advisor.Finding{Name: question.Ask, Station: question.Station, Minutes: question.Minutes,
			Cost: s.e.minutesCost(question.Minutes)})
	}
	slices.SortStableFunc(out, func(a, b advisor.Finding) int { return cmp.Compare(a.Cost, b.Cost) })
	return out
}
