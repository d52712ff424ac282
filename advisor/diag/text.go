package diag

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
)

// Source gives the bytes that were read from a file, or nil.
type Source func(file string) []byte

// WriteText prints each diagnostic as file:line:column: severity: message
// [code], a picture of the line with the place marked, the help and the
// related places. The line form is what editors' problem lists read.
func (l List) WriteText(w io.Writer, source Source) error {
	out := bufio.NewWriter(w)
	for i := range l {
		d := &l[i]
		fmt.Fprintf(out, "%s: %s: %s [%s]\n", printable(d.At.String()), d.Severity, printable(d.Message), d.Code)
		if source != nil {
			out.WriteString(picture(source(d.At.File), d.At))
		}
		if d.Help != "" {
			fmt.Fprintf(out, "    help: %s\n", printable(d.Help))
		}
		for _, r := range d.Related {
			fmt.Fprintf(out, "    %s: %s\n", printable(r.At.String()), printable(r.Message))
		}
	}
	return out.Flush()
}

// Apart gives the errors first and then the warnings, each in order of place.
func (l List) Apart() List {
	apart := slices.Clone(l)
	apart.Sort()
	slices.SortStableFunc(apart, func(a, b Diagnostic) int { return cmp.Compare(a.Severity, b.Severity) })
	return apart
}

// Account is Summary with the number of warnings that were silenced: "2 errors,
// 3 warnings silenced"; "" when there is nothing to say.
func (l List) Account(silenced int) string {
	parts := []string{l.Summary()}
	switch {
	case silenced == 1:
		parts = append(parts, "1 warning silenced")
	case silenced > 1:
		parts = append(parts, fmt.Sprintf("%d warnings silenced", silenced))
	}
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), ", ")
}

// Line is one diagnostic on one line, without a picture.
func (d *Diagnostic) Line() string {
	return fmt.Sprintf("%s: %s: %s [%s]", printable(d.At.String()), d.Severity, printable(d.Message), d.Code)
}

// Summary counts: "2 errors and 1 warning", or "" for an empty list.
func (l List) Summary() string {
	count := [2]int{}
	for i := range l {
		count[l[i].Severity]++
	}
	var parts []string
	for i, n := range count {
		switch {
		case n == 1:
			parts = append(parts, "1 "+Severity(i).String())
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %ss", n, Severity(i)))
		}
	}
	return strings.Join(parts, " and ")
}

// A picture is at most 80 columns wide: the line's number takes 8 of them, and
// the dots where a line goes on 4 on each side.
const (
	wide   = 72
	window = 64
)

// picture shows the line of a place and marks it. Columns count characters,
// so the marks stand right wherever every character is one cell wide.
func picture(data []byte, at Span) string {
	if at.Line == 0 || at.Start > len(data) {
		return ""
	}
	line, ok := lineOf(data, at.Line)
	if !ok {
		return ""
	}
	runes := []rune(line)
	from := min(at.Col-1, len(runes))
	to := len(runes)
	if at.EndLine == at.Line {
		to = min(max(at.EndCol-1, from), len(runes))
	}
	left, right := cut(len(runes), from, to)
	number := fmt.Sprintf("%5d", at.Line)
	marks := strings.Repeat("^", max(min(to, right)-from, 1))
	before, after := "", ""
	if left > 0 {
		before = "... "
	}
	if right < len(runes) {
		after = " ..."
	}
	shown := printable(string(runes[left:right]))
	indent := blank(before + string(runes[left:from]))
	return fmt.Sprintf("%s | %s%s%s\n%s | %s%s\n", number, before, shown, after, blank(number), indent, marks)
}

// cut chooses which part of a long line to show: the marked piece, as much of
// it as fits, with what stands before it.
func cut(length, from, to int) (left, right int) {
	if length <= wide {
		return 0, length
	}
	if to <= window {
		return 0, window
	}
	left = max(min(from-window/3, length-window), 0)
	return left, min(left+window, length)
}

// lineOf finds a line by its number from 1, without its line end.
func lineOf(data []byte, number int) (string, bool) {
	text := strings.TrimPrefix(string(data), "\xef\xbb\xbf")
	for range number - 1 {
		i := strings.IndexByte(text, '\n')
		if i < 0 {
			return "", false
		}
		text = text[i+1:]
	}
	if i := strings.IndexByte(text, '\n'); i >= 0 {
		text = text[:i]
	}
	return strings.TrimSuffix(text, "\r"), true
}

// blank keeps tabs and turns all else into spaces, so that marks line up.
func blank(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\t' {
			return r
		}
		return ' '
	}, s)
}

// printable replaces what could move a terminal's cursor or hide text. A file
// may hold anything, and its words come back in messages.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r != '\t' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) {
			return '\uFFFD'
		}
		return r
	}, s)
}
