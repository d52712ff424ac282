package casefile

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// idKey is the key by which a case in a line says its id, which a case in a
// file of its own has from the file's name.
const idKey = "id"

// ReadLine reads a case that is one line of a file, a JSON object with the keys
// of a case and "id"; without an id it is called by its place. It also gives
// the line as parsed, for the names of fields. As with Read, the case is never
// nil, and with errors in the list it must not be advised on.
func ReadLine(file string, line int, data []byte, book *advisor.Book) (*advisor.Case, *tomltext.Node, diag.List) {
	root, list := tomltext.ParseJSON(file, line, data)
	name := filepath.Base(file)
	id := fmt.Sprintf("%s-%d", strings.TrimSuffix(name, filepath.Ext(name)), line)
	if list.HasErrors() {
		return &advisor.Case{File: file, ID: id, Version: Version}, root, list
	}
	if f := root.Field(idKey); f != nil {
		if id = text(f, &list); id == "" && !list.HasErrors() {
			list.Errorf(f.Value.Span, "wrong-kind", "an id is a text that says something")
		}
	}
	bare := root.With(slices.DeleteFunc(slices.Clone(root.Fields), func(f tomltext.Field) bool { return f.Key == idKey }))
	c, list := readRoot(file, id, bare, list, book)
	return c, root, list
}
