package casefile

import (
	"longstand/advisor"
	"longstand/advisor/reckon"
	"longstand/advisor/tomltext"
)

// The two words that any question takes instead of a value: it cannot be seen
// until something is off, or was looked at and cannot be said.
const (
	Hidden   = "hidden"
	CantTell = "can't tell"
)

// short reads a value in its short form, by the question's kind.
func (r *reader) short(n *tomltext.Node) advisor.Value {
	if n.Kind == tomltext.String {
		switch n.Str {
		case Hidden:
			return advisor.Value{State: advisor.Hidden}
		case CantTell, "cannot tell":
			return advisor.Value{State: advisor.CantTell}
		}
	}
	switch r.q.Kind {
	case advisor.YesNoKind:
		return r.yesno(n)
	case advisor.Choice:
		return r.choice(n)
	case advisor.Choices:
		return r.choices(n)
	case advisor.NumberKind, advisor.Year:
		return r.number(n)
	case advisor.ReadingsKind:
		return r.readings(n)
	case advisor.Code:
		return r.code(n)
	}
	if n.Kind != tomltext.String {
		return r.wrong(n, "a text in quotes")
	}
	return advisor.Value{State: advisor.Told, Text: n.Str}
}

// wrong reports a value of the wrong kind.
func (r *reader) wrong(n *tomltext.Node, want string) advisor.Value {
	d := r.list.Errorf(n.Span, "wrong-kind", "%s takes %s, and this is %s: %s", r.q.ID, want, n.Kind, shown(n))
	if n.Kind == tomltext.String {
		d.Message = r.q.ID + " takes " + want + ", and this is the text " + shown(n)
	}
	d.Help = `"` + Hidden + `" and "` + CantTell + `" are answers too`
	return advisor.Value{}
}

func (r *reader) yesno(n *tomltext.Node) advisor.Value {
	switch {
	case n.Kind == tomltext.Bool:
		return advisor.YesNo(n.Bool)
	case n.Kind == tomltext.String && (n.Str == "yes" || n.Str == "no"):
		return advisor.YesNo(n.Str == "yes")
	}
	return r.wrong(n, "true or false")
}

// code decodes a code that is stamped on a part. It stands in quotes, since a
// leading zero counts.
func (r *reader) code(n *tomltext.Node) advisor.Value {
	if n.Kind != tomltext.String {
		v := r.wrong(n, "a code in quotes")
		r.list[len(r.list)-1].Help = `put quotes round it: "` + shown(n) + `"`
		return v
	}
	from, to, err := decode(r.q.CodeOf, n.Str, r.by)
	if err != nil {
		r.list.Errorf(n.Span, "bad-code", "%s", err).Help = "four digits are week and year (2309: week 23 of 2009), three are week and year before 2000"
		return advisor.Value{}
	}
	return advisor.Value{State: advisor.Told, Low: from, High: to, Text: n.Str}
}

// Decoders are the kinds of code that a question can name.
var Decoders = []string{"tyre_date"}

// decode gives the decimal years that a code can mean, made before by.
func decode(_, code string, by float64) (from, to float64, err error) {
	return reckon.TyreMade(code, by)
}
