package casefile

import (
	"bytes"
	"fmt"
	"strings"

	"longstand/advisor/tomltext"
)

// Without gives a case's bytes with the answer to one question taken out; with
// none there, as they are. A line that holds nothing else goes with it; a
// remark behind it stays. It errs for an answer with a header of its own, which
// an intake never writes.
func Without(data []byte, question string) ([]byte, error) {
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	in := t.root.Get("answers")
	f := in.Field(question)
	if f == nil {
		return data, nil
	}
	if headed(f.Value) || f.Value.Kind == tomltext.Table && !strings.HasPrefix(f.Value.Raw(), "{") {
		return nil, fmt.Errorf("%s: %s has a header of its own: take it out there by hand", f.KeySpan, question)
	}
	from, to := f.KeySpan.Start, f.Value.Span.End
	if strings.HasPrefix(in.Raw(), "{") {
		from, to = t.comma(from, to)
	} else {
		from, to = t.ownLine(from, to)
	}
	t.splice(from, to, "")
	root, faults := tomltext.Parse("case", t.data)
	if faults.HasErrors() || root.Get("answers").Get(question) != nil {
		return nil, fmt.Errorf("%s cannot be taken out of the case", question)
	}
	return t.data, nil
}

// ownLine widens a key and its value to their line, unless a remark stands on it.
func (t *draft) ownLine(from, to int) (int, int) {
	from = bytes.LastIndexByte(t.data[:from], '\n') + 1
	end := to
	for end < len(t.data) && strings.IndexByte(" \t\r", t.data[end]) >= 0 {
		end++
	}
	switch {
	case end == len(t.data):
		return from, end
	case t.data[end] == '\n':
		return from, end + 1
	}
	return from, to
}

// comma widens a key and its value in brackets by one comma, that behind it or
// else that before it.
func (t *draft) comma(from, to int) (int, int) {
	blank := func(i int) bool { return strings.IndexByte(" \t\r\n", t.data[i]) >= 0 }
	end := to
	for end < len(t.data) && blank(end) {
		end++
	}
	if t.data[end] == ',' {
		for end++; blank(end); {
			end++
		}
		return from, end
	}
	start := from
	for start > 0 && blank(start-1) {
		start--
	}
	if t.data[start-1] == ',' {
		return start - 1, to
	}
	return from, to
}
