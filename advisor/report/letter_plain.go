package report

import (
	"fmt"
	"strings"
)

// textPage writes the letter for a reader of plain text, 80 columns wide.
func textPage(d *letterText) string {
	p := &page{}
	p.para("", "", d.Title)
	p.para("", "", d.Opening)
	for i := range d.Sections {
		p.title(d.Sections[i].Title)
		p.blocks(d.Sections[i].Blocks)
		p.items("    (", d.Sections[i].Gloss)
		if d.Sections[i].Last {
			p.line("\n%s", strings.Repeat("=", width))
		}
	}
	return p.b.String()
}

func (p *page) blocks(list []block) {
	for i := range list {
		b := &list[i]
		switch b.Kind {
		case paraBlock, labelBlock:
			p.para("", "", b.Text)
		case quoteBlock:
			p.para(`"`, " ", b.Text+`"`)
		case listBlock:
			p.items("* ", b.Items)
		case stopBlock, worksBlock:
			for _, x := range b.Pairs {
				p.para("* ", "  ", x.Lead+" "+strings.Join(x.Texts, " "))
			}
		case pairsBlock:
			p.pairs(b)
		case orderedBlock:
			for n, it := range b.Items {
				p.para(fmt.Sprintf("%d. ", n+1), "   ", it)
			}
		case tableBlock:
			p.rows(b)
		case pictureBlock:
			p.para("", "", b.Picture.Desc)
		case decisionBlock:
			p.line("\n%s", strings.TrimRight(wrap(b.Text, "", "", width), "\n"))
			p.para("", "", b.Adds)
			p.blocks(b.Inside)
			p.items("    (", b.Gloss)
		case answersBlock:
			p.para("  ", "  ", b.Text)
			p.para("  ", "  ", strings.Join(b.Items, " ______   ")+" ______")
		case signingBlock:
			p.para("  ", "  ", b.Text)
			p.line("  %s ____________", strings.Join(b.Items, " ______________________   "))
		}
	}
}

// pairs writes what is said of each name; a photograph is named by its file.
func (p *page) pairs(b *block) {
	if b.Text != "" {
		p.para("", "", b.Text+":")
	}
	for _, x := range b.Pairs {
		if len(x.Texts) == 1 {
			p.para("- ", "  ", x.Lead+": "+x.Texts[0])
		} else {
			p.para("- ", "  ", x.Lead+":")
			for _, t := range x.Texts {
				p.para("  - ", "    ", t)
			}
		}
		for _, s := range x.Photos {
			p.para("  ", "  ", s.Named)
		}
	}
}

func (p *page) items(first string, items []string) {
	for _, it := range items {
		if strings.HasSuffix(first, "(") {
			it += ")"
		}
		p.para(first, strings.Repeat(" ", len(first)), it)
	}
}

// rows writes a table as lines: two columns side by side where they fit, the
// cells of a short table after one another, otherwise each cell on its own below
// the first, under the head of its column.
func (p *page) rows(b *block) {
	p.para("", "", b.Text+":")
	for _, r := range b.Rows {
		switch {
		case len(r) == 2 && runes(r[0])+runes(r[1]) < width-6:
			p.line("  %s %s %s", r[0], strings.Repeat(".", width-4-runes(r[0])-runes(r[1])), r[1])
		case b.Short && len(r) == 3 && b.Look == "":
			p.para("  - ", "    ", r[0]+": "+strings.Join(r[1:], "; "))
		case b.Short:
			var cells []string
			for i, c := range r[1:] {
				if c != "" {
					cells = append(cells, strings.ToLower(b.Columns[i+1])+" "+c)
				}
			}
			p.para("  - ", "    ", r[0]+": "+strings.Join(cells, "; "))
		default:
			head := r[0]
			if runes(head) <= 3 { // a bare number says nothing by itself
				head = b.Columns[0] + " " + head
			}
			p.para("  - ", "    ", head)
			for i, c := range r[1:] {
				if c != "" {
					p.para("      ", "      ", b.Columns[i+1]+": "+c)
				}
			}
		}
	}
}
