package interview

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// wide is the width of a line at the car's side.
const wide = 78

// shownReasons is how many reasons stand beside a question; why lists them all.
const shownReasons = 3

// Text is a question as it is shown: its place, the question, how to see it,
// why it is asked, what can hurt, the options, and the form of an answer.
func (p *Prompt) Text() string {
	var b strings.Builder
	if p.Repeated { // what was said in between may have pushed the numbers out of sight
		b.WriteString("\n" + fold(p.Question.Ask, "", "") + p.choices() + fold(p.Form, "  ", "  "))
		return b.String()
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
	b.WriteString(p.choices() + fold(p.Form, "  ", "  "))
	return b.String()
}

// choices lists what can be picked by number, and the answers that the case has.
func (p *Prompt) choices() string {
	if p.Once != nil {
		return p.Once.lines()
	}
	var b strings.Builder
	for i, o := range p.Options {
		b.WriteString(fold(fmt.Sprintf("%d  %s", i+1, o), strings.Repeat(" ", 4), strings.Repeat(" ", 7)))
	}
	for _, a := range p.Now {
		b.WriteString(fold("now: "+p.now(a)+" ("+a.How.String()+"); Enter keeps it", "  ", "  "))
	}
	return b.String()
}

// now gives an answer of the case in words, a sum with its currency.
func (p *Prompt) now(a *advisor.Answer) string {
	if p.Question.Unit == "money" && a.Value.State == advisor.Told {
		return a.Words(p.Question) + " " + p.currency
	}
	return a.Words(p.Question)
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
		b.WriteString(fold("Answer with "+p.Form+".", "", "") + kindHelp[p.Question.Kind] + answerHelp)
	}
	for _, c := range Commands {
		fmt.Fprintf(&b, "  %s  %-8s %s\n", c.Key, c.Word, c.Does)
	}
	return strings.TrimRight(b.String(), "\n")
}

// kindHelp is what can be said besides, by the kind of a question.
var kindHelp = map[advisor.Kind]string{
	advisor.Choice:  "Also: 1 or 3, not 2, a word of the list or as much of it as no other begins with.\n",
	advisor.Choices: "Also: 1 3, all, not 2, a word of the list or as much of it as no other begins with.\n",
	advisor.NumberKind: "As you say it: 60k, about 10, 5 to 8, at least 3, 2 1/2, half an inch, 140 psi.\n" +
		"What is said in another unit is converted, and shown.\n",
	advisor.ReadingsKind: "As: 140 138 142 136 psi. A unit behind the last is that of all.\n",
	advisor.Year:         "As you say it: '64, June 1998, late 60s, about 1965, before 2010, 12 years ago.\n",
	advisor.Text:         "A word that is a key here goes between quotation marks: \"none\", \"back\".\n",
}

// answerHelp is what holds for an answer to any question.
const answerHelp = `hidden (x): it cannot be seen until something is off.
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
