package engine

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// exact tells whether a value leaves exactly one possibility.
func exact(q *advisor.Question, v advisor.Value) bool {
	if v.State != advisor.Told {
		return false
	}
	switch q.Kind {
	case advisor.YesNoKind, advisor.Choice:
		return v.Options != 0 && v.Options&(v.Options-1) == 0
	case advisor.Choices:
		return v.Yes|v.No == q.AllOptions()
	case advisor.ReadingsKind:
		return len(v.Readings) > 0
	case advisor.Text:
		return v.Text != ""
	}
	return v.Low == v.High
}

// strongest picks the value that counts among the answers whose channel has
// joined by the stage: the strongest stage's, all of them where they agree,
// and everything that any of them allows where they do not. Answers that say
// nothing (hidden, can't tell) never overrule one that does.
func strongest(answers []*advisor.Answer, stage int) (v advisor.Value, how advisor.Channel, clash []*advisor.Answer) {
	how = advisor.Nohow
	var best []*advisor.Answer
	for _, a := range answers {
		switch s := a.How.Stage(); {
		case s > stage:
		case a.Value.State != advisor.Told:
			if v.State == advisor.NotAsked {
				v = advisor.Value{State: a.Value.State}
			}
		case len(best) == 0 || s < best[0].How.Stage():
			best = []*advisor.Answer{a}
		case s == best[0].How.Stage():
			best = append(best, a)
		}
	}
	if len(best) == 0 {
		return v, how, nil
	}
	v, how = best[0].Value, best[0].How
	for _, a := range best[1:] {
		both, agree := meet(v, a.Value)
		if !agree || clash != nil { // once two disagree, all stay possible, in whatever order they were said
			clash = best
			both = join(v, a.Value)
		}
		v, how = both, min(how, a.How)
	}
	return v, how, clash
}

// meet is what two values both allow; false when nothing.
func meet(a, b advisor.Value) (advisor.Value, bool) {
	out := a
	out.Low, out.High = max(a.Low, b.Low), min(a.High, b.High)
	out.Options = a.Options & b.Options
	out.Yes, out.No = a.Yes|b.Yes, a.No|b.No
	if out.Low > out.High || (a.Options|b.Options != 0 && out.Options == 0) || out.Yes&out.No != 0 ||
		!slices.Equal(a.Readings, b.Readings) || a.Text != b.Text && a.Low == b.Low && a.Options == 0 {
		return out, false
	}
	return out, true
}

// join is what either value allows.
func join(a, b advisor.Value) advisor.Value {
	out := a
	out.Low, out.High = min(a.Low, b.Low), max(a.High, b.High)
	out.Options = a.Options | b.Options
	out.Yes, out.No = a.Yes&b.Yes, a.No&b.No
	if !slices.Equal(a.Readings, b.Readings) {
		return advisor.Value{State: advisor.CantTell}
	}
	return out
}

func (e *Engine) clash(q int, answers []*advisor.Answer) advisor.Conflict {
	question := &e.book.Questions[q]
	var said []string
	var places []advisor.Place
	for _, a := range answers {
		said = append(said, fmt.Sprintf("%s (%s)", a.Words(question), a.How))
		places = append(places, a.At)
	}
	return advisor.Conflict{Questions: []string{question.ID}, Places: places,
		Text: fmt.Sprintf("%s: the answers disagree: %s; each is kept as possible", question.Name, strings.Join(said, ", "))}
}

// present words what is known of a question now: its answers and how each is known.
func present(c *advisor.Case, q *advisor.Question) string {
	var out []string
	for i := range c.Answers {
		a := &c.Answers[i]
		if a.Question == q.ID {
			out = append(out, fmt.Sprintf("%s (%s)", a.Words(q), a.How))
		}
	}
	return strings.Join(out, "; ")
}
