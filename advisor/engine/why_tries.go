package engine

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"longstand/advisor"
)

// try is an answer worth trying, as a person would say it.
type try struct {
	value   advisor.Value
	written string
}

// tries lists the answers to a question that are worth trying in a case: every
// option, none of several, a number at the ends of its range, at each threshold
// that it is compared with and between, and the readings of the book's own
// specimens.
func (e *Engine) tries(c *advisor.Case, q *advisor.Question) (out []try) {
	switch q.Kind {
	case advisor.YesNoKind:
		return []try{{advisor.YesNo(true), "yes"}, {advisor.YesNo(false), "no"}}
	case advisor.Choice:
		for i, opt := range q.Options {
			out = append(out, try{advisor.OneOf(1 << i), opt.Name})
		}
	case advisor.Choices:
		for i, opt := range q.Options {
			out = append(out, try{advisor.Value{State: advisor.Told, Yes: 1 << i, No: q.AllOptions() &^ (1 << i)}, opt.Name})
		}
		out = append(out, try{advisor.Value{State: advisor.Told, No: q.AllOptions()}, "none of these"})
	case advisor.NumberKind, advisor.Year, advisor.Code:
		for _, x := range e.points(c, q) {
			out = append(out, try{advisor.Number(x), measured(x, q.Unit)})
		}
	case advisor.ReadingsKind:
		for _, r := range e.readingsSeen(q) {
			var words []string
			for _, x := range r {
				words = append(words, plain(x))
			}
			out = append(out, try{advisor.Value{State: advisor.Told, Readings: r}, strings.TrimSpace(strings.Join(words, ", ") + " " + q.Unit)})
		}
	}
	return out
}

func measured(x float64, unit string) string { return strings.TrimSpace(plain(x) + " " + unit) }

// plain writes a number as a person would, without an exponent.
func plain(x float64) string { return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64) }

// codeYears are how many years before the case a code's year may lie.
const codeYears = 40

// points are the numbers worth trying: the ends of the range, each threshold
// with a step to either side, and the middle between two thresholds.
func (e *Engine) points(c *advisor.Case, q *advisor.Question) []float64 {
	step, low, high := q.Step, q.Low, q.High
	if step == 0 {
		step = 1
	}
	if q.Kind == advisor.Code {
		low, high = math.Floor(c.Day)-codeYears, math.Floor(c.Day)
	}
	out := []float64{low, high}
	prev := low
	for _, t := range e.program.ThresholdsAt(e.question[q.ID], c.Day) {
		at := math.Round(t/step) * step
		out = append(out, at-step, at, at+step, math.Round((prev+t)/2/step)*step)
		if q.Kind != advisor.Year && q.Kind != advisor.Code {
			out = append(out, t)
		}
		prev = t
	}
	out = append(out, math.Round((prev+high)/2/step)*step)
	out = slices.DeleteFunc(out, func(x float64) bool { return x < low || x > high })
	slices.Sort(out)
	return slices.Compact(out)
}

// readingsSeen are the readings that the book's own specimens use.
func (e *Engine) readingsSeen(q *advisor.Question) [][]float64 {
	var out [][]float64
	for _, c := range e.conditions() {
		for _, sp := range c.Specimens {
			for _, a := range sp.Answers {
				known := func(r []float64) bool { return slices.Equal(r, a.Value.Readings) }
				if a.Question == q.ID && len(a.Value.Readings) > 0 && !slices.ContainsFunc(out, known) {
					out = append(out, a.Value.Readings)
				}
			}
		}
	}
	return out
}

// conditions lists the conditions of the book that carry specimens of readings.
func (e *Engine) conditions() []*advisor.Condition {
	var out []*advisor.Condition
	for i := range e.book.Signs {
		out = append(out, &e.book.Signs[i].When)
		for j := range e.book.Signs[i].Levels {
			out = append(out, &e.book.Signs[i].Levels[j].When)
		}
	}
	for i := range e.book.Suspects {
		s := &e.book.Suspects[i]
		out = append(out, &s.When)
		for j := range s.Bases {
			out = append(out, &s.Bases[j].When)
		}
		if s.Danger != nil {
			out = append(out, &s.Danger.Good)
		}
	}
	for i := range e.book.Standing {
		out = append(out, &e.book.Standing[i].When)
	}
	for i := range e.book.Holds {
		out = append(out, &e.book.Holds[i].When, &e.book.Holds[i].Until)
	}
	return out
}
