// Package book is the proof room: rule text goes in, and a checked, typed,
// compiled book comes out together with every fault. The built-in book and the
// house rules enter by the same door.
//
// Its files, by what becomes of a rule file:
//
//   - The keys: table.go and kinds.go (how a table is declared), keys_*.go (every
//     key with what it says), slots.go, rows.go, names.go, figures.go,
//     conditions.go (how the value of a key is read), ground.go.
//   - Reading: load*.go, from gathering the files, by house layers and settings,
//     to what hangs together wrongly; decoder.go.
//   - Proving: check*.go, from running the specimens to rules that contradict or
//     repeat one another, holds that nothing lifts, items that nothing comes of.
//   - Asking: sharp*.go, what the specimens do not show and the case that would.
//   - Telling: codes*.go (what each code means), schema*.go (for editors).
package book

import (
	"cmp"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"maps"
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// MaxBytes is the size above which a rule file is refused.
const MaxBytes = 2 << 20

// File is one rule file. Layer is "" for the built-in book, else the name of
// the house layer.
type File struct {
	Name  string
	Data  []byte
	Layer string
}

// Result is what came out. With errors among the diagnostics the book is what
// could be read of it, fit for listing and not for advice.
type Result struct {
	Book        *advisor.Book
	Program     *condition.Program   // nil when a file could not be read
	Withdrawn   []advisor.Withdrawal // by house layers, in order of their places
	Diagnostics diag.List            // sorted by place
	Score       Score                // of Check
	items       []*item              // the settings and all that is live
	quiet       *quiet
	withdrawn   []*withdrawal
	eased       []easing
	provable    bool

	adjusted map[*item]map[string]diag.Span // keys that house layers changed
}

// builder makes one book.
type builder struct {
	decoder
	in          gathered
	seq         int
	broken      bool // a file could not be read to its end: what is missing may stand in it
	provable    bool // every condition is sound, so that specimens can be run
	live        map[string]map[string]*item
	gone        map[string]map[string]*withdrawal
	adjustedBy  map[*item]map[string]diag.Span
	withdrawals []advisor.Withdrawal
	withdrawn   []*withdrawal
	eased       []easing
	settings    *advisor.Settings
	item0       *item   // the settings
	items       []*item // all that is live, by kind and id
	astray      []*item // without an id of their own: looked at, but not in the book
	book        *advisor.Book
	program     *condition.Program
}

// Load reads a book. The order of the files changes nothing, and neither do
// the specimens: Check runs those.
func Load(files []File) *Result {
	files = slices.Clone(files)
	b := &builder{
		live: map[string]map[string]*item{}, gone: map[string]map[string]*withdrawal{},
		adjustedBy: map[*item]map[string]diag.Span{},
	}
	b.decoder.house = houseKeys
	b.gather(files)
	b.lay()
	b.builtInSources()
	b.order()
	b.readSettings()
	for _, it := range b.items {
		b.decoder.item = it
		it.kind.decode(&b.decoder, it)
		if b.full() {
			break
		}
	}
	b.readAstray()
	b.collect(files)
	if b.broken = b.broken || b.full(); !b.broken {
		b.resolve()
		b.compileAndRead()
		b.bundles()
	}
	b.flatten()
	if !b.broken {
		b.structure()
	} else {
		b.forgive()
	}
	quiet := b.silences()
	b.list.Sort()
	r := &Result{
		Book: b.book, Program: b.program, Withdrawn: b.withdrawals, Diagnostics: b.list,
		items: append([]*item{b.item0}, b.items...), quiet: quiet, provable: b.provable,
		adjusted: b.adjustedBy, withdrawn: b.withdrawn, eased: b.eased,
	}
	r.hush()
	return r
}

// readAstray reads the items that have no id, or one that is taken, so that
// their other faults are told at once.
func (b *builder) readAstray() {
	for _, it := range b.astray {
		if b.full() {
			return
		}
		b.decoder.item = it
		it.kind.decode(&b.decoder, it)
	}
}

// read lists all that was read: the settings, what is live, and what is astray.
func (b *builder) read() []*item {
	return slices.Concat([]*item{b.item0}, b.items, b.astray)
}

// compileAndRead compiles the conditions and reads their specimens side by
// side: neither looks at what the other makes.
func (b *builder) compileAndRead() {
	faults := make(chan diag.List)
	go func() { faults <- b.readSpecimens() }()
	b.compile()
	read := <-faults
	b.list = append(b.list, read...)
	b.provable = b.provable && len(read) <= maxFaults
}

// forgive drops what a file that could not be read to its end is blamed for
// only because of that.
func (b *builder) forgive() {
	cut := map[string]bool{}
	for _, d := range b.list {
		cut[d.At.File] = cut[d.At.File] || d.Code == "toml-syntax"
	}
	b.list = slices.DeleteFunc(b.list, func(d diag.Diagnostic) bool { return d.Code == "missing-key" && cut[d.At.File] })
}

// builtInSources are there without being declared.
func (b *builder) builtInSources() {
	for _, s := range []advisor.Source{
		{ID: "practice", Kind: "practice", Cite: "common practice, no source"},
		{ID: "shop", Kind: "shop", Cite: "the shop's own experience"},
	} {
		if b.live["source"][s.ID] == nil {
			b.put(&item{kind: &kind{name: "source", decode: func(*decoder, *item) {}}, id: s.ID, value: &s, node: emptyTable})
		}
	}
}

// order lists the items by kind and id: the order in which conditions are
// compiled must not hang on the files'.
func (b *builder) order() {
	for _, k := range kinds {
		b.items = append(b.items, slices.SortedFunc(maps.Values(b.live[k.name]), func(x, y *item) int {
			return cmp.Compare(x.id, y.id)
		})...)
	}
}

// ids lists the ids of a kind, sorted.
func (b *builder) ids(kind string) []string { return slices.Sorted(maps.Keys(b.live[kind])) }

// fingerprint is the SHA-256 over layers, names and bytes in order of name.
func fingerprint(files []File) string {
	hash := sha256.New()
	slices.SortStableFunc(files, func(x, y File) int { return cmp.Or(cmp.Compare(x.Name, y.Name), cmp.Compare(x.Layer, y.Layer)) })
	piece := func(data []byte) {
		hash.Write(binary.BigEndian.AppendUint64(nil, uint64(len(data))))
		hash.Write(data)
	}
	for _, f := range files {
		piece([]byte(f.Layer))
		piece([]byte(f.Name))
		piece(f.Data)
	}
	return hex.EncodeToString(hash.Sum(nil))
}
