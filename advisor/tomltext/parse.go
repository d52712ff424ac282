package tomltext

import (
	"bytes"
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"

	"longstand/advisor/diag"
)

// MaxValues is the number of values that one file may hold: many times what
// a long book needs, and few enough to keep a hostile file from filling memory.
const MaxValues = 60_000

// maxMarks bounds what the parser itself may be asked to keep: every value
// stands behind one of these marks, though a text may hold them too.
const maxMarks = 4 * MaxValues

// maxParts is the number of parts that one dotted key may have.
const maxParts = 32

// Parse reads a TOML file into a tree. It returns what it could read together
// with every fault: after "toml-syntax" it reads on from the next table header,
// after "duplicate-key" and "bad-value" from the next key. It never panics and never returns a nil Node. The tree
// keeps the data, which must not be changed afterwards. Callers limit the size.
func Parse(file string, data []byte) (*Node, diag.List) {
	src := newSource(file, data)
	w := &walker{src: src, base: src.lines[0]}
	w.root = &Node{Kind: Table, Span: src.whole(), src: src, made: headed, Tail: w.base}
	w.current = w.root
	if marks(data) > maxMarks {
		w.tooLarge()
		return w.root, w.list
	}
	for faults := 0; faults < maxSyntax; faults++ {
		w.parser.Reset(data[w.base:])
		for w.parser.NextExpression() {
			w.expression(w.parser.Expression())
			if w.count > MaxValues {
				w.tooLarge()
				return w.root, w.list
			}
		}
		err := w.parser.Error()
		if err == nil {
			break
		}
		next := w.nextHeader(max(w.syntax(err), w.base))
		if next < 0 {
			break
		}
		w.base, w.current = next, nil
	}
	w.list.Sort()
	return w.root, w.list
}

// maxSyntax ends the reading of a file that is hardly TOML at all.
const maxSyntax = 20

// nextHeader finds the first line below an offset that starts a table of a
// list of tables, or gives -1. Nothing else begins a line with two brackets
// but a list of lists over several lines, which rules and cases have not.
func (w *walker) nextHeader(at int) int {
	if i := bytes.Index(w.src.data[at:], []byte("\n[[")); i >= 0 {
		return at + i + 1
	}
	return -1
}

func marks(data []byte) int {
	n := 0
	for _, b := range data {
		switch b {
		case ',', '=', '[', '{':
			n++
		}
	}
	return n
}

func (w *walker) tooLarge() {
	d := w.list.Errorf(w.src.whole(), "file-too-large", "the file holds more than %d values", MaxValues)
	d.Help = "split it into several files"
}

// walker builds the tree from the parser's expressions.
type walker struct {
	src     *source
	base    int // bytes before the parser's data
	parser  unstable.Parser
	root    *Node
	current *Node // the table of the header last seen; nil while it is refused
	list    diag.List
	slab    []Node
	line    int // of the place found last
	count   int
}

// node makes a Node; they are cut from slabs, since a book has thousands.
func (w *walker) node(kind Kind, span diag.Span) *Node {
	if len(w.slab) == 0 {
		w.slab = make([]Node, 128)
	}
	n := &w.slab[0]
	w.slab = w.slab[1:]
	w.count++
	n.Kind, n.Span, n.src = kind, span, w.src
	return n
}

// span gives the place of the bytes from start up to end.
func (w *walker) span(start, end int) diag.Span {
	s := w.src.span(start, end, w.line)
	w.line = s.Line - 1
	return s
}

// bounds gives the byte offsets of a parser's range.
func (w *walker) bounds(r unstable.Range) (start, end int) {
	start = w.base + int(r.Offset)
	return start, start + int(r.Length)
}

func (w *walker) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.KeyValue:
		end := w.keyValue(w.current, e)
		if w.current != nil {
			w.current.Tail = end
		}
	case unstable.Table:
		w.header(e, false)
	case unstable.ArrayTable:
		w.header(e, true)
	}
}

// keyValue adds one key to a table and returns the offset behind its value.
// With a nil table the value is walked all the same, for its own faults.
func (w *walker) keyValue(table *Node, e *unstable.Node) int {
	var few [2]part
	keys := w.keys(e.Key(), few[:0])
	if len(keys) > maxParts {
		return keys[0].span.End
	}
	start := w.skip(keys[len(keys)-1].span.End, " \t=")
	value, end := w.value(e.Value(), start)
	if table == nil {
		return end
	}
	table = w.dot(table, keys[:len(keys)-1])
	if table == nil {
		return end
	}
	last := keys[len(keys)-1]
	if before := table.Field(last.name); before != nil {
		w.duplicate(last, before)
		return end
	}
	table.add(Field{Key: last.name, KeySpan: last.span, Value: value})
	return end
}

// syntax places the fault at which the parser gave up, and gives its offset.
func (w *walker) syntax(err error) int {
	at := w.src.whole()
	var fault *unstable.ParserError
	if errors.As(err, &fault) {
		// The highlight is a slice of the parser's data: its capacity tells where.
		data := w.parser.Data()
		if from := cap(data) - cap(fault.Highlight); from >= 0 && from <= len(data) {
			at = w.span(w.base+from, w.base+from+len(fault.Highlight))
		}
	}
	d := w.list.Errorf(at, "toml-syntax", "this is not TOML: %s", err)
	d.Help = syntaxHelp(err.Error(), w.src.data, at.Start)
	return at.Start
}
