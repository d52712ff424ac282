package main

import (
	"bytes"
	"encoding/json"
	"fmt"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// lineFault is one fault of a line of cases. Every key is always there.
type lineFault struct {
	Code    string `json:"code"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Field   string `json:"field"` // answers.years_laid_up; "" for the line as a whole
	Message string `json:"message"`
	Help    string `json:"help"`
}

// read reads the case of a line; for a line at fault it gives the line to write
// in its place.
func (l *lines) read(s *slot) (*advisor.Case, []byte) {
	var list diag.List
	at := diag.Span{File: l.name, Line: s.number, Col: 1}
	switch {
	case s.tooLong:
		list.Errorf(at, "file-too-large", "a case has at most %d KB", casefile.MaxBytes>>10)
		return nil, atFault(s.number, nil, list)
	case len(bytes.TrimSpace(s.data)) == 0:
		list.Errorf(at, "missing-key", "the line is empty").Help = "each line is a case"
		return nil, atFault(s.number, nil, list)
	}
	c, root, list := casefile.ReadLine(l.name, s.number, s.data, l.e.Book())
	if list.HasErrors() {
		return nil, atFault(s.number, root, list)
	}
	return c, nil
}

// atFault writes what is wrong with a line as one line.
func atFault(number int, root *tomltext.Node, list diag.List) []byte {
	var faults []lineFault
	for i := range list {
		if d := &list[i]; d.Severity == diag.Error {
			faults = append(faults, lineFault{d.Code, number, d.At.Col, fieldAt(root, &d.At), d.Message, d.Help})
		}
	}
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(struct {
		Line   int         `json:"line"`
		Errors []lineFault `json:"errors"`
	}{number, faults})
	return out.Bytes()
}

// fieldAt names the innermost field that holds a place.
func fieldAt(n *tomltext.Node, at *diag.Span) string {
	if n == nil {
		return ""
	}
	within := func(s *diag.Span) bool { return s.Start <= at.Start && at.End <= s.End && at.Start < s.End }
	for i := range n.Fields {
		f := &n.Fields[i]
		if within(&f.KeySpan) {
			return f.Key
		}
		if within(&f.Value.Span) {
			return joined(f.Key, ".", fieldAt(f.Value, at))
		}
	}
	for i, item := range n.Items {
		if within(&item.Span) {
			return joined(fmt.Sprintf("[%d]", i), ".", fieldAt(item, at))
		}
	}
	return ""
}

// joined puts a mark between two names, unless the second begins with one.
func joined(a, mark, b string) string {
	if b == "" || b[0] == '[' {
		return a + b
	}
	return a + mark + b
}
