package diag

import (
	"encoding/json"
	"io"
)

// fault is a Diagnostic as a program reads it that asked for JSON: every key
// is always there, "" and 0 where there is nothing to say.
type fault struct {
	Code     string  `json:"code"`
	Severity string  `json:"severity"`
	File     string  `json:"file"`
	Line     int     `json:"line"`
	Column   int     `json:"column"`
	Message  string  `json:"message"`
	Help     string  `json:"help"`
	Related  []place `json:"related"`
}

// WriteErrors prints one object, {"errors": [...]}, for a program whose command
// ended without a result. The list is in the order given, never null.
func (l List) WriteErrors(w io.Writer) error {
	faults := make([]fault, len(l))
	for i := range l {
		d := &l[i]
		faults[i] = fault{d.Code, d.Severity.String(), d.At.File, d.At.Line, d.At.Col, d.Message, d.Help, []place{}}
		for _, r := range d.Related {
			faults[i].Related = append(faults[i].Related, placeOf(r.At, r.Message))
		}
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(struct {
		Errors []fault `json:"errors"`
	}{faults})
}
