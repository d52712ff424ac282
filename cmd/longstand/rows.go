package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"longstand/advisor/casefile"
	"longstand/advisor/interview"
)

// row is one thing said to record, and where it stands when it is from a file.
type row struct{ said, at string }

// isFinding tells whether a thing said ends the intake: the finding of an
// inspection, or work done.
func (r row) isFinding(iv *interview.Interview) bool {
	if strings.HasPrefix(r.said, "done:") {
		return true
	}
	id, _, _ := strings.Cut(r.said, "=")
	q := iv.Question(strings.TrimSpace(id))
	return q != nil && q.Station == "inspection"
}

// between is the mark between a file's cells: the first of comma, semicolon and
// tab in it. Where the decimal mark is a comma, spreadsheets write semicolons.
func between(data []byte) rune {
	for line := range bytes.Lines(data) {
		if i := bytes.IndexAny(line, ",;\t"); i >= 0 && line[0] != '#' {
			return rune(line[i])
		}
	}
	return ','
}

// rows reads the file of answers: in each row the question, then its value;
// readings take the cells that follow. A head row that begins with "question"
// is passed over.
func (e *entry) rows(disk casefile.Disk) ([]row, error) {
	if e.from == "" {
		return nil, nil
	}
	data, _, err := casefile.Load(disk, e.from)
	if err != nil {
		return nil, failure(plain(err))
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")) // spreadsheets put a mark before the first cell
	r := csv.NewReader(bytes.NewReader(data))
	r.FieldsPerRecord, r.TrimLeadingSpace, r.Comment, r.Comma = -1, true, '#', between(data)
	var out []row
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, &exit{exitFault, fmt.Errorf("%s: %w", e.from, err)}
		}
		line, _ := r.FieldPos(0)
		at := fmt.Sprintf("%s:%d", e.from, line)
		if len(out) == 0 && strings.EqualFold(cells[0], "question") {
			continue
		}
		for len(cells) > 0 && strings.TrimSpace(cells[len(cells)-1]) == "" {
			cells = cells[:len(cells)-1]
		}
		if len(cells) < 2 {
			return nil, &exit{exitFault, fmt.Errorf("%s: a row is a question and its value", at)}
		}
		out = append(out, row{cells[0] + "=" + strings.Join(cells[1:], "; "), at})
	}
}
