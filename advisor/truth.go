// Package advisor holds the nouns of the trade as Longstand sees it: the case
// and its answers, the rules of the book, and the advice. It has no logic but
// what a noun needs to be read, and imports no room but diag.
package advisor

// Truth is a value of strong Kleene logic over false < unknown < true, in two
// bits: surely true, surely false.
type Truth uint8

// The three truths. The zero value is unknown: nothing is silently "no".
const (
	Unknown Truth = 0
	True    Truth = 1
	False   Truth = 2
)

// And is the lesser of two truths.
func (a Truth) And(b Truth) Truth { return a&b&True | (a|b)&False }

// Or is the greater of two truths.
func (a Truth) Or(b Truth) Truth { return (a|b)&True | a&b&False }

// Not swaps true and false and keeps unknown.
func (a Truth) Not() Truth { return a>>1 | a<<1&False }

// Known tells whether the truth is settled.
func (a Truth) Known() bool { return a != Unknown }

// TruthOf turns a settled yes or no into a Truth.
func TruthOf(b bool) Truth {
	if b {
		return True
	}
	return False
}

// String gives the word used on pages.
func (a Truth) String() string {
	switch a {
	case True:
		return "true"
	case False:
		return "false"
	}
	return "not known"
}
