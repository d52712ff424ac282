package casefile

import (
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// choice reads one option, "a or b", or "not a or b": all but those.
func (r *reader) choice(n *tomltext.Node) advisor.Value {
	if n.Kind != tomltext.String {
		return r.wrong(n, "one of its options")
	}
	list, not := strings.CutPrefix(n.Str, "not ")
	at := len([]rune(n.Str)) - len([]rune(list))
	var set uint64
	for _, word := range strings.Split(list, " or ") {
		id := strings.TrimSpace(word)
		start := at + len([]rune(word)) - len([]rune(strings.TrimLeft(word, " ")))
		set |= r.option(id, func() diag.Span { return n.Inside(start, start+len([]rune(id))) })
		at += len([]rune(word)) + len(" or ")
	}
	return r.set(set, not, n)
}

// options reads a list of options, of which it is one or none. Where several
// may be true, those of any_of stay open and all others are denied.
func (r *reader) options(n *tomltext.Node, not bool) advisor.Value {
	if k := r.q.Kind; k != advisor.Choice && k != advisor.YesNoKind && k != advisor.Choices {
		r.list.Errorf(n.Span, "wrong-kind", "only a question with options is answered by what it is not, and %s is a %s", r.q.ID, k)
		return advisor.Value{}
	}
	set, ok := r.listed(n)
	if !ok {
		return advisor.Value{}
	}
	if r.q.Kind == advisor.Choices {
		if !not {
			set = r.q.AllOptions() &^ set
		}
		return advisor.Value{State: advisor.Told, No: set}
	}
	return r.set(set, not, n)
}

// choices reads the list of all that was found; what is not in it was not found.
// A text alone is read as one of a choice is: a question may once have taken one.
func (r *reader) choices(n *tomltext.Node) advisor.Value {
	if n.Kind == tomltext.String && (strings.HasPrefix(n.Str, "not ") || strings.Contains(n.Str, " or ")) {
		return r.several(n)
	}
	yes, ok := r.listed(n)
	if !ok {
		return advisor.Value{}
	}
	return advisor.Value{State: advisor.Told, Yes: yes, No: r.q.AllOptions() &^ yes}
}

// several reads "a or b" and "not a or b" of a question with several options:
// it denies some of them, and leaves the others open.
func (r *reader) several(n *tomltext.Node) advisor.Value {
	one := r.choice(n)
	return advisor.Value{State: one.State, No: r.q.AllOptions() &^ one.Options}
}

// listed reads a list of options, or a single one.
func (r *reader) listed(n *tomltext.Node) (uint64, bool) {
	items := []*tomltext.Node{n}
	if n.Kind == tomltext.Array {
		items = n.Items
	}
	var set uint64
	before := len(r.list)
	for _, item := range items {
		if item.Kind != tomltext.String {
			r.wrong(item, "a list of its options")
			continue
		}
		set |= r.option(item.Str, func() diag.Span { return item.Span })
	}
	return set, len(r.list) == before
}

// set is a set of options, or all but those, of which one must be left.
func (r *reader) set(set uint64, not bool, n *tomltext.Node) advisor.Value {
	if not {
		set = r.q.AllOptions() &^ set
	}
	if set == 0 && !r.list.HasErrors() {
		r.list.Errorf(n.Span, "nothing-left", "this leaves no option of %s", r.q.ID)
	}
	return advisor.OneOf(set)
}

// option gives the bit of one option, 0 after a fault.
func (r *reader) option(id string, at func() diag.Span) uint64 {
	if bit, ok := r.q.OptionBit(id); ok {
		return 1 << bit
	}
	var ids []string
	for _, o := range r.q.Options {
		ids = append(ids, o.ID)
	}
	if r.q.Kind == advisor.YesNoKind {
		ids = []string{"no", "yes"}
	}
	d := r.list.Errorf(at(), "unknown-option", "%s has no option %q", r.q.ID, id)
	d.Help = diag.DidYouMean(id, ids)
	return 0
}
