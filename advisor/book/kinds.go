package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// kind is one kind of item: [[name]] in a rule file.
type kind struct {
	name, doc string
	decode    func(d *decoder, it *item)
	keys      func() []Key
}

// newKind ties a table of keys to the noun it fills; finish settles what the
// keys alone cannot, and ground says where the item stands. Both may be nil.
func newKind[T any](t *table[T], ground func(*T) *advisor.Ground, finish func(*decoder, *T, *tomltext.Node)) *kind {
	return &kind{name: t.name, doc: t.doc, keys: t.keys, decode: func(d *decoder, it *item) {
		v := new(T)
		it.value = v
		t.decode(d, it.node, v)
		if ground != nil {
			g := ground(v)
			g.At, g.Layer = it.at, it.layer
			if len(it.changed) > 0 {
				g.Layer = it.changed[len(it.changed)-1]
			}
		}
		if finish != nil {
			finish(d, v, it.node)
		}
	}}
}

// kinds are all kinds of item, in the order in which they are compiled.
var kinds = []*kind{
	newKind(&sourceTable, nil, func(_ *decoder, s *advisor.Source, n *tomltext.Node) { s.At = n.Span }),
	newKind(&questionTable, nil, finishQuestion),
	newKind(&derivedTable, func(v *advisor.Derived) *advisor.Ground { return &v.Ground }, nil),
	newKind(&familyTable, func(v *advisor.Family) *advisor.Ground { return &v.Ground }, nil),
	newKind(&suspectTable, func(v *advisor.Suspect) *advisor.Ground { return &v.Ground }, finishSuspect),
	newKind(&signTable, func(v *advisor.Sign) *advisor.Ground { return &v.Ground }, finishSign),
	newKind(&inspectionTable, func(v *advisor.Inspection) *advisor.Ground { return &v.Ground }, finishInspection),
	newKind(&operationTable, func(v *advisor.Operation) *advisor.Ground { return &v.Ground }, finishOperation),
	newKind(&routeTable, func(v *advisor.Route) *advisor.Ground { return &v.Ground }, nil),
	newKind(&standingTable, func(v *advisor.StandingRule) *advisor.Ground { return &v.Ground }, finishStanding),
	newKind(&holdTable, func(v *advisor.Hold) *advisor.Ground { return &v.Ground }, nil),
	newKind(&cautionTable, func(v *advisor.Caution) *advisor.Ground { return &v.Ground }, nil),
	newKind(&typeTable, func(v *advisor.Type) *advisor.Ground { return &v.Ground }, nil),
	newKind(&onceTable, func(v *advisor.OnceOver) *advisor.Ground { return &v.Ground }, nil),
	newKind(&wordTable, func(v *advisor.Word) *advisor.Ground { return &v.Ground }, nil),
}

// kindNames are the names of the kinds.
var kindNames = func() (names []string) {
	for _, k := range kinds {
		names = append(names, k.name)
	}
	return names
}()

func kindNamed(name string) *kind {
	for _, k := range kinds {
		if k.name == name {
			return k
		}
	}
	return nil
}

// Table is one kind of table of a rule file, for docs and schemas.
type Table struct {
	Name, Doc string
	Many      bool // [[name]] rather than [name]
	Keys      []Key
}

// Tables lists every kind of table of a rule file with its keys.
func Tables() []Table {
	var all []Table
	for _, k := range kinds {
		all = append(all, Table{k.name, k.doc, true, k.keys()})
	}
	return append(all, Table{withdrawTable.name, withdrawTable.doc, true, withdrawTable.keys()},
		Table{settingsTable.name, settingsTable.doc, false, settingsTable.keys()})
}

// goodID tells whether a word can be an id: small letters, digits and
// underlines, a letter first.
func goodID(id string) bool {
	for i := range len(id) {
		c := id[i]
		if !('a' <= c && c <= 'z' || i > 0 && ('0' <= c && c <= '9' || c == '_')) {
			return false
		}
	}
	return id != "" && len(id) <= 64
}
