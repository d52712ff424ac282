package casefile

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// Decided are the lists of decisions that a case keeps.
var Decided = []string{"accepted", "declined", "done"}

// Decide gives a case's bytes with an operation put in a list of decisions.
// An operation newly accepted is no longer declined, and the other way round.
// A decision that is there already changes nothing, but work may be done again
// at another time.
func Decide(data []byte, list string, d advisor.Decision) ([]byte, error) {
	if !slices.Contains(Decided, list) {
		return nil, fmt.Errorf("%q is no decision: accepted, declined or done", list)
	}
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	if other := map[string]string{"accepted": "declined", "declined": "accepted"}[list]; other != "" {
		if err := t.withdraw(other, d.Operation); err != nil {
			return nil, err
		}
		if t, err = open(t.data); err != nil {
			return nil, err
		}
	}
	before := t.root.Get("decisions").Get(list)
	if i, there := find(before, d.Operation); there && (list != "done" || d.Date == "" || said(before.Items[i], "on") == d.Date) {
		return t.data, nil
	}
	switch {
	case before == nil:
		return Set(t.data, "decisions", list, "["+decision(d)+"]")
	case headed(before):
		last := before.Items[len(before.Items)-1]
		t.after(last.Tail, t.line+"[[decisions."+list+"]]"+t.line+strings.Join(fields(long(d)), t.line))
	default:
		t.inside(before, decision(d))
	}
	return t.done("decisions", list)
}

// decision writes a decision: the operation's id when that is all.
func decision(d advisor.Decision) string {
	if d.By == "" && d.Note == "" && d.Date == "" {
		return encode(d.Operation)
	}
	return long(d)
}

func long(d advisor.Decision) string {
	parts := []string{"operation = " + encode(d.Operation)}
	if d.By != "" {
		parts = append(parts, "by = "+encode(d.By))
	}
	if d.Date != "" {
		parts = append(parts, "on = "+encode(d.Date))
	}
	if d.Note != "" {
		parts = append(parts, "note = "+encode(d.Note))
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

// said is the text of one key of a decision, "" when it does not say.
func said(item *tomltext.Node, key string) string {
	if v := item.Get(key); v != nil {
		return v.Str
	}
	return ""
}

// find looks for the last time that an operation is in a list of decisions.
func find(list *tomltext.Node, operation string) (int, bool) {
	if list == nil {
		return 0, false
	}
	for i, item := range slices.Backward(list.Items) {
		if item.Str == operation || item.Get("operation") != nil && item.Get("operation").Str == operation {
			return i, true
		}
	}
	return 0, false
}

// withdraw takes an operation out of a list of decisions.
func (t *draft) withdraw(list, operation string) error {
	before := t.root.Get("decisions").Get(list)
	i, there := find(before, operation)
	if !there {
		return nil
	}
	if headed(before) {
		return fmt.Errorf("%s is %s already, under a header of its own: take it out there by hand", operation, list)
	}
	items := before.Items
	switch {
	case i+1 < len(items):
		t.splice(items[i].Span.Start, items[i+1].Span.Start, "")
	case i > 0:
		t.splice(items[i-1].Span.End, items[i].Span.End, "")
	default:
		t.splice(items[i].Span.Start, items[i].Span.End, "")
	}
	return nil
}

// Overrule gives a case's bytes with a call set by hand.
func Overrule(data []byte, o advisor.Overruling) ([]byte, error) {
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	before := t.root.Get("overruled")
	if i, there := find(before, o.Operation); there {
		n := before.Items[i]
		if said(n, "call") == o.Call && said(n, "by") == o.By && said(n, "why") == o.Why {
			return data, nil // the same command, tried again
		}
		return nil, fmt.Errorf("%s is overruled already: change it in the case by hand", o.Operation)
	}
	lines := []string{"[[overruled]]", "operation = " + encode(o.Operation), "call = " + encode(o.Call),
		"by = " + encode(o.By), "why = " + encode(o.Why)}
	if o.Date != "" {
		lines = append(lines, "on = "+encode(o.Date))
	}
	t.tail(strings.Join(lines, t.line))
	return t.done("", "overruled")
}
