package interview

import (
	"fmt"
	"strings"
)

// wide is the width of a line at the car's side.
const wide = 78

// shownReasons is how many reasons stand beside a question; why lists them all.
const shownReasons = 3

// Text is a question as it is shown: its place, the question, how to see it,
// why it is asked, what can hurt, the options, and the form of an answer.
func (p *Prompt) Text() string {
	var b strings.Builder
	if p.Repeated {
		b.WriteString("\n" + fold(p.Question.Ask, "", ""))
		if p.Once != nil {
			b.WriteString(p.Once.lines()) // the numbers must be in sight
		}
		return b.String() + fold(p.Form, "  ", "  ")
	}
	place := p.Question.Station
	if p.Number > 0 {
		place += ", question " + fmt.Sprint(p.Number)
	}
	if p.Once != nil {
		place += fmt.Sprintf(", %d at one look", len(p.Once.Items))
	}
	if p.Left > 0 {
		place += fmt.Sprintf(" (%d left at most)", p.Left)
	}
	fmt.Fprintf(&b, "\n%s\n", place)
	b.WriteString(fold(p.Question.Ask, "", ""))
	if p.Question.Help != "" {
		b.WriteString(fold(p.Question.Help, "  ", "  "))
	}
	reasons := p.Reasons
	more := ""
	if n := len(reasons) - shownReasons; n > 0 {
		reasons, more = reasons[:shownReasons], fmt.Sprintf("; and %d more (w lists them)", n)
	}
	b.WriteString(fold("why: "+strings.Join(reasons, "; ")+more, "  ", "       "))
	for _, c := range p.Cautions {
		b.WriteString(fold("CAUTION: "+c, "  ", "  "))
	}
	if p.Once != nil {
		b.WriteString(p.Once.lines() + fold(p.Form, "  ", "  "))
		return b.String()
	}
	for i, o := range p.Options {
		b.WriteString(fold(fmt.Sprintf("%d  %s", i+1, o), fmt.Sprintf("%4s", ""), strings.Repeat(" ", 7)))
	}
	for _, a := range p.Now {
		b.WriteString(fold("now: "+a.Words(p.Question)+" ("+a.How.String()+"); Enter keeps it", "  ", "  "))
	}
	b.WriteString(fold(p.Form, "  ", "  "))
	return b.String()
}

// HelpText is the answer to help: how to see it, how to answer, the commands.
func (p *Prompt) HelpText() string {
	var b strings.Builder
	if p.Question.Help != "" {
		b.WriteString(fold(p.Question.Help, "", ""))
	}
	if p.Once != nil {
		b.WriteString(onceHelp)
	} else {
		b.WriteString(fold("Answer with "+p.Form+".", "", "") + answerHelp)
	}
	for _, c := range Commands {
		fmt.Fprintf(&b, "  %s  %-8s %s\n", c.Key, c.Word, c.Does)
	}
	return strings.TrimRight(b.String(), "\n")
}

// answerHelp is what holds for an answer to any question.
const answerHelp = `Also: 5 to 8, about ten, at least 3, 140 psi, 2 1/2, not 2, 1 or 3,
hidden (x): it cannot be seen until something is off,
can't tell (c): you looked and cannot say. Enter alone: another time.
Behind an answer, how it is known and a note: 1.6 bar @measured # plugs out
`

// WhyText is the answer to why: all that an answer bears on.
func (p *Prompt) WhyText() string {
	if p.Once != nil {
		return p.Once.why()
	}
	text := "it bears on:\n"
	for _, r := range p.Reasons {
		text += fold(r, "  ", "    ")
	}
	return strings.TrimRight(text, "\n")
}

// Keys is the one line that reminds of the commands.
const Keys = "Enter skips; b back, ? help, w why, a advice, s station, q stop"

// fold breaks a text into lines that fit, the first behind one indent, the
// others behind another.
func fold(text, first, rest string) string {
	var b strings.Builder
	line := first
	empty := true
	for _, word := range strings.Fields(text) {
		if !empty && len([]rune(line))+1+len([]rune(word)) > wide {
			b.WriteString(line + "\n")
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	b.WriteString(line + "\n")
	return b.String()
}
