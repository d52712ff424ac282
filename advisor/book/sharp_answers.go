package book

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// changes lists, for every question that a condition reads, the answers that
// stand for all others and differ from a specimen's own; the operations that it
// asks done() of; and where it reckons an age, another year, so that something
// can be just as old as a limit.
func (l *lens) changes(s *advisor.Specimen) (out [][]Change) {
	year := s.Year
	if year == 0 {
		year = SpecimenYear
	}
	aged := false
	for _, i := range l.p.r.Program.Reads(l.c.to.ID) {
		q := &l.p.r.Book.Questions[i]
		var own advisor.Value
		for _, a := range s.Answers {
			if a.Question == q.ID {
				own = a.Value
			}
		}
		turns := l.p.r.Program.TurnsAt(l.c.to.ID, i, year)
		aged = aged || !slices.Equal(turns, l.p.r.Program.TurnsAt(l.c.to.ID, i, year+1))
		out = append(out, slices.DeleteFunc(answersOf(q, own, turns, year), func(c Change) bool { return sameValue(c.value, own) }))
	}
	for _, i := range l.p.r.Program.Done(l.c.to.ID) {
		out = append(out, []Change{l.toggled(s, l.p.r.Book.Operations[i].ID)})
	}
	if whole := math.Ceil(SpecimenYear); aged && year != whole {
		out = append(out, []Change{{Question: "case_year", TOML: plain(whole), Words: "reckoned to the start of " + plain(whole), year: whole}})
	}
	return out
}

// toggled records an operation as done, or no longer.
func (l *lens) toggled(s *advisor.Specimen, op string) Change {
	done := slices.DeleteFunc(slices.Clone(s.Done), func(id string) bool { return id == op })
	words := op + " is not done"
	if len(done) == len(s.Done) {
		done, words = append(done, op), op+" is done"
	}
	quoted := make([]string, len(done))
	for i, id := range done {
		quoted[i] = strconv.Quote(id)
	}
	return Change{Question: "done", TOML: "[" + strings.Join(quoted, ", ") + "]", Words: words, done: done}
}

func sameValue(a, b advisor.Value) bool {
	return a.State == b.State && a.Low == b.Low && a.High == b.High && a.Options == b.Options && a.Yes == b.Yes && a.No == b.No && slices.Equal(a.Readings, b.Readings)
}

// answersOf gives the answers to a question that conditions can tell apart:
// every option, and numbers around those at which something turns.
func answersOf(q *advisor.Question, own advisor.Value, turns []float64, year float64) (out []Change) {
	add := func(v advisor.Value, toml, words string) {
		out = append(out, Change{Question: q.ID, TOML: toml, Words: q.Name + ": " + words, value: v})
	}
	switch q.Kind {
	case advisor.YesNoKind:
		add(advisor.YesNo(true), "true", "yes")
		add(advisor.YesNo(false), "false", "no")
	case advisor.Choice:
		for i, o := range q.Options {
			add(advisor.OneOf(1<<i), strconv.Quote(o.ID), o.Name)
		}
	case advisor.Choices:
		for i := range q.Options {
			listed := own.Yes ^ 1<<i
			toml, words := listedOptions(q, listed)
			add(advisor.Value{State: advisor.Told, Yes: listed, No: q.AllOptions() &^ listed}, toml, words)
		}
	case advisor.NumberKind, advisor.Year:
		for _, x := range around(q, turns) {
			add(advisor.Number(x), plain(x), strings.TrimSpace(plain(x)+" "+q.Unit))
		}
	case advisor.ReadingsKind:
		for _, x := range around(q, turns) {
			for _, list := range lists(own.Readings, x) {
				text := figures(list)
				add(advisor.Value{State: advisor.Told, Readings: list}, "["+text+"]", text+" "+q.Unit)
			}
		}
	case advisor.Code:
		for _, x := range turns {
			for _, y := range []float64{x - 1, x - 0.02, x, x + 0.02, x + 1} {
				code := strconv.Quote(weekCode(y))
				if a, faults := casefile.Judge(q, code, year); !faults.HasErrors() {
					add(a.Value, code, weekCode(y))
				}
			}
		}
	}
	return out
}

func listedOptions(q *advisor.Question, set uint64) (toml, words string) {
	var ids, names []string
	for i, o := range q.Options {
		if set>>i&1 == 1 {
			ids, names = append(ids, strconv.Quote(o.ID)), append(names, o.Name)
		}
	}
	if len(names) == 0 {
		return "[]", "none of them"
	}
	return "[" + strings.Join(ids, ", ") + "]", strings.Join(names, ", ")
}

// around lists the numbers one step below, at and above those at which
// something turns, as far as they can be answers, then the ends of the range.
func around(q *advisor.Question, turns []float64) (out []float64) {
	step := q.Step
	if step <= 0 {
		step = 1
	}
	for _, t := range turns {
		for _, k := range []float64{math.Floor(t/step + 1e-9), math.Ceil(t/step - 1e-9)} {
			for _, d := range []float64{0, -1, 1} {
				out = append(out, math.Round((k+d)*step*1e9)/1e9)
			}
		}
	}
	out = append(out, q.Low, q.High)
	out = slices.DeleteFunc(out, func(x float64) bool { return q.Low < q.High && (x < q.Low || x > q.High) })
	var once []float64
	for _, x := range out {
		if !slices.Contains(once, x) {
			once = append(once, x)
		}
	}
	return once
}

// lists are readings that hold a figure: all of them, or one among those given.
func lists(own []float64, x float64) [][]float64 {
	if len(own) < 2 {
		return [][]float64{{x}, {x, x, x, x}}
	}
	all := slices.Repeat([]float64{x}, len(own))
	one := append([]float64{x}, own[1:]...)
	return [][]float64{one, all}
}

func figures(list []float64) string {
	parts := make([]string, len(list))
	for i, x := range list {
		parts[i] = plain(x)
	}
	return strings.Join(parts, ", ")
}

// weekCode writes a decimal year as a tyre's code, week and year.
func weekCode(year float64) string {
	whole := math.Floor(year)
	week := min(52, int((year-whole)*52.18)+1)
	return fmt.Sprintf("%02d%02d", week, int(whole)%100)
}
