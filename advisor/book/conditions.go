package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// roles are the keys under which a condition's specimens stand beside it, in
// order: it is true, it is false, the first changed so that it is false, the
// first changed and still true. An empty key does not exist.
type roles [4]string

const (
	fires = iota
	firesNot
	butNot
	butFires
)

var (
	whenRoles   = roles{"fires", "fires_not", "but_not", "but_fires"}
	untilRoles  = roles{"lifts", "lifts_not", "but_not_lifted", "but_lifts"}
	fittedRoles = roles{"fitted_yes", "fitted_no", "", ""}
	shownRoles  = roles{"shown_yes", "shown_no", "", ""}
)

var roleDocs = roles{
	"answers on which it is true", "answers on which it is false",
	"changes to the first of those, each of which makes it false", "changes to the first of those that leave it true",
}

// conditionKeys declares a condition's key and those of its specimens.
func conditionKeys[T any](key, doc string, need bool, r roles, at func(*T) *advisor.Condition) []field[T] {
	fields := []field[T]{{key, need, doc, func(v *T) slot { return conditionSlot{at(v), r} }}}
	for i, k := range r {
		if k != "" {
			fields = append(fields, may(k, key+": "+roleDocs[i], func(v *T) slot { return specimenSlot{at(v), i} }))
		}
	}
	return fields
}

// conditionSlot is a condition in the sub-language.
type conditionSlot struct {
	to    *advisor.Condition
	roles roles
}

func (s conditionSlot) form() form { return form{Type: asCondition} }

func (s conditionSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.String {
		d.wrong(f.Value, f.Key+" is a condition in quotes")
		return
	}
	if f.Value.Str == "" {
		d.list.Errorf(f.Value.Span, "blank", "%s is blank", f.Key).Help = "leave the condition out when it is always so"
		return
	}
	s.to.Text, s.to.At = f.Value.Str, f.Value.Span
	p := d.waiting(s.to)
	p.node, p.roles = f.Value, s.roles
}

// specimenSlot is a list of answers; they are read once all questions are known.
type specimenSlot struct {
	to   *advisor.Condition
	role int
}

func (s specimenSlot) form() form { return form{Type: asSpecimens} }

func (s specimenSlot) read(d *decoder, f *tomltext.Field) {
	nodes := []*tomltext.Node{f.Value}
	if f.Value.Kind == tomltext.Array {
		nodes = f.Value.Items
	}
	p := d.waiting(s.to)
	p.keys[s.role] = f.KeySpan
	for _, n := range nodes {
		if n.Kind != tomltext.Table {
			d.wrong(n, f.Key+" is a list of tables, question = answer")
			continue
		}
		p.specs[s.role] = append(p.specs[s.role], n)
	}
}
