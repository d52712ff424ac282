package casefile

import (
	"slices"
	"time"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

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
	list.Errorf(n.Span, "wrong-kind", "%s is no date", shown(n)).Help = "a date is written " + like
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
