package tomltext

import (
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"
)

// value builds the node of a parsed value that starts at an offset, and
// returns the offset behind it. The parser gives no range for lists and only
// the brace of an inline table, so those are followed from child to child.
func (w *walker) value(v *unstable.Node, start int) (*Node, int) {
	switch v.Kind {
	case unstable.Array:
		return w.array(v, start)
	case unstable.InlineTable:
		return w.inline(v, start)
	}
	start, end := w.bounds(v.Raw)
	n := w.node(String, w.span(start, end))
	raw := w.src.text[start:end]
	switch v.Kind {
	case unstable.String:
		w.text(n, v.Data, start, end)
	case unstable.Bool:
		n.Kind, n.Bool = Bool, raw == "true"
	case unstable.Integer:
		w.integer(n, raw)
	case unstable.Float:
		w.float(n, raw)
	default:
		w.date(n, v.Kind, raw)
	}
	return n, end
}

func (w *walker) array(v *unstable.Node, start int) (*Node, int) {
	n := w.node(Array, w.span(start, start))
	at := start + 1
	it := v.Children()
	for it.Next() {
		at = w.skip(at, blank)
		var item *Node
		item, at = w.value(it.Node(), at)
		if w.count > MaxValues {
			return n, at
		}
		n.Items = append(n.Items, item)
	}
	end := w.skip(at, blank) + 1
	n.Span = w.span(start, end)
	return n, end
}

func (w *walker) inline(v *unstable.Node, start int) (*Node, int) {
	n := w.node(Table, w.span(start, start))
	n.made = headed // open while its own keys are read
	n.Fields = make([]Field, 0, 4)
	at := start + 1
	it := v.Children()
	for it.Next() {
		at = w.keyValue(n, it.Node())
		n.Tail = at
		if w.count > MaxValues {
			return n, at
		}
	}
	w.close(n)
	end := w.skip(at, blank) + 1
	n.Span = w.span(start, end)
	n.Tail = max(n.Tail, start+1)
	return n, end
}

// close forbids later additions to an inline table and what it holds.
func (w *walker) close(n *Node) {
	n.made = closed
	for _, f := range n.Fields {
		if f.Value.Kind == Table && f.Value.made == dotted {
			w.close(f.Value)
		}
	}
}

// blank is what may stand between the items of a list.
const blank = " \t\r\n,#"

// skip steps over the given characters and, where '#' is among them, over comments.
func (w *walker) skip(at int, over string) int {
	for at < len(w.src.data) && strings.IndexByte(over, w.src.data[at]) >= 0 {
		if w.src.data[at] == '#' {
			for at < len(w.src.data) && w.src.data[at] != '\n' {
				at++
			}
			continue
		}
		at++
	}
	return at
}

// text fills a string node. The text is the file's own bytes when those just
// inside the quotes equal it: the parser's slice cannot be asked, since an
// escaped text lies elsewhere in memory.
func (w *walker) text(n *Node, text []byte, start, end int) {
	quotes := 1
	if end-start >= 6 && w.src.data[start] == w.src.data[start+1] && w.src.data[start] == w.src.data[start+2] {
		quotes = 3
	}
	from := start + quotes
	if quotes == 3 { // the line break right after the opening quotes is not text
		switch {
		case w.src.data[from] == '\n':
			from++
		case w.src.data[from] == '\r' && w.src.data[from+1] == '\n':
			from += 2
		}
	}
	n.TextStart = from
	if from+len(text) == end-quotes && w.src.text[from:end-quotes] == string(text) {
		n.Exact, n.Str = true, w.src.text[from:end-quotes]
		return
	}
	n.Str = string(text)
}

func (w *walker) integer(n *Node, raw string) {
	n.Kind = Integer
	base, digits := 10, strings.ReplaceAll(raw, "_", "")
	if len(digits) > 2 && digits[0] == '0' {
		switch digits[1] {
		case 'x':
			base, digits = 16, digits[2:]
		case 'o':
			base, digits = 8, digits[2:]
		case 'b':
			base, digits = 2, digits[2:]
		}
	}
	i, err := strconv.ParseInt(digits, base, 64)
	if err != nil {
		w.list.Errorf(n.Span, "bad-value", "%s is too large for a whole number", raw)
	}
	n.Int, n.Float = i, float64(i)
}

func (w *walker) float(n *Node, raw string) {
	n.Kind = Float
	digits := strings.ReplaceAll(raw, "_", "")
	if strings.HasSuffix(digits, "nan") {
		digits = "nan" // Go knows no sign before it
	}
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil && !math.IsInf(x, 0) {
		w.list.Errorf(n.Span, "bad-value", "%s is not a number", raw)
	}
	if math.IsInf(x, 0) && !strings.HasSuffix(raw, "inf") {
		w.list.Errorf(n.Span, "bad-value", "%s is too large for a number", raw)
	}
	n.Float = x
}

// dateLayouts are TOML's four kinds of date and time; a comma for the decimal
// point is Go's kindness, not TOML's.
var dateLayouts = map[unstable.Kind][]string{
	unstable.LocalDate:     {"2006-01-02"},
	unstable.LocalTime:     {"15:04:05", "15:04"},
	unstable.LocalDateTime: {"2006-01-02T15:04:05", "2006-01-02T15:04"},
	unstable.DateTime:      {"2006-01-02T15:04:05Z07:00", "2006-01-02T15:04Z07:00"},
}

func (w *walker) date(n *Node, kind unstable.Kind, raw string) {
	n.Kind, n.Str = Date, raw
	plain := strings.ToUpper(strings.Replace(raw, " ", "T", 1))
	for _, layout := range dateLayouts[kind] {
		if _, err := time.Parse(layout, plain); err == nil {
			return
		}
	}
	w.list.Errorf(n.Span, "bad-value", "there is no such date: %s", raw)
}
