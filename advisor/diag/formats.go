package diag

import (
	"encoding/json"
	"fmt"
	"io"
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

// WriteJSON prints one object: the format's version, the diagnostics, never
// null, and how many warnings were silenced.
func (l List) WriteJSON(w io.Writer, silenced int) error {
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
		Silenced    int      `json:"silenced"`
	}{1, records, silenced})
}

// maxAnnotations is how many annotations of one step a hosted check shows.
const maxAnnotations = 10

// WriteAnnotations prints one workflow command a line, as hosted checks of
// pull requests read them. Only the first ten of a step are shown there, so
// errors come first; the others follow as plain lines, and the last line gives
// the full count.
func (l List) WriteAnnotations(w io.Writer, silenced int) error {
	apart := l.Apart()
	var out strings.Builder
	for i := range apart {
		if i < maxAnnotations {
			out.WriteString(apart[i].annotation())
		} else {
			out.WriteString(apart[i].Line() + "\n")
		}
	}
	if account := l.Account(silenced); account != "" {
		out.WriteString(account + " in all\n")
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// annotation is a diagnostic as a workflow command.
func (d *Diagnostic) annotation() string {
	text := d.Message
	if d.Help != "" {
		text += "\n" + d.Help
	}
	where := "file=" + property(d.At.File)
	if d.At.Line > 0 {
		where += fmt.Sprintf(",line=%d,col=%d,endLine=%d,endColumn=%d", d.At.Line, d.At.Col, d.At.EndLine, d.At.EndCol)
	}
	return fmt.Sprintf("::%s %s,title=%s::%s\n", d.Severity, where, property(d.Code), data(text))
}

// data and property escape text for a workflow command.
func data(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(s)
}

func property(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C").Replace(s)
}
