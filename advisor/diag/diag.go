// Package diag holds places in files and the faults found there. A fault is
// data: it is gathered, sorted by place and rendered once, at the edge.
package diag

import (
	"cmp"
	"fmt"
	"slices"
)

// Span is a stretch of one file's bytes. Line and Col count from 1, Col in
// characters (runes); Start and End are byte offsets, End exclusive. A Span
// with Line 0 names a file as a whole.
type Span struct {
	File            string
	Line, Col       int
	EndLine, EndCol int
	Start, End      int
}

// String gives file:line:column, or the file alone for a whole file.
func (s Span) String() string {
	if s.Line == 0 {
		return s.File
	}
	return fmt.Sprintf("%s:%d:%d", s.File, s.Line, s.Col)
}

// Severity tells a fault that stops the work from one that does not.
type Severity int

// An error makes the text unusable; a warning may be silenced with a reason.
const (
	Error Severity = iota
	Warning
)

// String gives the word printed in a diagnostic line.
func (s Severity) String() string {
	if s == Warning {
		return "warning"
	}
	return "error"
}

// Related is a second place that a diagnostic speaks of.
type Related struct {
	At      Span
	Message string
}

// Diagnostic is one fault: what was found, where, and what to do.
type Diagnostic struct {
	Severity Severity
	Code     string // stable, for instance "unknown-key"; explained by `rules codes`
	Message  string // one line, lower case, no full stop
	Help     string // what is allowed, what is nearest; may be empty
	At       Span
	Related  []Related
}

// List gathers diagnostics. It is not an error value: an empty list is no fault.
type List []Diagnostic

// Errorf adds an error at a place.
func (l *List) Errorf(at Span, code, format string, args ...any) *Diagnostic {
	*l = append(*l, Diagnostic{Severity: Error, Code: code, Message: fmt.Sprintf(format, args...), At: at})
	return &(*l)[len(*l)-1]
}

// Warnf adds a warning at a place.
func (l *List) Warnf(at Span, code, format string, args ...any) *Diagnostic {
	d := l.Errorf(at, code, format, args...)
	d.Severity = Warning
	return d
}

// HasErrors tells whether any diagnostic is an error.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(d Diagnostic) bool { return d.Severity == Error })
}

// Sort orders the list by file, place, severity, code and text, and drops exact repeats.
func (l *List) Sort() {
	slices.SortStableFunc(*l, func(a, b Diagnostic) int {
		return cmp.Or(cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Start, b.At.Start),
			cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.Code, b.Code), cmp.Compare(a.Message, b.Message))
	})
	*l = slices.CompactFunc(*l, func(a, b Diagnostic) bool {
		return a.At == b.At && a.Code == b.Code && a.Message == b.Message
	})
}
