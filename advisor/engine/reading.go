package engine

import (
	"longstand/advisor"
	"longstand/advisor/condition"
)

// reading is a case as the conditions see it: one view for each stage of
// channels. The last view knows all that is known; the first only what was
// seen or measured.
type reading struct {
	e         *Engine
	views     [advisor.Stages]*condition.View
	answers   [][]*advisor.Answer // by question: those that count
	asked     []bool              // by question: some answer was given, even "hidden"
	values    []advisor.Value     // by question, over all channels
	how       []advisor.Channel   // channel of that value
	done      []bool              // by operation
	conflicts []advisor.Conflict  // answers of equal channels that disagree
	required  []*requirements     // by combination of ways, made on first use
	room      []float64           // see together
	saved     []savingNode        // what operations save, made on first use
	past      []string            // answers that work done since has overtaken, in words
}

// read sets up the stage views of a case. With open, known(x) is undecided while
// x is not asked, as the two cuts want it; otherwise it is false.
func (e *Engine) read(c *advisor.Case, open bool) *reading {
	r := &reading{e: e, asked: make([]bool, len(e.book.Questions)), how: make([]advisor.Channel, len(e.book.Questions)),
		done: make([]bool, len(e.ops))}
	r.answers = make([][]*advisor.Answer, len(e.book.Questions))
	for i := range c.Answers {
		if q, ok := e.question[c.Answers[i].Question]; ok {
			if by := e.overtaken(c, &e.book.Questions[q], &c.Answers[i]); by != "" {
				r.past = append(r.past, e.overtakenBy(&e.book.Questions[q], by))
				continue
			}
			r.answers[q] = append(r.answers[q], &c.Answers[i])
			r.asked[q] = true
		}
	}
	for _, d := range c.Done {
		if o, ok := e.operation[d.Operation]; ok {
			r.done[o] = true
		}
	}
	values := make([]advisor.Value, len(r.answers)) // a view takes what it needs
	for stage := range r.views {
		for q, answers := range r.answers {
			var clash []*advisor.Answer
			values[q], r.how[q], clash = strongest(answers, stage)
			if stage == advisor.Stages-1 && len(clash) > 0 {
				r.conflicts = append(r.conflicts, e.clash(q, clash))
			}
		}
		v := e.program.ViewOf(values, c.Day, open)
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
