package casefile

import (
	"slices"
	"strings"
	"time"

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

func (r *reader) text(f *tomltext.Field) string { return text(f, &r.list) }

// text reads a text.
func text(f *tomltext.Field, list *diag.List) string {
	if f.Value.Kind != tomltext.String {
		list.Errorf(f.Value.Span, "wrong-kind", "%s is a text, and this is %s", f.Key, f.Value.Kind)
	}
	return f.Value.Str
}

// date reads a day: a TOML date, or the same in quotes.
func date(n *tomltext.Node, list *diag.List) string {
	return moment(n, list, "2025-10-14", time.DateOnly)
}

// dateOrTime reads a day, or a day and the time of day, as the order of what
// was done in one day needs it.
func dateOrTime(n *tomltext.Node, list *diag.List) string {
	return moment(n, list, "2025-10-14 or 2025-10-14T15:30:00", moments...)
}

// moments are the ways to say when something was done.
var moments = []string{time.DateOnly, "2006-01-02T15:04:05"}

func moment(n *tomltext.Node, list *diag.List, like string, layouts ...string) string {
	if (n.Kind == tomltext.Date || n.Kind == tomltext.String) && isMoment(n.Str, layouts...) {
		return n.Str
	}
	if n.Kind == tomltext.Date && len(n.Str) == len(time.DateOnly) && n.Str[4] == '-' {
		return "" // a day that no month has: told when the file was read
	}
	list.Errorf(n.Span, "wrong-kind", "%s is no date", shown(n)).Help = "a date is written " + like + ", without quotes"
	return ""
}

func isMoment(s string, layouts ...string) bool {
	return slices.ContainsFunc(layouts, func(layout string) bool {
		_, err := time.Parse(layout, s)
		return err == nil
	})
}

// written is a value as the person wrote it, without the quotes of a text.
func written(n *tomltext.Node) string {
	if n.Kind == tomltext.String {
		return n.Str
	}
	return n.Raw()
}

// shown is a value as a message repeats it, cut short.
func shown(n *tomltext.Node) string {
	s := n.Raw()
	if runes := []rune(s); len(runes) > 40 {
		return string(runes[:40]) + "..."
	}
	return s
}

// words are the texts of a list, or of a single text.
func words(n *tomltext.Node) []string {
	if n.Kind == tomltext.String {
		return []string{n.Str}
	}
	var out []string
	for _, item := range n.Items {
		out = append(out, item.Str)
	}
	return out
}
