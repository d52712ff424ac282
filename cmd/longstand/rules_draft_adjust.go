package main

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"longstand/advisor/book"
	"longstand/advisor/tomltext"
)

// kindLine and changeLine are the two lines of an adjust that hang on its kind.
var (
	kindLine   = regexp.MustCompile(`(?m)^\[\[(.*)\]\]`)
	changeLine = regexp.MustCompile(`(?m)^(.*?) *# the change: .*$`)
)

// ofKind makes an adjust one of an item of another kind; what the draft changes
// is no key of it.
func (t *draftText) ofKind(kind string) error {
	if kind == t.table() {
		return nil
	}
	if all := itemKinds(); !slices.Contains(all, kind) {
		return fmt.Errorf("there is no kind %q; %s", kind, nearestHint(kind, all))
	}
	at := kindLine.FindStringSubmatchIndex(t.text)
	t.text = t.text[:at[2]] + kind + t.text[at[3]:]
	at = changeLine.FindStringSubmatchIndex(t.text)
	t.text = t.text[:at[2]] + "# key = value" + t.text[at[3]:]
	return nil
}

// itemKinds are the kinds of item that a layer can adjust and withdraw.
func itemKinds() (names []string) {
	for _, table := range book.Tables() {
		if table.Many && table.Name != "withdraw" {
			names = append(names, table.Name)
		}
	}
	return names
}

// changed puts the key that an adjust changes, and its value: in TOML, or as a
// person says it.
func (t *draftText) changed(said string) error {
	key, value, ok := strings.Cut(said, "=")
	if !ok {
		return fmt.Errorf("%q changes nothing: a key and its value are wanted, as if_left = 250", said)
	}
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	if _, faults := tomltext.Parse("change", []byte("x = "+value)); len(faults) > 0 {
		value = t.toml(key, value)
	}
	at := changeLine.FindStringSubmatchIndex(t.text)
	t.text = t.text[:at[2]] + key + " = " + value + t.text[at[3]:]
	return nil
}
