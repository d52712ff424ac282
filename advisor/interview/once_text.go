package interview

import (
	"fmt"
	"slices"
	"strings"
)

// form says what can be answered to a once-over.
func (o *Once) form() string {
	i := slices.IndexFunc(o.Items, func(it Item) bool { return it.Usual != "" })
	if i < 0 {
		return "2 5: these can be told; none: none of them can; each: one by one"
	}
	return "none: nothing differs, " + knownAs[o.Items[i].Question.How] + "; 2 5: these differ; c: can't tell any; " +
		"c 3: can't tell 3; only 2 5: can't tell the others; each: one by one"
}

// lines lists the questions of a once-over, each with its number and what is usual.
func (o *Once) lines() string {
	var b strings.Builder
	usual := o.usual()
	for i := range o.Items {
		it := &o.Items[i]
		line := fmt.Sprint(i+1) + "  " + it.Question.Name
		switch {
		case it.Usual != "":
			line += ": usually " + it.usualWords()
		case usual && it.unasked:
			line += ": asked only when named"
		case usual:
			line += ": asked by itself"
		}
		for _, a := range it.Now {
			line += "; now " + a.Words(it.Question) + " (" + a.How.String() + ")"
		}
		b.WriteString(fold(line, "    ", "       "))
	}
	return b.String()
}

// usualWords is the usual answer in words.
func (it *Item) usualWords() string {
	for _, o := range it.Question.Options {
		if o.ID == it.Usual {
			return o.Name
		}
	}
	return it.Usual
}

// reasonsOfEach is how many reasons why gives for each question of a once-over.
const reasonsOfEach = 2

// why tells for each question what it bears on.
func (o *Once) why() string {
	var b strings.Builder
	b.WriteString("each bears on:\n")
	for i := range o.Items {
		reasons, more := o.Items[i].Reasons, ""
		if n := len(reasons) - reasonsOfEach; n > 0 {
			reasons, more = reasons[:reasonsOfEach], fmt.Sprintf("; and %d more", n)
		}
		b.WriteString(fold(fmt.Sprint(i+1)+"  "+o.Items[i].Question.Name+": "+strings.Join(reasons, "; ")+more, "  ", "     "))
	}
	return strings.TrimRight(b.String(), "\n")
}

// onceHelp explains a once-over.
const onceHelp = `Several questions at one look. Say what differs, and the rest is taken as it
is usually found, as if you had been asked each. What differs is asked next.
  none        nothing differs; what has nothing usual is asked by itself
  2 5         2 and 5 differ, or are to be told; also 2-4, and names
  only 2 5    2 and 5 are to be told; nobody can tell the others now
  c           can't tell: nobody can tell any of them now
  x           hidden: all of them, until something is off
  2 c 4 x 5   2 differs, nobody can tell 4, 5 is hidden
  each        ask them one by one, each with how to look at it
Nothing usual is listed: the numbers are those that can be told, none means
none of them can. What is not told stays not known, and is never taken for
fine. Behind an answer, how it is known and a note: none @owner # by telephone
`
