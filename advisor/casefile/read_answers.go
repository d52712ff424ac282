package casefile

import (
	"path"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// longKeys are the keys of an answer's long form, with what they mean.
var longKeys = []struct{ key, doc string }{
	{"is", "the value, in any short form"},
	{"from", "the least that a number may be"},
	{"to", "the most that a number may be"},
	{"not", "options that it is not"},
	{"any_of", "options of which it is one"},
	{"how", "how it is known: seen, measured, paper, owner or secondhand"},
	{"note", "a remark"},
	{"on", "the date, as 2025-10-14"},
	{"by", "who says so"},
	{"photo", "the file of a photograph that shows it, or a list"},
}

var longNames = func() (names []string) {
	for _, k := range longKeys {
		names = append(names, k.key)
	}
	return names
}()

// ReadAnswers reads what stands behind a question's id, in a case or in a
// specimen: a short form, a long form, or a list of long forms. Dates coded in
// answers are taken to lie before the decimal year by. Every fault is placed;
// an answer with a fault is left out.
func ReadAnswers(q *advisor.Question, n *tomltext.Node, by float64) ([]advisor.Answer, diag.List) {
	r := reader{q: q, by: by}
	var answers []advisor.Answer
	if n.Kind == tomltext.Array && len(n.Items) > 0 && n.Items[0].Kind == tomltext.Table {
		for _, item := range n.Items {
			answers = r.append(answers, item)
		}
	} else {
		answers = r.append(answers, n)
	}
	return answers, r.list
}

// reader reads the answers of one question.
type reader struct {
	q    *advisor.Question
	by   float64
	list diag.List
}

func (r *reader) append(answers []advisor.Answer, n *tomltext.Node) []advisor.Answer {
	before := len(r.list)
	a := advisor.Answer{Question: r.q.ID, How: r.q.How, At: n.Span}
	if n.Kind == tomltext.Table {
		r.long(&a, n)
	} else {
		a.Value, a.Written = r.short(n), written(n)
	}
	if r.list[before:].HasErrors() {
		return answers
	}
	return append(answers, a)
}

// long reads a table: the value in one of four ways, and what goes with it.
func (r *reader) long(a *advisor.Answer, n *tomltext.Node) {
	for i := range n.Fields {
		f := &n.Fields[i]
		switch f.Key {
		case "how":
			a.How = r.channel(f.Value)
		case "note":
			a.Note = r.text(f)
		case "by":
			a.By = r.text(f)
		case "on":
			a.On = dateOrTime(f.Value, &r.list)
		case "photo":
			a.Photos = photos(f, &r.list)
		case "is", "from", "to", "not", "any_of":
		default:
			d := r.list.Errorf(f.KeySpan, "unknown-key", "an answer has no key %q", f.Key)
			d.Help = diag.DidYouMean(f.Key, longNames)
		}
	}
	is, not, anyOf, bounds := n.Field("is"), n.Field("not"), n.Field("any_of"), n.Get("from") != nil || n.Get("to") != nil
	if ways := count(is != nil, not != nil, anyOf != nil, bounds); ways != 1 {
		d := r.list.Errorf(n.Span, "one-value", "an answer says its value once, this one %d times", ways)
		d.Help = "give one of is, not, any_of, or from with to"
		return
	}
	switch {
	case is != nil:
		a.Value, a.Written = r.short(is.Value), written(is.Value)
	case not != nil:
		a.Value, a.Written = r.options(not.Value, true), "not "+strings.Join(words(not.Value), " or ")
	case anyOf != nil:
		a.Value, a.Written = r.options(anyOf.Value, false), strings.Join(words(anyOf.Value), " or ")
	default:
		a.Value, a.Written = r.bounds(n)
	}
}

func count(given ...bool) (n int) {
	for _, g := range given {
		if g {
			n++
		}
	}
	return n
}

func (r *reader) channel(n *tomltext.Node) advisor.Channel {
	for i, name := range advisor.Channels {
		if n.Kind == tomltext.String && n.Str == name {
			return advisor.Channel(i)
		}
	}
	d := r.list.Errorf(n.Span, "unknown-word", "%s is no way of knowing", shown(n))
	d.Help = diag.DidYouMean(n.Str, advisor.Channels)
	return advisor.Nohow
}

// photos reads the names of photographs, one or a list. They lie in the case's
// own folder or below it.
func photos(f *tomltext.Field, list *diag.List) (out []advisor.Photo) {
	items := []*tomltext.Node{f.Value}
	if f.Value.Kind == tomltext.Array {
		items = f.Value.Items
	}
	for _, n := range items {
		switch name := n.Str; {
		case n.Kind != tomltext.String || name == "":
			list.Errorf(n.Span, "wrong-kind", "a photograph is the name of a file in quotes, and this is %s", n.Kind)
		case path.IsAbs(name) || strings.ContainsAny(name, "\\:\x00") || slices.Contains(strings.Split(name, "/"), ".."):
			list.Errorf(n.Span, "photo", "the photograph %q lies outside the folder of the case", name).Help = "keep it beside the case, and name it from there"
		default:
			out = append(out, advisor.Photo{File: name, At: n.Span})
		}
	}
	return out
}
