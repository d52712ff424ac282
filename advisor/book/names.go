package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// The kinds of item that an id can name.
var (
	anOperation = []string{"operation"}
	aWayIn      = []string{"operation", "route"}
	aQuestion   = []string{"question"}
	aSuspect    = []string{"suspect"}
	anInspect   = []string{"inspection"}
	aFamily     = []string{"family"}
	aSource     = []string{"source"}
	aHazard     = []string{"hazard"}
)

// nameSlot is the id of one item.
type nameSlot struct {
	to   *string
	list *[]string // instead of to: added to a list
	of   []string
}

func name(to *string, of []string) slot { return nameSlot{to: to, of: of} }

func nameInto(to *[]string, of []string) slot { return nameSlot{list: to, of: of} }

func (s nameSlot) form() form { return form{Type: asText, Names: s.of[0]} }

func (s nameSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.String {
		d.wrong(f.Value, f.Key+" is an id in quotes")
		return
	}
	d.refer(f.Value, s.of)
	if s.list != nil {
		*s.list = append(*s.list, f.Value.Str)
	} else {
		*s.to = f.Value.Str
	}
}

// namesSlot is a list of ids; a single one may stand without brackets.
type namesSlot struct {
	to *[]string
	of []string
}

func names(to *[]string, of []string) slot { return namesSlot{to, of} }

func (s namesSlot) form() form { return form{Type: asWords, Names: s.of[0]} }

func (s namesSlot) read(d *decoder, f *tomltext.Field) {
	for _, n := range d.listOf(f, "ids") {
		d.refer(n, s.of)
		*s.to = append(*s.to, n.Str)
	}
}

// idSlot is the item's own id; its form was looked at when it was gathered.
type idSlot struct{ to *string }

func ownID(to *string) slot { return idSlot{to} }

func (s idSlot) form() form { return form{Type: asText} }

func (s idSlot) read(d *decoder, _ *tomltext.Field) { *s.to = d.item.id }

// needsSlot is a list of ids of operations and routes, or of tables with a condition.
type needsSlot struct{ to *[]advisor.Need }

func needs(to *[]advisor.Need) slot { return needsSlot{to} }

func (s needsSlot) form() form {
	return form{Type: asMixed, Names: "operation", Of: needTable.name, Keys: needTable.keys}
}

var needTable = table[advisor.Need]{
	name: "need", doc: "another operation that this one requires",
	fields: append([]field[advisor.Need]{
		must("op", "the operation or route", func(n *advisor.Need) slot { return name(&n.Op, aWayIn) }),
	}, conditionKeys("when", "when it is needed; left out: always", false, whenRoles, func(n *advisor.Need) *advisor.Condition { return &n.When })...),
}

func (s needsSlot) read(d *decoder, f *tomltext.Field) {
	nodes := []*tomltext.Node{f.Value}
	if f.Value.Kind == tomltext.Array {
		nodes = f.Value.Items
	}
	out := make([]advisor.Need, len(nodes))
	for i, n := range nodes {
		out[i].At = n.Span
		if n.Kind == tomltext.Table {
			d.within(func() { needTable.decode(d, n, &out[i]) })
			continue
		}
		name(&out[i].Op, aWayIn).read(d, &tomltext.Field{Key: f.Key, KeySpan: f.KeySpan, Value: n})
	}
	*s.to = out
}

// within reads a table inside the item's own.
func (d *decoder) within(read func()) {
	d.depth++
	read()
	d.depth--
}
