package main

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"longstand/advisor/book"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// draftText is the text of a rule under way.
type draftText struct {
	kind, text string
	said       map[string]bool // keys that somebody gave
	drawn      bool            // from a case
	judge      func(text string) diag.List
	tell       func(diag.List)
}

// asked are the few things that each kind needs of whoever writes it; the rest
// of a draft holds as it stands, or is for the editor.
var asked = map[string][]string{
	"adjust":     {"kind", "id", "change", "because", "by"},
	"caution":    {"id", "hazard", "text", "because", "by"},
	"derived":    {"id", "name", "because", "by"},
	"family":     {"id", "name", "because", "by"},
	"hold":       {"id", "name", "stops", "done", "because", "by"},
	"inspection": {"id", "name", "where", "minutes", "because", "by"},
	"once_over":  {"id", "name", "ask", "by"},
	"operation":  {"id", "name", "part", "phase", "hours", "parts", "because", "by"},
	"question":   {"id", "ask", "name", "station", "by"},
	"route":      {"id", "name", "because", "by"},
	"settings":   {"shop", "rate", "currency", "tax", "locale", "units"},
	"sign":       {"id", "suspect", "name", "name_not", "with", "without", "because", "by"},
	"source":     {"id", "kind", "cite"},
	"standing":   {"id", "operations", "says", "because", "by"},
	"suspect":    {"id", "name", "part", "cured_by", "if_left", "because", "by"},
	"type":       {"id", "name", "because", "by"},
	"withdraw":   {"kind", "id", "because", "by"},
	"word":       {"id", "text", "means", "by"},
}

// needed are the keys that no case can tell.
var needed = map[string][]string{"hold": {"name", "done"}, "sign": {"suspect", "name", "name_not"}, "standing": {"operations"},
	"suspect": {"name", "cured_by"}, "operation": {"name"}, "question": {"ask", "name"}, "inspection": {"name"}, "type": {"name"}, "once_over": {"name", "ask"},
	"caution": {"text"}, "derived": {"name"}, "adjust": {"id"}, "withdraw": {"id"}}

// mayBeSaid are keys that a command line can give as well, and that nobody is asked for.
var mayBeSaid = []string{"group", "learned_on", "look_again"}

func firstText(kind string) (*draftText, error) {
	text, err := drafts.ReadFile("drafts/" + kind + ".toml")
	return &draftText{kind: kind, text: string(text), said: map[string]bool{}}, err
}

// missing lists the keys that only a person can give and that nobody gave.
func (t *draftText) missing() (out []string) {
	for _, key := range needed[t.kind] {
		if !t.said[key] {
			out = append(out, key+"=... ("+t.doc(key)+")")
		}
	}
	return out
}

// key finds what the book says of a key of the draft's kind.
func (t *draftText) key(name string) *book.Key {
	for _, table := range book.Tables() {
		for i := range table.Keys {
			if table.Name == t.table() && table.Keys[i].Name == name {
				return &table.Keys[i]
			}
		}
	}
	return nil
}

func (t *draftText) doc(key string) string {
	switch {
	case key == "done":
		return "the work that lifts it, by its id"
	case key == "change":
		return "one key of it and its new value, as if_left = 250"
	case key == "kind" && t.kind == "adjust":
		return "the kind of the item"
	}
	if k := t.key(key); k != nil {
		return strings.TrimPrefix(k.Doc, "house rules: ")
	}
	return "who wrote it" // a question keeps it beside its own keys
}

// table is the name of the table that the draft fills: its kind, but for an
// adjust, which is a table of whatever kind it adjusts.
func (t *draftText) table() string {
	if t.kind == "adjust" {
		return kindLine.FindStringSubmatch(t.text)[1]
	}
	return t.kind
}

// item is the first table of the draft's own kind; settings are the only one.
func (t *draftText) item() *tomltext.Node {
	root, _ := tomltext.Parse("draft", []byte(t.text))
	n := root.Get(t.table())
	if n.Kind == tomltext.Array {
		return n.Items[0]
	}
	return n
}

// now is the value that the draft has for a key, as a person would say it.
func (t *draftText) now(key string) string {
	n := t.item().Get(key)
	if key == "done" {
		n = t.item().Get("until")
	}
	switch {
	case key == "change":
		return strings.TrimPrefix(changeLine.FindStringSubmatch(t.text)[1], "# ")
	case key == "kind" && t.kind == "adjust":
		return t.table()
	case n == nil:
		return "left out"
	case n.Kind == tomltext.String:
		return n.Str
	}
	return n.Raw()
}

// say puts what a person says for a key into the draft.
func (t *draftText) say(key, value string) error {
	value = strings.TrimSpace(value)
	if !slices.Contains(asked[t.kind], key) && !slices.Contains(mayBeSaid, key) {
		return fmt.Errorf("a draft of %s takes %s; what else it can have is for your editor: found %q", t.kind, strings.Join(asked[t.kind], ", "), key)
	}
	t.said[key] = true
	switch key {
	case "id":
		t.rename(value)
		return nil
	case "kind":
		if t.kind == "adjust" {
			return t.ofKind(value)
		}
	case "change":
		return t.changed(value)
	case "done":
		t.put("until", "'done("+value+")'")
		t.put("lifts", "[{ done = ["+quoted(value)+"] }]")
		return nil
	}
	t.put(key, t.toml(key, value))
	return nil
}

// rename gives the draft's item another id, wherever the draft names it.
func (t *draftText) rename(id string) {
	own := regexp.MustCompile(`\b` + regexp.QuoteMeta(t.now("id")) + `((?:_(?:finds|first|rule|second|sign|when|work))*)\b`)
	t.text = own.ReplaceAllString(t.text, strings.ReplaceAll(id, "$", "")+"${1}")
}

// toml writes a value as its key takes it.
func (t *draftText) toml(key, value string) string {
	form := ""
	if k := t.key(key); k != nil {
		form = k.Type
	}
	switch words := strings.FieldsFunc(value, func(r rune) bool { return strings.ContainsRune(", []", r) }); form {
	case "words":
		for i := range words {
			words[i] = quoted(strings.Trim(words[i], `"'`))
		}
		return "[" + strings.Join(words, ", ") + "]"
	case "figures", "range":
		return "[" + strings.Join(words, ", ") + "]"
	case "number", "whole", "losses", "flag", "date":
		return value
	}
	return quoted(value)
}

// put sets a key of the draft's item to a value in TOML: in place of the value
// that is there, or of the comment that shows the key, or behind the first key.
func (t *draftText) put(key, value string) {
	t.putIn(t.item(), key, value)
}

func (t *draftText) putIn(item *tomltext.Node, key, value string) {
	if n := item.Get(key); n != nil {
		t.text = t.text[:n.Span.Start] + value + t.text[n.Span.End:]
		return
	}
	hint := regexp.MustCompile(`(?m)^# ` + key + ` = .*$`)
	if at := hint.FindStringIndex(t.text); at != nil {
		t.text = t.text[:at[0]] + key + " = " + value + t.text[at[1]:]
		return
	}
	at := item.Fields[0].Value.Span.End
	at += strings.IndexByte(t.text[at:], '\n') + 1
	t.text = t.text[:at] + key + " = " + value + "\n" + t.text[at:]
}

// quoted is a text in TOML, whose escapes are those of JSON.
func quoted(s string) string {
	var out strings.Builder
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		panic(err) // a string has no fault
	}
	return strings.TrimSuffix(out.String(), "\n")
}
