package diag

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
)

// place is a Span as JSON: line and column from 1, 0 for a whole file.
type place struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"end_line"`
	EndColumn int    `json:"end_column"`
	Message   string `json:"message,omitempty"` // of a related place
}

func placeOf(s Span, message string) place {
	return place{s.File, s.Line, s.Col, s.EndLine, s.EndCol, message}
}

// record is a Diagnostic as JSON.
type record struct {
	Severity string `json:"severity"`
	Code     string `json:"code"`
	Message  string `json:"message"`
	Help     string `json:"help,omitempty"`
	place
	Related []place `json:"related,omitempty"`
}

// WriteJSON prints one object: the format's version and the diagnostics, never null.
func (l List) WriteJSON(w io.Writer) error {
	records := make([]record, len(l))
	for i, d := range l {
		records[i] = record{Severity: d.Severity.String(), Code: d.Code, Message: d.Message, Help: d.Help, place: placeOf(d.At, "")}
		for _, r := range d.Related {
			records[i].Related = append(records[i].Related, placeOf(r.At, r.Message))
		}
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(struct {
		Version     int      `json:"diagnostics_version"`
		Diagnostics []record `json:"diagnostics"`
	}{1, records})
}

// WriteAnnotations prints one workflow command a line, as hosted checks of
// pull requests read them. Only the first ten of a step are shown there, so
// errors come first and the last line gives the full count.
func (l List) WriteAnnotations(w io.Writer) error {
	byWeight := slices.Clone(l)
	slices.SortStableFunc(byWeight, func(a, b Diagnostic) int { return cmp.Compare(a.Severity, b.Severity) })
	for _, d := range byWeight {
		text := d.Message
		if d.Help != "" {
			text += "\n" + d.Help
		}
		where := "file=" + property(d.At.File)
		if d.At.Line > 0 {
			where += fmt.Sprintf(",line=%d,col=%d,endLine=%d,endColumn=%d", d.At.Line, d.At.Col, d.At.EndLine, d.At.EndCol)
		}
		if _, err := fmt.Fprintf(w, "::%s %s,title=%s::%s\n", d.Severity, where, property(d.Code), data(text)); err != nil {
			return err
		}
	}
	if len(l) == 0 {
		return nil
	}
	_, err := fmt.Fprintf(w, "%s in all\n", l.Summary())
	return err
}

// data and property escape text for a workflow command.
func data(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(s)
}

func property(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C").Replace(s)
}
