// Package condition is the lens through which rules read a case. It admits a
// small part of the expr language (a gate refuses the rest with its place),
// turns it into tables shared by the whole book, and evaluates those in strong
// Kleene logic: every condition is true, false or not known.
//
// Its files, by the way that a condition goes:
//
//   - In: condition.go (a text and its place), scan.go (its words and signs),
//     gate*.go (what is admitted, and what a fault says), compiler.go, derive.go
//     (derived values), functions.go (the trade's arithmetic), codes.go.
//   - Kept: tables*.go (atoms and nodes, each once for a book), freeze.go and
//     index.go (the tables made a program), program.go, atoms.go (in words).
//   - Read: view*.go (a case seen through a program: evaluated, changed answer by
//     answer, what is missing, what may still come), interval.go, thresholds.go.
//   - Proved: formula*.go (a condition by itself, 64 cases at a time), regions*.go
//     (every case that can be), verdict*.go (never, always, implies, apart),
//     measure*.go (what specimens show), mutants*.go (slips that they would catch).
package condition

import (
	"unicode/utf8"

	"longstand/advisor/diag"
)

// Text is a condition as written, and how to find a piece of it in its file.
type Text struct {
	Source string
	At     diag.Span
	// Inside gives the place of the runes from, up to and not including to, of
	// Source. Nil: every fault is placed at At.
	Inside func(fromRune, toRune int) diag.Span
}

// span places a piece of the text; offsets beyond its ends are drawn in.
func (t Text) span(from, to int) diag.Span {
	if t.Inside == nil {
		return t.At
	}
	end := utf8.RuneCountInString(t.Source)
	from = max(0, min(from, end))
	to = max(from, min(to, end))
	if from == to && from > 0 {
		from--
	}
	return t.Inside(from, to)
}

// The limits of one condition, and of all conditions of a book together, are
// checked before anything is parsed: expr's parser recurses once for each
// bracket, and its own limits do not count brackets.
const (
	MaxBytes  = 2048
	MaxTokens = 400 // words, numbers and signs
	MaxDepth  = 32  // of brackets
	MaxBook   = 256 << 10
	// maxFaults ends the walk of one condition; more would not be read.
	maxFaults = 25
)

// reserved are the words that no question, derived value or operation may be
// called: the grammar's own, and the names of the built-in functions.
var reserved = map[string]bool{
	"and": true, "or": true, "not": true, "in": true, "let": true, "if": true, "else": true, "nil": true,
	"true": true, "false": true, "matches": true, "contains": true, "startsWith": true, "endsWith": true,
	"known": true, "done": true, "case_year": true,
	"min": true, "max": true, "mean": true, "spread": true, "count": true, "any": true, "all": true,
}

// Reserved tells whether a name already means something in conditions, so that
// no question, derived value or operation can have it.
func Reserved(name string) bool {
	if reserved[name] {
		return true
	}
	for _, f := range trade {
		if f.name == name {
			return true
		}
	}
	return false
}

// Names lists the names that a text uses, in order and without repeats, even
// when the text has faults. A caller sorts derived values with it.
func Names(source string) []string {
	var names []string
	seen := map[string]bool{}
	for _, t := range scan(source).tokens {
		if t.class == classWord && !reserved[t.text] && !seen[t.text] {
			seen[t.text] = true
			names = append(names, t.text)
		}
	}
	return names
}
