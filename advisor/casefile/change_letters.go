package casefile

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Remember gives a case's bytes with what a letter said added at their end.
func Remember(data []byte, e *advisor.Letter) ([]byte, error) {
	t, err := open(data)
	if err != nil {
		return nil, err
	}
	if l := t.root.Get("letter"); l != nil && !headed(l) {
		return nil, fmt.Errorf("%s: letter does not stand under [[letter]] headers: note it there by hand", l.Span)
	}
	lines := []string{"[[letter]]", fmt.Sprintf("number = %d", e.Number), "date = " + e.Date,
		fmt.Sprintf("agree = %d", e.Agree), fmt.Sprintf("likely = %d", e.Likely)}
	for _, l := range []struct {
		key string
		ids []string
	}{{"do", e.Do}, {"look_first", e.LookFirst}, {"stops", e.Stops}, {"found", e.Found}} {
		lines = append(lines, l.key+" = ["+t.line+t.folded(l.ids)+"]")
	}
	t.tail(strings.Join(lines, t.line))
	return t.done("", "letter")
}

// folded writes ids in quotes, some to a line.
func (t *draft) folded(ids []string) string {
	out, line := "", "  "
	for _, id := range ids {
		if line += encode(id) + ", "; len(line) > 90 {
			out, line = out+strings.TrimRight(line, " ")+t.line, "  "
		}
	}
	if line != "  " {
		out += strings.TrimRight(line, " ") + t.line
	}
	return out
}
