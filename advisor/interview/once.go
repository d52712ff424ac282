package interview

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// Once is a once-over as it is put: its open questions, by number.
type Once struct {
	Over  *advisor.OnceOver
	Items []Item
}

// Item is one question of a once-over as it is put.
type Item struct {
	Question *advisor.Question
	Usual    string            // the option taken when nothing is said of it; "" for none
	Reasons  []string          // what it bears on
	Now      []*advisor.Answer // the answers that the case has, when it is put again
	swept    bool              // those answers came from this once-over
	unasked  bool              // a brief interview does not ask it unless it is named
}

// Sweep is what was said at a once-over.
type Sweep struct {
	Given []Given  // answers of its questions, to be kept together
	Next  []string // questions to be asked one by one
}

// Given is one answer on its way into the case. Gone stands for none: what the
// case answers is taken out, since it was said otherwise and is to be asked.
type Given struct {
	Question *advisor.Question
	Entry    casefile.Entry
	Answer   advisor.Answer // as the case will read it
	Gone     bool
}

// fewest is the number of open questions from which one prompt for all is
// quicker than one for each.
const fewest = 3

// together finds the once-over that is put instead of a question, and which of
// its questions are open: all of them in a brief interview too, where one that
// is worth asking brings the others at no further prompt. There is none when one
// of them was answered or skipped by itself: who began one by one goes on so.
func (iv *Interview) together(id string) (*advisor.OnceOver, []string) {
	o := iv.onceOf[id]
	if o == nil || iv.passed[o.ID] || iv.swept[o.ID] != nil {
		return nil, nil
	}
	open := iv.candidates()
	var listed []string
	for i := range o.Members {
		m := o.Members[i].Question
		if iv.skipped[m] || iv.answered(m) {
			return nil, nil
		}
		if among(open, m) {
			listed = append(listed, m)
		}
	}
	if len(listed) < fewest {
		return nil, nil
	}
	return o, listed
}

func among(open []advisor.OpenQuestion, id string) bool {
	return slices.ContainsFunc(open, func(o advisor.OpenQuestion) bool { return o.ID == id })
}

// answered tells whether the case has an answer that a person gave; what a
// known type answered is no beginning.
func (iv *Interview) answered(id string) bool {
	for i := range iv.c.Answers {
		if a := &iv.c.Answers[i]; a.Question == id {
			if _, known := advisor.TypeOf(a.Note); !known {
				return true
			}
		}
	}
	return false
}

// oncePrompt puts a once-over with some of its questions.
func (iv *Interview) oncePrompt(o *advisor.OnceOver, listed []string, left int) *Prompt {
	iv.put[o.ID] = listed
	q := &advisor.Question{ID: o.ID, Kind: advisor.Choices, Station: o.Station, Name: o.Name, Ask: o.Ask, Help: o.Help}
	once := &Once{Over: o}
	for i := range o.Members {
		m := &o.Members[i]
		if !slices.Contains(listed, m.Question) {
			continue
		}
		p := iv.prompt(advisor.OpenQuestion{ID: m.Question}, 0)
		once.Items = append(once.Items, Item{p.Question, m.Usual, p.Reasons, p.Now, iv.swept[o.ID][m.Question], iv.spared(m.Question)})
		q.Options = append(q.Options, advisor.Option{ID: m.Question, Name: p.Question.Name})
		for _, h := range p.Question.Hazards {
			if !slices.Contains(q.Hazards, h) {
				q.Hazards = append(q.Hazards, h)
			}
		}
	}
	p := &Prompt{Question: q, Once: once, Number: iv.asked + 1, Left: left, Cautions: iv.cautions(q), day: iv.c.Day}
	for i := range once.Items {
		p.Options = append(p.Options, once.Items[i].Question.Name)
		for _, r := range once.Items[i].Reasons {
			if !slices.Contains(p.Reasons, r) && (r != changesNothing || len(once.Items[i].Now) == 0) {
				p.Reasons = append(p.Reasons, r)
			}
		}
	}
	if len(p.Reasons) == 0 {
		p.Reasons = []string{changesNothing}
	}
	p.Reasons, p.Form = oneOfEach(p.Reasons), once.form()
	return p
}

// TakeSweep goes on with the case in which a once-over was answered.
func (iv *Interview) TakeSweep(p *Prompt, s *Sweep, c *advisor.Case) {
	id := p.Once.Over.ID
	iv.warn(p.Question)
	iv.went(id, c)
	swept := iv.swept[id]
	if swept == nil {
		swept = map[string]bool{}
		iv.swept[id] = swept
	}
	for i := range s.Given {
		swept[s.Given[i].Question.ID] = !s.Given[i].Gone
	}
	for i := range p.Once.Items {
		delete(iv.skipped, p.Once.Items[i].Question.ID)
	}
	iv.queue = s.Next
}

// queued is the first question that a once-over left to be asked by itself and
// that can still matter, or that is asked again; "" when there is none.
func (iv *Interview) queued() string {
	if len(iv.queue) == 0 {
		return ""
	}
	open := iv.candidates()
	for len(iv.queue) > 0 {
		id := iv.queue[0]
		if iv.answered(id) || among(open, id) {
			return id
		}
		iv.queue = iv.queue[1:]
	}
	return ""
}

// pass leaves the questions of a once-over for another time, or as they are
// when it was answered before.
func (iv *Interview) pass(o *advisor.OnceOver) {
	iv.passed[o.ID] = true
	if iv.swept[o.ID] != nil {
		return
	}
	for _, id := range iv.put[o.ID] {
		if !iv.answered(id) {
			iv.skipped[id] = true
		}
	}
}

// reopen takes back that a once-over was left for another time.
func (iv *Interview) reopen(o *advisor.OnceOver) {
	delete(iv.passed, o.ID)
	for _, id := range iv.put[o.ID] {
		delete(iv.skipped, id)
	}
}
