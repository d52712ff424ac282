package engine

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/condition"
)

// reading is a case as the conditions see it: one view for each stage of
// channels. The last view knows all that is known; the first only what was
// seen or measured.
type reading struct {
	e         *Engine
	views     [advisor.Stages]*condition.View
	asked     []bool             // by question: some answer was given, even "hidden"
	values    []advisor.Value    // by question, over all channels
	how       []advisor.Channel  // channel of that value
	done      []bool             // by operation
	conflicts []advisor.Conflict // answers of equal channels that disagree
	ways      []*ways            // by combination of ways, made on first use
	past      []string           // answers that work done since has overtaken, in words
}

// read sets up the stage views of a case. With open, known(x) is undecided while
// x is not asked, as the two cuts want it; otherwise it is false.
func (e *Engine) read(c *advisor.Case, open bool) *reading {
	r := &reading{e: e, asked: make([]bool, len(e.book.Questions)), how: make([]advisor.Channel, len(e.book.Questions)),
		done: make([]bool, len(e.ops))}
	byQuestion := make([][]*advisor.Answer, len(e.book.Questions))
	for i := range c.Answers {
		if q, ok := e.question[c.Answers[i].Question]; ok {
			if by := e.overtaken(c, &e.book.Questions[q], &c.Answers[i]); by != "" {
				r.past = append(r.past, e.undone(&e.book.Questions[q], by))
				continue
			}
			byQuestion[q] = append(byQuestion[q], &c.Answers[i])
			r.asked[q] = true
		}
	}
	for _, d := range c.Done {
		if o, ok := e.operation[d.Operation]; ok {
			r.done[o] = true
		}
	}
	for stage := range r.views {
		values := make([]advisor.Value, len(byQuestion))
		for q, answers := range byQuestion {
			var clash []*advisor.Answer
			values[q], r.how[q], clash = strongest(answers, stage)
			if stage == advisor.Stages-1 && len(clash) > 0 {
				r.conflicts = append(r.conflicts, e.clash(q, clash))
			}
		}
		v := e.program.NewView()
		v.Reset(c.Day)
		v.OpenKnown(open)
		v.Load(values)
		for o, done := range r.done {
			v.SetDone(o, advisor.TruthOf(done))
		}
		r.views[stage], r.values = v, values
	}
	r.shareKnown()
	return r
}

// shareKnown lets known(x) speak over all channels at every stage.
func (r *reading) shareKnown() {
	for q := range r.values {
		if !r.asked[q] {
			continue // known(x) of what was not asked is for OpenKnown to say
		}
		t := advisor.TruthOf(exact(&r.e.book.Questions[q], r.values[q]))
		for _, v := range r.views[:advisor.Stages-1] {
			v.SetKnown(q, t)
		}
	}
}

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
		said = append(said, fmt.Sprintf("%s (%s)", a.Written, a.How))
		places = append(places, a.At)
	}
	return advisor.Conflict{Questions: []string{question.ID}, Places: places,
		Text: fmt.Sprintf("%s: the answers disagree: %s; each is kept as possible", question.Name, strings.Join(said, ", "))}
}

// all is the truth of a condition over every channel.
func (r *reading) all(id advisor.CondID) advisor.Truth {
	if id == 0 {
		return advisor.True
	}
	return r.views[advisor.Stages-1].Truth(id)
}

// upTo is the truth of a condition on the channels joined by a stage.
func (r *reading) upTo(stage int, id advisor.CondID) advisor.Truth {
	if id == 0 {
		return advisor.True
	}
	return r.views[stage].Truth(id)
}

// stageChannel is the channel by which a stage's answers are discounted.
var stageChannel = [advisor.Stages]advisor.Channel{advisor.Seen, advisor.Paper, advisor.Owner, advisor.Secondhand}

// channel is how a condition came to be known: the first stage at which it is.
func (r *reading) channel(id advisor.CondID) advisor.Channel {
	for stage, v := range r.views {
		if id == 0 || v.Truth(id).Known() {
			return stageChannel[stage]
		}
	}
	return advisor.Nohow
}

// missing lists the questions that an undecided condition still reads.
func (r *reading) missing(id advisor.CondID) []int {
	if id == 0 {
		return nil
	}
	return r.views[advisor.Stages-1].Missing(id, nil)
}

// sound is the truth of a condition that makes safe: true only when seen or
// measured, false on any word.
func (r *reading) sound(id advisor.CondID) advisor.Truth {
	if id == 0 {
		return advisor.True
	}
	if first := r.views[0].Truth(id); first.Known() {
		return first
	}
	if r.all(id) == advisor.False {
		return advisor.False
	}
	return advisor.Unknown
}
