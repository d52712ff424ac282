package engine

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"longstand/advisor"
)

// Turns finds the single answers that would change the call on an operation,
// each by working the case out again with that one answer seen or measured:
// every option, a number at the ends of its range, at each threshold it is
// compared with and between. Fixed questions are not tried. Unknown ones come
// first, then the quickest to find out. Do and do while open count as one call.
func (e *Engine) Turns(c *advisor.Case, operation string) []advisor.Turn {
	o, ok := e.operation[operation]
	if !ok {
		return nil
	}
	now := e.callOf(c, o)
	asked := map[string]bool{}
	for i := range c.Answers {
		asked[c.Answers[i].Question] = true
	}
	var out []advisor.Turn
	for q := range e.book.Questions {
		question := &e.book.Questions[q]
		if question.Fixed || len(e.program.ReadBy(q)) == 0 {
			continue
		}
		for _, t := range e.Tries(question) {
			if to := e.callOf(with(c, question, t.Value), o); !same(now, to) {
				t.To, t.Asked = to, asked[question.ID]
				out = append(out, t)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b advisor.Turn) int {
		return cmp.Or(last(!a.Asked, !b.Asked), cmp.Compare(a.Minutes, b.Minutes))
	})
	return out
}

// callOf is the engine's own call on an operation.
func (e *Engine) callOf(c *advisor.Case, o int) advisor.Call {
	s := e.weigh(c, false)
	return s.calls(s.inspections(nil))[o].call
}

// same takes do and do while open as one.
func same(a, b advisor.Call) bool {
	if a == advisor.DoOpen {
		a = advisor.Do
	}
	if b == advisor.DoOpen {
		b = advisor.Do
	}
	return a == b
}

// with is a copy of a case in which one question is answered by what is seen.
func with(c *advisor.Case, q *advisor.Question, v advisor.Value) *advisor.Case {
	out := *c
	out.Answers = slices.DeleteFunc(slices.Clone(c.Answers), func(a advisor.Answer) bool { return a.Question == q.ID })
	out.Answers = append(out.Answers, advisor.Answer{Question: q.ID, Value: v, How: advisor.Seen})
	return &out
}

// Tries lists the answers to a question that are worth trying.
func (e *Engine) Tries(q *advisor.Question) []advisor.Turn {
	base := advisor.Turn{Question: q.ID, Name: q.Name, Minutes: q.Minutes}
	for i := range e.looks {
		if slices.Contains(e.looks[i].Answers, q.ID) {
			base.Looks = append(base.Looks, e.looks[i].ID)
			if q.Station == "inspection" {
				base.Minutes = e.looks[i].minutes
			}
		}
	}
	var out []advisor.Turn
	add := func(v advisor.Value, written string) {
		t := base
		t.Value, t.Written = v, written
		out = append(out, t)
	}
	switch q.Kind {
	case advisor.YesNoKind:
		add(advisor.YesNo(true), "yes")
		add(advisor.YesNo(false), "no")
	case advisor.Choice:
		for i, opt := range q.Options {
			add(advisor.OneOf(1<<i), opt.Name)
		}
	case advisor.Choices:
		for i, opt := range q.Options {
			add(advisor.Value{State: advisor.Told, Yes: 1 << i, No: q.AllOptions() &^ (1 << i)}, opt.Name)
		}
	case advisor.NumberKind, advisor.Year:
		for _, x := range e.points(q) {
			add(advisor.Number(x), fmt.Sprintf("%g %s", x, q.Unit))
		}
	case advisor.ReadingsKind:
		for _, r := range e.readingsSeen(q) {
			add(advisor.Value{State: advisor.Told, Readings: r}, fmt.Sprintf("%v %s", r, q.Unit))
		}
	}
	return out
}

// points are the numbers worth trying: the ends of the range, each threshold
// with a step to either side, and the middle between two thresholds.
func (e *Engine) points(q *advisor.Question) []float64 {
	step := q.Step
	if step == 0 {
		step = 1
	}
	out := []float64{q.Low, q.High}
	prev := q.Low
	for _, t := range e.program.Thresholds(e.question[q.ID]) {
		out = append(out, t-step, t, t+step, math.Round((prev+t)/2/step)*step)
		prev = t
	}
	out = append(out, math.Round((prev+q.High)/2/step)*step)
	out = slices.DeleteFunc(out, func(x float64) bool { return x < q.Low || x > q.High })
	slices.Sort(out)
	return slices.Compact(out)
}

// readingsSeen are the readings that the book's own specimens use.
func (e *Engine) readingsSeen(q *advisor.Question) [][]float64 {
	var out [][]float64
	for i := range e.book.Signs {
		conditions := []advisor.Condition{e.book.Signs[i].When}
		for _, l := range e.book.Signs[i].Levels {
			conditions = append(conditions, l.When)
		}
		for _, c := range conditions {
			for _, sp := range c.Specimens {
				for _, a := range sp.Answers {
					known := func(r []float64) bool { return slices.Equal(r, a.Value.Readings) }
					if a.Question == q.ID && len(a.Value.Readings) > 0 && !slices.ContainsFunc(out, known) {
						out = append(out, a.Value.Readings)
					}
				}
			}
		}
	}
	return out
}
