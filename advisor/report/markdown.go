package report

import (
	"regexp"
	"strings"

	"longstand/advisor"
)

// Markdown writes the same page as Text for a reader of Markdown.
func Markdown(a *advisor.Advice) string { return whole(&page{a: a, markdown: true}) }

// item is an open list item: how far it is indented on a terminal, and at which
// column its text stands in Markdown.
type item struct{ at, column int }

// marked sets a paragraph in Markdown; see para.
func (p *page) marked(first, text string) {
	mark := strings.TrimSpace(first)
	at := len(first) - len(strings.TrimLeft(first, " "))
	for len(p.open) > 0 && p.open[len(p.open)-1].at >= at {
		p.open = p.open[:len(p.open)-1]
	}
	column := 0
	if n := len(p.open); n > 0 {
		column = p.open[n-1].column
	}
	indent := strings.Repeat(" ", column)
	text = plainMark(strings.Join(strings.Fields(text), " "))
	switch {
	case mark == "*" || mark == "-" || mark == "!" || numbered.MatchString(mark):
		// Markdown would count on from the first number of a list, so a rank is text.
		if numbered.MatchString(mark) {
			text = "**" + mark + "** " + text
		}
		if mark == "!" {
			text = "**Caution:** " + text
		}
		if len(p.open) == 0 && !p.listed {
			p.line("")
		}
		p.open = append(p.open, item{at, column + len("- ")})
		p.listed = true
		p.line("%s- %s", indent, text)
		return
	case mark != "":
		text = "**" + plainMark(mark) + "** " + text
	}
	p.listed = len(p.open) > 0
	p.line("\n%s%s", indent, text)
}

// close ends every list.
func (p *page) close() { p.open, p.listed = nil, false }

var numbered = regexp.MustCompile(`^[0-9]+\.$`)
