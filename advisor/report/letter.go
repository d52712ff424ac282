package report

import (
	"cmp"
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
	Opening           string // who writes, about what, when
	Gloss             string // what stands before words explained
	Sections          []section
}

// section is a titled stretch of the letter; Front ones share the first page.
type section struct {
	ID, Title   string
	Front, Last bool   // Last: the page ends after it
	Shape       string // how it lies on the page: sideShape, wideShape or overleafShape
	Blocks      []block
	Gloss       []string // trade words that first stand here, in plain words
}

// The shapes of a section: its head beside the text, above it, or above small
// type in columns, overleaf.
const (
	sideShape     = "side"
	wideShape     = "wide"
	overleafShape = "overleaf"
)

// The kinds of block.
const (
	paraBlock     = "para"
	labelBlock    = "label" // a short line that leads in what follows
	quoteBlock    = "quote" // somebody's own words
	stopBlock     = "stop"
	listBlock     = "list"
	orderedBlock  = "ordered"
	worksBlock    = "works" // sentences, each with a lead
	pairsBlock    = "pairs" // names, each with what is said of it
	tableBlock    = "table"
	pictureBlock  = "picture"
	decisionBlock = "decision" // a titled choice with blocks inside
	answersBlock  = "answers"  // what may be answered, each with a line for initials
	signingBlock  = "signing"
)

// block is one piece of a section. Text is its text, or a title or caption.
type block struct {
	Kind    string
	Text    string
	Items   []string
	Pairs   []pair
	Columns []string
	Rows    [][]string
	Look    string       // of a table: "account" has sums in its last column, "sums" in all but the first, "stairs" in the last two
	Short   bool         // a table whose rows are single lines in plain text
	Large   map[int]bool // rows of a table in larger type
	Picture *figure
	Inside  []block
	Adds    string   // of a decision
	Gloss   []string // of a decision
}

// pair is a lead and what is said of it, with the photographs that show it.
type pair struct {
	Lead   string
	Texts  []string
	Photos []shot
}

// LetterOptions say how a letter is written.
type LetterOptions struct {
	Format  string            // one of LetterFormats
	Phrases string            // a shop's own {{define}}s, which stand in for the built-in ones
	Day     string            // on which it is written, ISO 8601; "" for the case's date
	Since   int               // number of the earlier letter: only what changed since it; 0 for the whole letter
	Photos  map[string][]byte // the photographs that answers name, by name
}

// Letter writes the letter to the owner. The book gives the words of the trade
// and the questions' wording. An error is a fault in the phrases, a format that
// is not known, or an earlier letter that the case does not have.
func Letter(a *advisor.Advice, b *advisor.Book, o LetterOptions) (string, error) {
	l, err := newLetter(a, b, o)
	if err != nil {
		return "", err
	}
	d, err := l.compose(o.Since)
	if err = cmp.Or(err, l.err); err != nil {
		return "", err
	}
	switch o.Format {
	case "html":
		return htmlPage(d)
	case "markdown":
		return markdownPage(d), nil
	case "text":
		return textPage(d), nil
	}
	return "", fmt.Errorf("a letter is written as %s, not as %q", strings.Join(LetterFormats, ", "), o.Format)
}

// compose sets out the letter: the whole one, the first page first, or what
// changed since an earlier one.
func (l *letter) compose(since int) (*letterText, error) {
	d := &letterText{Lang: l.language(), Title: clean(l.a.Case.Name), Shop: clean(l.a.Settings.Shop), Gloss: l.say("gloss", nil)}
	if since > 0 {
		before, err := l.letterNumber(since)
		if err != nil {
			return nil, err
		}
		d.Opening = l.opening("opening.since")
		d.Sections = l.changed(before)
	} else {
		d.Opening = l.opening("opening")
		d.Sections = append(l.front(), l.looked(), l.notLooked(), l.choices(), l.leftAlone(), l.howFar(), l.evidence(),
			l.terms(), l.refused(), l.leaves(), l.remarks())
		d.Sections = append(d.Sections, l.overleaf()...)
	}
	kept := d.Sections[:0]
	for _, s := range d.Sections {
		if len(s.Blocks) > 0 {
			kept = append(kept, s)
		}
	}
	d.Sections = kept
	d.tidy()
	l.explain(d)
	return d, nil
}

// opening says who writes, about which job, when.
func (l *letter) opening(phrase string) string {
	return l.say(phrase, with{"Shop": l.a.Settings.Shop, "Date": l.day(0), "Job": l.a.Case.ID, "Number": l.number()})
}

// overleaf are the lists that most owners need not read.
func (l *letter) overleaf() []section {
	out := []section{l.sumsInFull(), l.routineWork(), l.leftInFull(), l.holdsInFull(), l.cautionList()}
	for i := range out {
		out[i].Shape = overleafShape
	}
	return out
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
		b.Text, b.Adds = clean(b.Text), clean(b.Adds)
		cleanAll(b.Items)
		cleanAll(b.Columns)
		for j := range b.Pairs {
			b.Pairs[j].Lead = clean(b.Pairs[j].Lead)
			cleanAll(b.Pairs[j].Texts)
		}
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
