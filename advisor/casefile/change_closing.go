package casefile

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// Look gives a case's bytes with what was found of a suspect put in, in place
// of what is there.
func Look(data []byte, l advisor.Looked) ([]byte, error) {
	if !slices.Contains(advisor.Findings, l.Found) {
		return nil, fmt.Errorf("%q is no finding: %s", l.Found, strings.Join(advisor.Findings, ", "))
	}
	value := encode(l.Found)
	if l.By != "" || l.Note != "" {
		value = inTable("is = "+value, l.By, l.Note)
	}
	return newer(data, "looked", l.Suspect, value)
}

// Take gives a case's bytes with the hours that an operation took put in, in
// place of what is there.
func Take(data []byte, t advisor.Taken) ([]byte, error) {
	value := encode(CantTell)
	if t.Known {
		value = encode(t.Hours)
	}
	if t.Estimate != nil || t.By != "" || t.Note != "" {
		first := "took = " + value
		if e := t.Estimate; e != nil {
			first += ", estimate = " + encode([]float64{e.Low, e.Usual, e.High})
		}
		value = inTable(first, t.By, t.Note)
	}
	return newer(data, "hours", t.Operation, value)
}

// Close gives a case's bytes with the end of the job noted.
func Close(data []byte, c advisor.Closed) ([]byte, error) {
	if !isMoment(c.Date, moments[0]) {
		return nil, fmt.Errorf("%q is no day: write it as 2025-10-14", c.Date)
	}
	data, err := newer(data, "closed", "on", c.Date)
	if err != nil || c.By == "" {
		return data, err
	}
	return newer(data, "closed", "by", encode(c.By))
}

// inTable writes a value with who says so and a remark.
func inTable(first, by, note string) string {
	if by != "" {
		first += ", by = " + encode(by)
	}
	if note != "" {
		first += ", note = " + encode(note)
	}
	return "{ " + first + " }"
}

// newer is Set for a table that the first format did not have. It raises the
// case's format to the one that has the table, and no further: older programs
// go on reading every case that they understand.
func newer(data []byte, table, key, value string) ([]byte, error) {
	data, err := Set(data, table, key, value)
	if err != nil {
		return nil, err
	}
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	if v := t.root.Get("case"); v != nil && (v.Kind != tomltext.Integer || v.Int >= int64(since[table])) {
		return data, nil
	}
	return Set(data, "", "case", fmt.Sprint(since[table]))
}
