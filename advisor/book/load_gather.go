package book

import (
	"cmp"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// gathered is everything that the files hold, before the layers are laid over
// one another.
type gathered struct {
	added     []*item
	adjusted  []*item
	withdrawn []*withdrawal
	settings  []settingsIn
	outdone   []*tomltext.Node // sources of figures that a house layer gives anew
}

type settingsIn struct {
	layer string
	node  *tomltext.Node
}

// gather reads the files, the built-in ones first and then by layer and name,
// so that the order in which they are handed in changes nothing.
func (b *builder) gather(files []File) {
	slices.SortStableFunc(files, func(x, y File) int {
		return cmp.Or(cmp.Compare(x.Layer, y.Layer), cmp.Compare(x.Name, y.Name))
	})
	for i, p := range parse(files) {
		b.list = append(b.list, p.faults...)
		b.broken = b.broken || slices.ContainsFunc(p.faults, unread)
		for j := range p.root.Fields {
			if b.full() {
				return
			}
			b.tables(files[i].Layer, &p.root.Fields[j])
		}
	}
}

// unread tells whether a fault ended the reading of a file.
func unread(d diag.Diagnostic) bool { return d.Code == "toml-syntax" || d.Code == "file-too-large" }

// parsed is one file as read.
type parsed struct {
	root   *tomltext.Node
	faults diag.List
}

// parse reads the files side by side: nothing in one hangs on another, and at
// a cold start this is a good part of the work.
func parse(files []File) []parsed {
	out := make([]parsed, len(files))
	var next atomic.Int32
	var group sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		group.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(files); i = int(next.Add(1)) - 1 {
				out[i] = parseOne(files[i])
			}
		})
	}
	group.Wait()
	return out
}

func parseOne(f File) parsed {
	if len(f.Data) > MaxBytes {
		var list diag.List
		list.Errorf(diag.Span{File: f.Name}, "file-too-large", "a rule file has at most %d KB", MaxBytes>>10).Help = "split it by part of the car"
		return parsed{emptyTable, list}
	}
	root, faults := tomltext.Parse(f.Name, f.Data)
	return parsed{root, faults}
}

// tables takes the tables of one name.
func (b *builder) tables(layer string, f *tomltext.Field) {
	if f.Key == settingsTable.name {
		if f.Value.Kind != tomltext.Table {
			b.wrong(f.Value, "settings are one table, [settings]")
			return
		}
		b.in.settings = append(b.in.settings, settingsIn{layer, f.Value})
		return
	}
	k := kindNamed(f.Key)
	if k == nil && f.Key != withdrawTable.name {
		names := append(slices.Clone(kindNames), withdrawTable.name, settingsTable.name)
		d := b.list.Errorf(f.KeySpan, "unknown-table", "a rule file has no table %q", f.Key)
		d.Help = "its tables are " + diag.OneOf(names)
		if near := diag.Nearest(f.Key, names); near != "" {
			d.Help = "did you mean [[" + near + "]]?"
		}
		if f.Key == "case" || f.Key == "answers" {
			d.Help = "this is a case and no rule file; a case lies outside the house layers"
		}
		return
	}
	if f.Value.Kind != tomltext.Array {
		b.wrong(f.Value, "there may be several: start each with [["+f.Key+"]]")
		return
	}
	for _, n := range f.Value.Items {
		if b.full() {
			return
		}
		if n.Kind != tomltext.Table {
			b.wrong(n, "start each with [["+f.Key+"]]")
			continue
		}
		b.seq++
		if k == nil {
			b.in.withdrawn = append(b.in.withdrawn, b.readWithdrawal(layer, n))
			continue
		}
		b.item(k, layer, n)
	}
}

// item takes one item, if it has an id to be known by.
func (b *builder) item(k *kind, layer string, n *tomltext.Node) {
	id := n.Get("id")
	switch {
	case id == nil: // said where its keys are read
		b.stray(k, layer, n)
		return
	case id.Kind != tomltext.String:
		b.wrong(id, "an id is a word in quotes")
		b.stray(k, layer, n)
		return
	case !goodID(id.Str):
		b.badID(id.Str, id.Span)
		b.stray(k, layer, n)
		return
	}
	it := &item{kind: k, id: id.Str, layer: layer, at: n.Span, node: n, order: b.seq}
	if adjust := n.Get("adjust"); adjust != nil {
		if adjust.Kind != tomltext.Bool {
			b.wrong(adjust, "adjust is true")
		}
		b.in.adjusted = append(b.in.adjusted, it)
		return
	}
	if (k.name == "question" || k.name == onceTable.name) && id.Str == advisor.TypeQuestion {
		b.list.Errorf(id.Span, "reserved-id", "an intake asks %q itself, for the known types", id.Str).Help = "take another id"
	}
	if named := k.name == "question" || k.name == "derived" || k.name == "operation"; named && condition.Reserved(id.Str) {
		b.list.Errorf(id.Span, "reserved-id", "%q already means something in a condition", id.Str).Help = "take another id"
	}
	b.in.added = append(b.in.added, it)
}

// stray keeps an item without an id, so that its other faults are found as well.
func (b *builder) stray(k *kind, layer string, n *tomltext.Node) {
	if n.Get("adjust") != nil { // its keys are few, and whose they are is not known
		if n.Get("id") == nil {
			b.list.Errorf(n.Span, "missing-key", "this %s has no id", k.name)
		}
		return
	}
	b.astray = append(b.astray, &item{kind: k, layer: layer, at: n.Span, node: n, order: b.seq})
}

func (d *decoder) badID(id string, at diag.Span) {
	d.list.Errorf(at, "bad-id", "%q is no id", id).Help = "small letters, digits and underlines, a letter first, as in rear_crank_seal"
}
