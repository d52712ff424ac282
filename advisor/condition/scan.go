package condition

import (
	"strings"
	"unicode"
)

// class is what kind of token the scan found.
type class uint8

const (
	classWord class = iota
	classNumber
	classString
	classSign
	classForeign // not part of the language at all
)

// token is one word, number, string or sign; from and to count runes.
type token struct {
	class    class
	from, to int
	text     string
}

// scanned is a text in tokens, and what its brackets say.
type scanned struct {
	tokens  []token
	tooDeep int // rune at which the brackets nest too deeply, -1 for none
	loose   int // rune of a bracket without its fellow, -1 for none
}

// scanner runs over the runes of one condition. It knows the same tokens as
// expr's lexer, but only those of the sub-language; the rest it marks foreign.
type scanner struct {
	source  string
	runes   []rune
	offsets []int32 // byte at which each rune starts, and the end
	at      int
	out     scanned
	open    []int // runes of the open brackets
}

func scan(source string) scanned {
	s := scanner{source: source, runes: []rune(source), out: scanned{tooDeep: -1, loose: -1}}
	for at := range source {
		s.offsets = append(s.offsets, int32(at))
	}
	s.offsets = append(s.offsets, int32(len(source)))
	for s.at < len(s.runes) && s.out.tooDeep < 0 {
		s.step()
	}
	if len(s.open) > 0 && s.out.loose < 0 && s.out.tooDeep < 0 {
		s.out.loose = s.open[len(s.open)-1]
	}
	return s.out
}

func wordRune(r rune) bool {
	return r == '_' || r == '$' || unicode.IsLetter(r) || unicode.IsDigit(r)
}

func digit(r rune) bool { return '0' <= r && r <= '9' }

// look gives the rune that many places ahead, 0 at the end.
func (s *scanner) look(ahead int) rune {
	if s.at+ahead < len(s.runes) {
		return s.runes[s.at+ahead]
	}
	return 0
}

// take ends a token that is n runes long.
func (s *scanner) take(c class, n int) {
	end := min(s.at+n, len(s.runes))
	s.out.tokens = append(s.out.tokens, token{class: c, from: s.at, to: end, text: s.source[s.offsets[s.at]:s.offsets[end]]})
	s.at = end
}

// run counts the runes from here on that a predicate holds for.
func (s *scanner) run(from int, holds func(rune) bool) int {
	n := from
	for s.at+n < len(s.runes) && holds(s.runes[s.at+n]) {
		n++
	}
	return n
}

func (s *scanner) step() {
	r := s.look(0)
	switch {
	case unicode.IsSpace(r):
		s.at++
	case digit(r) || r == '.' && digit(s.look(1)):
		s.number()
	case wordRune(r):
		s.word()
	case r == '"' || r == '\'':
		s.string(r)
	case r == '/' && (s.look(1) == '/' || s.look(1) == '*'):
		s.take(classForeign, len(s.runes)) // a comment: nothing after it is read
	case strings.ContainsRune("([", r):
		s.opens()
	case strings.ContainsRune(")]", r):
		s.closes(r)
	case strings.ContainsRune("=!<>", r) && s.look(1) == '=':
		s.take(classSign, 2)
	case r == '*' && s.look(1) == '*':
		s.take(classForeign, 2)
	case r == '#' && (s.look(1) == '#' || wordRune(s.look(1))):
		s.take(classForeign, s.run(1, func(r rune) bool { return r == '#' || wordRune(r) }))
	case strings.ContainsRune("<>+-*/,#", r):
		s.take(classSign, 1)
	default:
		s.take(classForeign, s.run(1, func(r rune) bool { return strings.ContainsRune("?&|:.;", r) }))
	}
}

// number takes digits with at most one point; letters that touch it make it foreign.
func (s *scanner) number() {
	n := s.run(0, digit)
	if s.look(n) == '.' && s.look(n+1) != '.' {
		n = s.run(n+1, digit)
	}
	if wordRune(s.look(n)) {
		s.take(classForeign, s.run(n, wordRune))
		return
	}
	s.take(classNumber, n)
}

func (s *scanner) word() {
	n := s.run(0, wordRune)
	if q := s.look(n); n == 1 && (s.look(0) == 'b' || s.look(0) == 'B') && (q == '"' || q == '\'') {
		s.take(classForeign, n)
		return
	}
	s.take(classWord, n)
}

// string takes a word in quotes to its closing quote; a backslash hides the next rune.
// A string that is not closed is left for the parser to complain of.
func (s *scanner) string(quote rune) {
	n := 1
	for s.look(n) != 0 && s.look(n) != quote {
		if s.look(n) == '\\' {
			n++
		}
		n++
	}
	s.take(classString, n+1)
}

func (s *scanner) opens() {
	s.open = append(s.open, s.at)
	if len(s.open) > MaxDepth {
		s.out.tooDeep = s.at
	}
	s.take(classSign, 1)
}

func (s *scanner) closes(r rune) {
	fits := len(s.open) > 0 && (s.runes[s.open[len(s.open)-1]] == '(') == (r == ')')
	switch {
	case fits:
		s.open = s.open[:len(s.open)-1]
	case s.out.loose < 0:
		s.out.loose = s.at
	}
	s.take(classSign, 1)
}
