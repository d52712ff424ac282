package interview

import (
	"strings"

	"longstand/advisor"
)

// EndKeeper makes one thing said at the end of a job durable and gives the case
// as it then reads.
type EndKeeper func(e Ending) (*advisor.Case, error)

// Run asks until nothing is left, and tells whether it came to that: false
// when the person stopped. Each answer is kept before the next question. Page
// gives the page so far.
func (cl *Closing) Run(asker Asker, keep EndKeeper, page func(*advisor.Case) string) (finished bool, err error) {
	last := ""
	for {
		p := cl.Next()
		if p == nil {
			return true, nil
		}
		p.Repeated, last = p.Question.ID == last, p.Question.ID
		typed, err := asker.Ask(p)
		if err != nil {
			return false, err
		}
		command, ending, shown, err := Understand(p, typed)
		switch {
		case err != nil:
			asker.Say(err.Error())
		case command == Stop:
			return false, nil
		case command != None:
			cl.obey(asker, p, command, page)
		default:
			if cl.c, err = keep(ending); err != nil {
				return false, err
			}
			cl.answered(p.Question.ID)
			asker.Say(strings.TrimRight(fold("kept: "+shown, "  ", "    "), "\n"))
		}
	}
}

// Next gives the next question, or nil when nothing is left to ask.
func (cl *Closing) Next() *Prompt {
	if cl.again != "" {
		return cl.About(cl.again)
	}
	left := 0
	var next *toClose
	for i := range cl.asks {
		if t := &cl.asks[i]; !cl.said(t.id) && !cl.passed[t.id] {
			if left++; next == nil {
				next = t
			}
		}
	}
	if next == nil {
		return nil
	}
	p := cl.prompt(next)
	p.Left = left
	return p
}

func (cl *Closing) answered(id string) {
	cl.again = ""
	cl.history = append(cl.history, id)
	delete(cl.passed, id)
	cl.asked++
}

// obey follows a command other than stop.
func (cl *Closing) obey(asker Asker, p *Prompt, c Command, page func(*advisor.Case) string) {
	switch c {
	case Skip:
		cl.passed[p.Question.ID] = !cl.said(p.Question.ID)
		cl.history, cl.again = append(cl.history, p.Question.ID), ""
	case Back:
		if len(cl.history) == 0 {
			asker.Say("this is the first question")
			return
		}
		cl.again = cl.history[len(cl.history)-1]
		cl.history = cl.history[:len(cl.history)-1]
		delete(cl.passed, cl.again)
	case Help:
		asker.Say(cl.help(p))
	case Why:
		asker.Say("why it is asked:\n  " + strings.Join(p.Reasons, "\n  "))
	case Advice:
		asker.Say(page(cl.c))
	case Station:
		asker.Say("the end of a job has no stations")
	}
}
