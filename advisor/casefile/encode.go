package casefile

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// Entry is one answer on its way into a case: its value as the file writes it,
// and what goes with it. Is holds a value in its short form (a text, a number,
// a truth, a list); From and To bound a number; Not lists options that it is not.
type Entry struct {
	Is       any
	From, To *float64
	Not      []string
	How      advisor.Channel
	Note     string
	By       string
	On       string
	Photos   []string // files beside the case
}

// TOML writes an entry for a question: in the short form when the value is all
// that there is to say, else in the long form. It errs for a date that is none.
func (e Entry) TOML(q *advisor.Question) (string, error) {
	if e.Is != nil && e.How == q.How && e.Note == "" && e.By == "" && e.On == "" && len(e.Photos) == 0 {
		return encode(e.Is), nil
	}
	return e.Long(q)
}

// Long writes an entry in the long form, as several answers to one question need it.
func (e Entry) Long(q *advisor.Question) (string, error) {
	var parts []string
	add := func(key string, v any) { parts = append(parts, key+" = "+encode(v)) }
	switch {
	case e.Is != nil:
		add("is", e.Is)
	case e.Not != nil:
		add("not", e.Not)
	}
	if e.From != nil {
		add("from", *e.From)
	}
	if e.To != nil {
		add("to", *e.To)
	}
	if e.How != advisor.Nohow && (e.How != q.How || e.Is != nil) {
		add("how", e.How.String())
	}
	if e.Note != "" {
		add("note", e.Note)
	}
	if e.On != "" {
		if !isMoment(e.On, moments...) {
			return "", fmt.Errorf("%q is no date: write it as 2025-10-14 or 2025-10-14T15:30:00", e.On)
		}
		parts = append(parts, "on = "+e.On)
	}
	if e.By != "" {
		add("by", e.By)
	}
	if len(e.Photos) > 0 {
		add("photo", e.Photos)
	}
	return "{ " + strings.Join(parts, ", ") + " }", nil
}

// encode writes one value in TOML. A whole number stays one: 11, not 11.0.
func encode(v any) string {
	switch x := v.(type) {
	case float64:
		if x == math.Trunc(x) && math.Abs(x) < 1e15 {
			return strconv.FormatInt(int64(x), 10)
		}
	case []float64:
		var items []string
		for _, y := range x {
			items = append(items, encode(y))
		}
		return "[" + strings.Join(items, ", ") + "]"
	}
	var out bytes.Buffer
	if err := toml.NewEncoder(&out).Encode(map[string]any{"v": v}); err != nil {
		return `""` // only kinds that Entry names come here
	}
	return strings.TrimSpace(strings.TrimPrefix(out.String(), "v = "))
}

// Judge reads an answer's TOML as the case's reader will, so that what a person
// types is refused for the reason, and in the words, of a case file.
func Judge(q *advisor.Question, toml string, by float64) (advisor.Answer, diag.List) {
	root, faults := tomltext.Parse("answer", []byte(q.ID+" = "+toml+"\n"))
	n := root.Get(q.ID)
	if faults.HasErrors() || n == nil {
		return advisor.Answer{}, faults
	}
	answers, faults := ReadAnswers(q, n, by)
	if faults.HasErrors() || len(answers) == 0 {
		return advisor.Answer{}, faults
	}
	return answers[len(answers)-1], faults
}

// New writes a case with nothing in it but its name and its day.
func New(name, date string) []byte {
	return fmt.Appendf(nil, "case = %d\nname = %s\ndate = %s\n\n[answers]\n", first, encode(name), date)
}
