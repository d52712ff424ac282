package report

import (
	"fmt"
	"strings"
)

// markdownPage writes the letter as Markdown; every text is escaped, so that
// what a person wrote is never read as Markdown or HTML.
func markdownPage(d *letterText) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n%s\n", plainMark(d.Title), plainMark(d.Opening))
	for i := range d.Sections {
		fmt.Fprintf(&b, "\n## %s\n", plainMark(d.Sections[i].Title))
		markBlocks(&b, d.Sections[i].Blocks, d.Gloss)
		markGloss(&b, d.Gloss, d.Sections[i].Gloss)
		if d.Sections[i].Last {
			b.WriteString("\n---\n")
		}
	}
	return b.String()
}

func markBlocks(b *strings.Builder, blocks []block, gloss string) {
	for i := range blocks {
		k := &blocks[i]
		text := plainMark(k.Text)
		switch k.Kind {
		case paraBlock, labelBlock:
			fmt.Fprintf(b, "\n%s\n", text)
		case quoteBlock:
			fmt.Fprintf(b, "\n> %s\n", text)
		case listBlock:
			markItems(b, "- ", k.Items)
		case stopBlock, worksBlock, pairsBlock:
			markPairs(b, k)
		case orderedBlock:
			markItems(b, "1. ", k.Items)
		case tableBlock:
			markTable(b, k)
		case pictureBlock:
			fmt.Fprintf(b, "\n%s\n", plainMark(k.Picture.Desc))
		case decisionBlock:
			fmt.Fprintf(b, "\n### %s\n", text)
			if k.Adds != "" {
				fmt.Fprintf(b, "\n%s\n", plainMark(k.Adds))
			}
			markBlocks(b, k.Inside, gloss)
			markGloss(b, gloss, k.Gloss)
		case answersBlock:
			fmt.Fprintf(b, "\n%s %s\n", text, plainMark(strings.Join(k.Items, " ______ / ")+" ______"))
		case signingBlock:
			fmt.Fprintf(b, "\n%s\n\n%s\n", text, plainMark(strings.Join(k.Items, " ______________________ ")+" ____________"))
		}
	}
}

// markPairs writes leads in bold; a photograph is named by its file.
func markPairs(b *strings.Builder, k *block) {
	if k.Text != "" {
		fmt.Fprintf(b, "\n### %s\n", plainMark(k.Text))
	}
	b.WriteString("\n")
	colon := ""
	if k.Kind == pairsBlock {
		colon = ":"
	}
	for _, p := range k.Pairs {
		b.WriteString("- **" + plainMark(p.Lead) + colon + "** " + plainMark(strings.Join(p.Texts, " ")))
		for _, s := range p.Photos {
			b.WriteString(" " + plainMark(s.Named))
		}
		b.WriteString("\n")
	}
}

func markGloss(b *strings.Builder, label string, items []string) {
	if len(items) > 0 {
		fmt.Fprintf(b, "\n*%s* %s\n", plainMark(label), plainMark(strings.Join(items, " ")))
	}
}

func markItems(b *strings.Builder, mark string, items []string) {
	b.WriteString("\n")
	for _, it := range items {
		b.WriteString(mark + plainMark(it) + "\n")
	}
}

func markTable(b *strings.Builder, k *block) {
	fmt.Fprintf(b, "\n**%s**\n\n", plainMark(k.Text))
	row := func(cells []string) {
		for _, c := range cells {
			b.WriteString("| " + plainMark(c) + " ")
		}
		b.WriteString("|\n")
	}
	row(k.Columns)
	b.WriteString(strings.Repeat("| --- ", len(k.Columns)) + "|\n")
	for _, r := range k.Rows {
		row(r)
	}
}

var marks = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "#", `\#`,
	"|", `\|`, "[", `\[`, "]", `\]`, "~", `\~`, "!", `\!`, "@", `\@`, "://", `:\//`, "www.", `www\.`)

// plainMark keeps a text of one line from being read as Markdown or HTML, also
// where it begins like an item of a list.
func plainMark(s string) string {
	s = marks.Replace(s)
	if s != "" && strings.ContainsRune("+-=", rune(s[0])) {
		s = `\` + s
	}
	digits := len(s) - len(strings.TrimLeft(s, "0123456789"))
	if digits > 0 && digits < len(s) && (s[digits] == '.' || s[digits] == ')') {
		s = s[:digits] + `\` + s[digits:]
	}
	return s
}
