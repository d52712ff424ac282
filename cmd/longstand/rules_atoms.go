package main

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"longstand/advisor"
)

func figure(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// valueOf writes one value in TOML that an answer allows, "" when it says too little.
func valueOf(q *advisor.Question, v advisor.Value) string {
	if v.State != advisor.Told || q.Kind == advisor.YesNoKind && v.Options == 3 || q.Kind == advisor.Choice && v.Options == 0 {
		return ""
	}
	switch q.Kind {
	case advisor.YesNoKind:
		return fmt.Sprint(v.Options == 2)
	case advisor.Choice:
		return quoted(optionsIn(q, v.Options)[0])
	case advisor.Choices:
		return listed(optionsIn(q, v.Yes))
	case advisor.NumberKind, advisor.Year:
		if low := max(v.Low, q.Low); low > -1e15 {
			return figure(low)
		}
	case advisor.ReadingsKind:
		return readingsOf(v.Readings)
	case advisor.Code:
		return quoted(v.Text)
	}
	return ""
}

// atomsOf writes the conditions that an answer fulfils, and for each the one
// other answer that would not.
func atomsOf(q *advisor.Question, v advisor.Value) (atoms, buts []string) {
	add := func(atom, but string) { atoms, buts = append(atoms, atom), append(buts, q.ID+" = "+but) }
	if v.State != advisor.Told {
		return nil, nil
	}
	step := cmp.Or(q.Step, 1)
	switch q.Kind {
	case advisor.YesNoKind:
		if v.Options == 3 {
			return nil, nil
		}
		if v.Options == 2 {
			add(q.ID, "false")
		} else {
			add("not "+q.ID, "true")
		}
	case advisor.Choice:
		is, not := optionsIn(q, v.Options), optionsIn(q, q.AllOptions()&^v.Options)
		if len(is) == 0 || len(not) == 0 {
			return nil, nil
		}
		if len(is) == 1 {
			add(q.ID+" == "+quoted(is[0]), quoted(not[0]))
		} else {
			add(q.ID+" in "+listed(is), quoted(not[0]))
		}
	case advisor.Choices:
		is := optionsIn(q, v.Yes)
		for i := range is {
			add(quoted(is[i])+" in "+q.ID, listed(slices.Delete(slices.Clone(is), i, i+1)))
		}
	case advisor.NumberKind:
		if limit, beyond, ok := limitAt(q, v, step); ok {
			add(q.ID+limit, figure(beyond))
		}
	case advisor.Year:
		add(q.ID+" <= "+figure(v.High), figure(v.High+1))
	case advisor.ReadingsKind:
		if len(v.Readings) == 0 {
			return nil, nil
		}
		low := slices.Min(v.Readings)
		add("min("+q.ID+") <= "+figure(low), readingsOf(slices.Repeat([]float64{low + step}, len(v.Readings))))
	}
	return atoms, buts
}

// stillsOf are answers beside the one given for which its condition holds as
// well: at a limit and one step within it, and the other options.
func stillsOf(q *advisor.Question, v advisor.Value) (out []string) {
	add := func(x float64) {
		if s := q.ID + " = " + figure(x); x != max(v.Low, q.Low) && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	step := cmp.Or(q.Step, 1)
	switch {
	case v.State != advisor.Told:
	case q.Kind == advisor.Choice:
		for _, id := range optionsIn(q, v.Options)[1:] {
			out = append(out, q.ID+" = "+quoted(id))
		}
	case q.Kind == advisor.NumberKind && (v.Low-step >= q.Low || q.Low >= q.High):
		add(v.Low + step)
	case q.Kind == advisor.NumberKind && v.High+step <= q.High, q.Kind == advisor.Year:
		add(v.High)
		add(v.High - step)
	case q.Kind == advisor.ReadingsKind && len(v.Readings) > 0:
		low := slices.Min(v.Readings)
		out = append(out, q.ID+" = "+readingsOf(slices.Repeat([]float64{low - step}, len(v.Readings))))
	}
	return out
}

// limitAt is the limit that a number just keeps, and the number one step beyond
// it, on the side where the question's range has room.
func limitAt(q *advisor.Question, v advisor.Value, step float64) (limit string, beyond float64, ok bool) {
	switch {
	case v.Low-step >= q.Low || q.Low >= q.High:
		return " >= " + figure(v.Low), v.Low - step, true
	case v.High+step <= q.High:
		return " <= " + figure(v.High), v.High + step, true
	}
	return "", 0, false
}

func optionsIn(q *advisor.Question, set uint64) (ids []string) {
	for i := range q.Options {
		if set&(1<<i) != 0 {
			ids = append(ids, q.Options[i].ID)
		}
	}
	return ids
}

func listed(ids []string) string {
	words := make([]string, len(ids))
	for i := range ids {
		words[i] = quoted(ids[i])
	}
	return "[" + strings.Join(words, ", ") + "]"
}

func readingsOf(readings []float64) string {
	words := make([]string, len(readings))
	for i := range readings {
		words[i] = figure(readings[i])
	}
	return "[" + strings.Join(words, ", ") + "]"
}
