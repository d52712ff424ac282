package casefile

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// Answer gives a case's bytes with one answer put in, in place of what is there.
func Answer(data []byte, q *advisor.Question, e Entry) ([]byte, error) {
	value, err := e.TOML(q)
	if err != nil {
		return nil, err
	}
	return Set(data, "answers", q.ID, value)
}

// Another gives a case's bytes with an answer put in beside those that are
// there: several answers to one question are all kept. One that is there already,
// word for word, changes nothing, so that a command can be tried again.
func Another(data []byte, q *advisor.Question, e Entry) ([]byte, error) {
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	before := t.root.Get("answers").Get(q.ID)
	if before == nil {
		return Answer(data, q, e)
	}
	long, err := e.Long(q)
	if err != nil {
		return nil, err
	}
	if short, err := e.TOML(q); err != nil || before.Raw() == short || before.Raw() == long {
		return data, err
	}
	switch {
	case before.Kind == tomltext.Array && slices.ContainsFunc(before.Items, func(n *tomltext.Node) bool { return n.Raw() == long }):
		return data, nil
	case headed(before):
		last := before.Items[len(before.Items)-1]
		block := "[[answers." + q.ID + "]]" + t.line + strings.Join(fields(long), t.line)
		t.after(last.Tail, t.line+block)
	case before.Kind == tomltext.Array && len(before.Items) > 0 && before.Items[0].Kind == tomltext.Table:
		t.inside(before, long)
	default:
		first := before.Raw()
		if before.Kind != tomltext.Table {
			first = "{ is = " + first + " }"
		}
		t.splice(before.Span.Start, before.Span.End, "["+t.line+"  "+first+","+t.line+"  "+long+","+t.line+"]")
	}
	return t.done("answers", q.ID)
}

// fields are the keys of a long form, one line each.
func fields(long string) (lines []string) {
	root, _ := tomltext.Parse("answer", []byte("v = "+long+"\n"))
	for _, f := range root.Get("v").Fields {
		lines = append(lines, f.Key+" = "+f.Value.Raw())
	}
	return lines
}

// Known gives a case's bytes with the answers of a known type put in, each with
// how it is known and a note that says where it comes from, so that a look at
// the car can say otherwise. What the case answers already stays as it is;
// those questions are listed. It errs when the bytes are not TOML.
func Known(data []byte, t *advisor.Type) (out []byte, kept []string, err error) {
	for i := range t.Answers {
		a := &t.Answers[i]
		d, err := open(data)
		if err != nil {
			return nil, nil, err
		}
		if d.root.Get("answers").Get(a.Question) != nil {
			kept = append(kept, a.Question)
			continue
		}
		value := "{ is = " + a.Written + ", how = " + encode(a.How.String()) + ", note = " + encode(t.Note()) + " }"
		if data, err = Set(data, "answers", a.Question, value); err != nil {
			return nil, nil, err
		}
	}
	return data, kept, nil
}

// Freeze gives a case's bytes with the forecast written: the chance of each
// suspect, with the book that it came from. One that is there already stays:
// a forecast is never reckoned again.
func Freeze(data []byte, forecast map[string]float64, b *advisor.Book) ([]byte, error) {
	t, err := open(data)
	if err != nil || t.root.Get("forecast") != nil {
		return data, err
	}
	block := "[forecast]"
	for _, id := range slices.Sorted(maps.Keys(forecast)) {
		block += fmt.Sprintf("%s%s = %.4f", t.line, id, forecast[id])
	}
	t.tail(block)
	if data, err = t.done("", "forecast"); err != nil {
		return nil, err
	}
	layers := b.Layers
	if layers == nil {
		layers = []string{}
	}
	if data, err = Set(data, "book", "fingerprint", encode(b.Fingerprint)); err != nil {
		return nil, err
	}
	return Set(data, "book", "layers", encode(layers))
}
