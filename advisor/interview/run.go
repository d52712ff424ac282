package interview

import (
	"errors"
	"fmt"
	"strings"

	"longstand/advisor"
)

// Asker is the port to whoever answers: a terminal, a pipe, a file of answers.
type Asker interface {
	// Ask puts a question and gives what was typed. ErrEnded when no more comes.
	Ask(p *Prompt) (string, error)
	// Say tells something between questions, one or more whole lines.
	Say(text string)
}

// ErrEnded is the end of input before the interview's: never taken for an answer.
var ErrEnded = errors.New("the input ended before the questions did")

// Keeper makes answers durable, all of them or none, and gives the case as it then reads.
type Keeper func(given []Given) (*advisor.Case, error)

// Page renders the advice so far.
type Page func(a *advisor.Advice) string

// Run asks until nothing is left, and tells whether it came to that: false
// when the person stopped. Each answer is kept before the next question.
func (iv *Interview) Run(asker Asker, keep Keeper, page Page) (finished bool, err error) {
	last := ""
	for {
		p := iv.Next()
		if p == nil {
			return true, nil
		}
		p.Repeated, last = p.Question.ID == last, p.Question.ID
		typed, err := asker.Ask(p)
		if err != nil {
			return false, err
		}
		reply, err := p.Read(typed)
		if err != nil {
			asker.Say(err.Error())
			continue
		}
		if reply.Command == Stop {
			return false, nil
		}
		if reply.Command != None {
			iv.obey(asker, p, reply, page)
			continue
		}
		if err := iv.keep(p, reply, keep); err != nil {
			return false, err
		}
		asker.Say(strings.TrimRight(fold("kept: "+reply.Shown, "  ", "    "), "\n"))
	}
}

// keep makes an answer, or those of a once-over, durable and goes on with them.
func (iv *Interview) keep(p *Prompt, r Reply, keep Keeper) (err error) {
	if r.Sweep == nil {
		c, err := keep([]Given{{Question: p.Question, Entry: r.Entry, Answer: r.Answer}})
		if err == nil {
			iv.Take(p.Question.ID, c)
		}
		return err
	}
	c := iv.c
	if len(r.Sweep.Given) > 0 {
		if c, err = keep(r.Sweep.Given); err != nil {
			return err
		}
	}
	iv.TakeSweep(p, r.Sweep, c)
	return nil
}

// obey follows a command other than stop.
func (iv *Interview) obey(asker Asker, p *Prompt, r Reply, page Page) {
	switch r.Command {
	case Skip:
		iv.Skip(p.Question.ID)
	case Back:
		if !iv.Back() {
			asker.Say("this is the first question")
		}
	case Help:
		asker.Say(p.HelpText())
	case Why:
		asker.Say(p.WhyText())
	case Advice:
		asker.Say(page(iv.Advice()))
	case Station:
		iv.move(asker, r.Station)
	}
}

func (iv *Interview) move(asker Asker, station string) {
	if station == "" {
		count := map[string]int{}
		for _, o := range iv.left() {
			count[o.Station]++
		}
		lines := []string{"say station and its name:"}
		for _, s := range walk() {
			lines = append(lines, fmt.Sprintf("  %-11s %d to ask", s, count[s]))
		}
		asker.Say(strings.Join(lines, "\n"))
		return
	}
	if !iv.Go(station) {
		asker.Say("nothing is left to ask at station " + station)
	}
}
