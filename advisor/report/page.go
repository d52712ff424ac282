// Package report is the writing desk: it turns the one record of advice into
// words for a terminal, a page or a program. It computes nothing.
//
// Its files, by the page that they write; page*.go serve them all:
//
//   - text*.go: the advice, for a terminal and as Markdown (markdown.go).
//   - why*.go, ladder.go, reckoning.go: why a call stands, how far to go, and
//     how every sum came about.
//   - sheet*.go: the sheet for the bench.
//   - letter*.go: the letter to the owner, its words in words/phrases.tmpl.
//   - ended*.go, account.go: the end of a job, and what closed jobs teach.
//   - json*.go: the record for programs, by advice.schema.json.
//   - shelf.go: what is in a book.
//   - money.go, digits.go, spoken.go: amounts, figures and words as the shop
//     writes them.
package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// width is the width of a terminal page, in characters.
const width = 80

// Closing is the line that ends every page of advice.
const Closing = "This is advice, not a licence. Local codes, the maker's data and licensed practice come first wherever they differ from it."

// page gathers the lines of one page, for a terminal or as Markdown. A page is
// written once for both, so that they cannot say different things.
type page struct {
	a *advisor.Advice
	b strings.Builder
	// said are the cautions already printed in full on this page.
	said map[string]bool
	// cited are the sources of what the page says, in that order.
	cited []string
	// care are the cautions that the end of a why gives.
	care []advisor.CautionAdvice
	// markdown is set for Markdown; open are then the list items still open, and
	// listed tells that the line above belongs to a list.
	markdown, listed bool
	open             []item
}

func (p *page) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

// head sets the page's own title.
func (p *page) head(words string) {
	if p.markdown {
		p.line("# %s", plainMark(words))
		return
	}
	p.para("", "", words)
}

// title sets a section's title, underlined.
func (p *page) title(words string) {
	if p.markdown {
		p.close()
		p.line("\n## %s", plainMark(words))
		return
	}
	p.line("\n%s\n%s", words, strings.Repeat("-", runes(words)))
}

// sub sets a title within a section.
func (p *page) sub(words string) {
	if p.markdown {
		p.close()
		p.line("\n### %s", plainMark(strings.TrimSuffix(words, ":")))
		return
	}
	p.para("", "", words)
}

// gap leaves a line free.
func (p *page) gap() {
	if !p.markdown {
		p.line("")
	}
}

// para sets a paragraph. What stands before its first line says what it is: a
// mark such as "- ", "1. " or "! " makes an item of a list, words with a colon
// a label, spaces only a further paragraph of the item above.
func (p *page) para(first, rest, text string) {
	if p.markdown {
		p.marked(first, text)
		return
	}
	p.b.WriteString(wrap(text, first, rest, width))
}

// row sets an amount of money beside what it is.
func (p *page) row(words, amount, note string) {
	if p.markdown {
		p.marked("- ", words+": "+amount+" ("+note+")")
		return
	}
	p.line("%s", strings.TrimRight(fmt.Sprintf("%-20s %12s   %s", words, amount, note), " "))
}

// footer ends a page.
func (p *page) footer() {
	for _, n := range p.a.Notes {
		p.para("Note: ", "  ", n)
	}
	p.gap()
	p.para("", "", Closing)
}

// hazardWords names a hazard in the words of the bench.
func hazardWords(hazard string) string {
	switch hazard {
	case "alone":
		return "not alone"
	case "fuel_vapour":
		return "fuel"
	case "in_gear":
		return "out of gear"
	case "rotating":
		return "turning parts"
	}
	return strings.ReplaceAll(hazard, "_", " ")
}

// cautions prints each safety note beside its step: whole the first time on a
// page, after that by its hazard in one line.
func (p *page) cautions(list []advisor.CautionAdvice, indent string) {
	if p.said == nil {
		p.said = map[string]bool{}
	}
	var again []string
	for _, c := range list {
		if p.said[c.ID] {
			if h := hazardWords(c.Hazard); !slices.Contains(again, h) {
				again = append(again, h)
			}
			continue
		}
		p.said[c.ID] = true
		text := advisor.Sentence(c.Text)
		if c.Defers != "" {
			text += " Defers to: " + advisor.Sentence(c.Defers)
		}
		p.para(indent+"! ", indent+"  ", text)
	}
	if len(again) > 0 {
		p.para(indent+"! ", indent+"  ", "As above: "+strings.Join(again, ", ")+".")
	}
}
