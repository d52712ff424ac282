package book

import (
	"fmt"
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// Try is a case that could become a specimen: a few answers changed from one
// that is there. What the condition should say of it is for a person to answer.
type Try struct {
	Changes []Change
	base    int  // of the specimens, -1 for none
	fires   bool // the base does
	ask     string
	at      diag.Span // of the base
}

// Change is one answer, as a specimen writes it and in words.
type Change struct {
	Question string // or done, or case_year
	TOML     string
	Words    string
	question int
	value    advisor.Value
	done     []string
	year     float64
}

// Written are the changes as the table of a specimen.
func (t *Try) Written() string {
	var parts []string
	for _, c := range t.Changes {
		parts = append(parts, c.Question+" = "+c.TOML)
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

// Asked puts the case as a question in the author's own terms.
func (t *Try) Asked() string {
	var parts []string
	for _, c := range t.Changes {
		parts = append(parts, c.Question+" = "+c.TOML)
	}
	return strings.Join(parts, ", ") + t.otherwise() + ": " + t.ask
}

// InWords puts the case as a question in the words of the walk-round.
func (t *Try) InWords() string {
	var parts []string
	for _, c := range t.Changes {
		parts = append(parts, c.Words)
	}
	return strings.Join(parts, "; ") + t.otherwise() + ": " + t.ask
}

func (t *Try) otherwise() string {
	switch {
	case t.base < 0:
		return ""
	case t.base == 0:
		return ", otherwise as the first specimen"
	}
	return fmt.Sprintf(", otherwise as the specimen at %d:%d", t.at.Line, t.at.Col)
}

// OfFirst tells whether the case changes the first specimen on which the
// condition is true, so that it can be written as a change of that.
func (t *Try) OfFirst() bool { return t.base == 0 && t.fires }

// Base is where the specimen stands that the case changes, on line 0 for none.
func (t *Try) Base() diag.Span { return t.at }

// specimen is the case as one of a condition's specimens, but for what it wants.
func (t *Try) specimen(c *pending) *advisor.Specimen {
	s := advisor.Specimen{}
	if t.base >= 0 {
		s = c.to.Specimens[t.base]
	}
	by := advisor.Specimen{}
	for _, change := range t.Changes {
		switch change.Question {
		case "done":
			by.Done = append([]string{}, change.done...)
		case "case_year":
			by.Year = change.year
		default:
			by.Answers = append(by.Answers, advisor.Answer{Question: change.Question, Value: change.value})
		}
	}
	s = changed(&s, by)
	return &s
}
