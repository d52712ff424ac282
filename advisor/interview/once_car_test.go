package interview_test

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/interview"
)

// quickest is what a car that has an answer to everything says at a once-over,
// in the words that leave the fewest questions to be asked by themselves.
func (c car) quickest(p *interview.Prompt) string {
	var differ, untold, tell []string      // to be named: with a usual answer; can't tell; whatever is told
	asked, usual, hidden := 0, false, true // by themselves, when the usual ones are not named
	for i, it := range p.Once.Items {
		a, number := c[it.Question.ID], fmt.Sprint(i+1)
		usual, hidden = usual || it.Usual != "", hidden && a.Value.State == advisor.Hidden
		if a.Value.State == advisor.CantTell {
			untold = append(untold, number)
			continue
		}
		tell = append(tell, number)
		switch {
		case it.Usual == "":
			asked++
		case !isUsual(&a, it.Question, it.Usual):
			asked++
			differ = append(differ, number)
		}
	}
	switch {
	case hidden:
		return "x"
	case len(tell) == 0:
		return "c"
	case !usual || len(tell) <= asked:
		return "only " + strings.Join(tell, " ")
	case len(differ)+len(untold) == 0:
		return "none"
	case len(untold) > 0:
		return strings.Join(differ, " ") + " c " + strings.Join(untold, " ")
	}
	return strings.Join(differ, " ")
}

// atOneLook makes whole once-overs of a car alike: of some nobody can tell
// anything, some are hidden, some are as usual.
func (c car) atOneLook(r *rand.Rand, b *advisor.Book) {
	for i := range b.OnceOvers {
		as := r.IntN(6)
		for _, m := range b.OnceOvers[i].Members {
			a, q := c[m.Question], b.Question(m.Question)
			bit, _ := q.OptionBit(m.Usual)
			switch {
			case as < 2:
				a.Value = advisor.Value{State: advisor.CantTell}
			case as == 2:
				a.Value = advisor.Value{State: advisor.Hidden}
			case as == 3 && m.Usual != "" && q.Kind == advisor.Choices:
				a.Value = advisor.Value{State: advisor.Told, Yes: 1 << bit, No: q.AllOptions() &^ (1 << bit)}
			case as == 3 && m.Usual != "":
				a.Value = advisor.OneOf(1 << bit)
			}
			c[m.Question] = a
		}
	}
}

// isUsual tells whether an answer is the usual one, known as the question is by default.
func isUsual(a *advisor.Answer, q *advisor.Question, usual string) bool {
	bit, _ := q.OptionBit(usual)
	how := q.How
	if how == advisor.Nohow {
		how = advisor.Seen
	}
	if a.How != how || a.Value.State != advisor.Told || a.Note != "" {
		return false
	}
	if q.Kind == advisor.Choices {
		return a.Value.Yes == 1<<bit && a.Value.No == q.AllOptions()&^(1<<bit)
	}
	return a.Value.Options == 1<<bit
}

// answer goes on with the answers of a car to a prompt.
func answer(iv *interview.Interview, c car, p *interview.Prompt) error {
	next := *iv.Case()
	next.Answers = next.Answers[:len(next.Answers):len(next.Answers)]
	if p.Once == nil {
		next.Answers = append(next.Answers, c[p.Question.ID])
		iv.Take(p.Question.ID, &next)
		return nil
	}
	r, err := p.Read(c.quickest(p))
	if err != nil {
		return err
	}
	for _, g := range r.Sweep.Given {
		a := g.Answer
		if a.Value.State == advisor.CantTell || a.Value.State == advisor.Hidden {
			a.Written = casefile.CantTell
		}
		next.Answers = append(next.Answers, a)
	}
	iv.TakeSweep(p, r.Sweep, &next)
	return nil
}
