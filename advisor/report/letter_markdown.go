package report

import (
	"fmt"
	"strings"
)

// markdownPage writes the letter as Markdown; every text is escaped, so that
// what a person wrote is never read as Markdown or HTML.
func markdownPage(d *letterText) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", plainMark(d.Title))
	for i := range d.Sections {
		fmt.Fprintf(&b, "\n## %s\n", plainMark(d.Sections[i].Title))
		markBlocks(&b, d.Sections[i].Blocks)
		if d.Sections[i].Last {
			b.WriteString("\n---\n")
		}
	}
	return b.String()
}

func markBlocks(b *strings.Builder, blocks []block) {
	for i := range blocks {
		k := &blocks[i]
		text := plainMark(k.Text)
		switch k.Kind {
		case paraBlock:
			fmt.Fprintf(b, "\n%s\n", text)
		case quoteBlock:
			fmt.Fprintf(b, "\n> %s\n", text)
		case stopBlock, listBlock:
			markItems(b, "- ", k.Items)
		case orderedBlock:
			markItems(b, "1. ", k.Items)
		case glossBlock:
			fmt.Fprintf(b, "\n*%s* %s\n", text, plainMark(strings.Join(k.Items, " ")))
		case tableBlock:
			markTable(b, k)
		case pictureBlock:
			fmt.Fprintf(b, "\n%s\n", plainMark(k.Picture.Desc))
		case decisionBlock:
			fmt.Fprintf(b, "\n### %s\n", text)
			markBlocks(b, k.Inside)
		case answersBlock:
			fmt.Fprintf(b, "\n%s %s\n", text, plainMark(strings.Join(k.Items, " ______ / ")+" ______"))
		case signingBlock:
			fmt.Fprintf(b, "\n%s\n\n%s\n", text, plainMark("Signed ______________________ Date ____________"))
		}
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
