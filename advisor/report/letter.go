package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// LetterFormats are the forms in which the letter is written.
var LetterFormats = []string{"html", "markdown", "text"}

// letterText is the letter before it is a page: all three forms are written from
// it, so that they cannot differ in what they say.
type letterText struct {
	Lang, Title, Shop string
	Sections          []section
}

// section is a titled stretch of the letter; Front ones share the first page.
type section struct {
	ID, Title   string
	Front, Last bool // Last: the page ends after it
	Blocks      []block
}

// The kinds of block.
const (
	paraBlock     = "para"
	quoteBlock    = "quote" // somebody's own words
	stopBlock     = "stop"
	listBlock     = "list"
	orderedBlock  = "ordered"
	tableBlock    = "table"
	pictureBlock  = "picture"
	decisionBlock = "decision" // a titled choice with blocks inside
	answersBlock  = "answers"  // what may be answered, each with a line for initials
	signingBlock  = "signing"
	glossBlock    = "gloss"
)

// block is one piece of a section. Text is its text, or a title or caption.
type block struct {
	Kind    string
	Text    string
	Items   []string
	Columns []string
	Rows    [][]string
	Short   bool // a table whose rows are single lines in plain text
	Picture *figure
	Inside  []block
}

// Letter writes the letter to the owner in one of LetterFormats. The book gives
// the words of the trade and the questions' wording; phrases are a shop's own
// {{define}}s that stand in for the built-in ones, "" for none. An error is a
// fault in the phrases, or a format that is not known.
func Letter(a *advisor.Advice, b *advisor.Book, format, phrases string) (string, error) {
	l, err := newLetter(a, b, phrases)
	if err != nil {
		return "", err
	}
	d := l.compose()
	if l.err != nil {
		return "", l.err
	}
	switch format {
	case "html":
		return htmlPage(d)
	case "markdown":
		return markdownPage(d), nil
	case "text":
		return textPage(d), nil
	}
	return "", fmt.Errorf("a letter is written as %s, not as %q", strings.Join(LetterFormats, ", "), format)
}

// compose sets out the whole letter, the first page first.
func (l *letter) compose() *letterText {
	d := &letterText{Lang: l.a.Settings.Locale, Title: clean(l.a.Case.Name), Shop: clean(l.a.Settings.Shop)}
	d.Sections = append(d.Sections, l.front()...)
	d.Sections = append(d.Sections, l.looked(), l.notLooked())
	d.Sections = append(d.Sections, l.choices(), l.routineWork(), l.leftAlone(), l.howFar(), l.evidence(), l.holdsInFull(),
		l.terms(), l.refused(), l.leaves(), l.cautionList(), l.remarks())
	kept := d.Sections[:0]
	for _, s := range d.Sections {
		if len(s.Blocks) > 0 {
			kept = append(kept, s)
		}
	}
	d.Sections = kept
	d.tidy()
	l.explain(d)
	return d
}

// tidy takes out of every text what could disturb a page or a terminal.
func (d *letterText) tidy() {
	for i := range d.Sections {
		d.Sections[i].Title = clean(d.Sections[i].Title)
		tidyBlocks(d.Sections[i].Blocks)
	}
}

func tidyBlocks(blocks []block) {
	for i := range blocks {
		b := &blocks[i]
		b.Text = clean(b.Text)
		cleanAll(b.Items)
		cleanAll(b.Columns)
		for _, r := range b.Rows {
			cleanAll(r)
		}
		tidyBlocks(b.Inside)
	}
}

func cleanAll(s []string) {
	for i := range s {
		s[i] = clean(s[i])
	}
}
