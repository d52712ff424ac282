package advisor

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Channel is how an answer is known, the strongest first.
type Channel int

// The five channels. A stronger one counts before a weaker one.
const (
	Seen Channel = iota
	Measured
	Paper
	Owner
	Secondhand
	Nohow // no channel: not asked
)

// Channels lists the channels' names in rule and case files, by value.
var Channels = []string{"seen", "measured", "paper", "owner", "secondhand"}

// String gives the channel's name.
func (c Channel) String() string {
	if c < 0 || int(c) >= len(Channels) {
		return "not asked"
	}
	return Channels[c]
}

// Stage is the step of evaluation at which a channel's answers join: seen and
// measured together first, then paper, owner, secondhand.
func (c Channel) Stage() int {
	switch c {
	case Seen, Measured:
		return 0
	case Nohow:
		return Stages
	}
	return int(c) - 1
}

// Stages is the number of stages of evaluation.
const Stages = 4

// State is what an answer says about its question.
type State uint8

// NotAsked differs from Hidden (cannot be seen until something is off) and
// from CantTell (looked, cannot say), though all three leave every value possible.
const (
	NotAsked State = iota
	Hidden
	CantTell
	Told // a value, a range or a set of what is still possible
)

// Value is everything still possible for one question, by the question's kind.
// The zero Value is "not asked".
type Value struct {
	State State
	// Low and High bound a number or a year, in the question's unit; equal when
	// exact. A code holds the decoded bounds here (a tyre date code: the year).
	Low, High float64
	// Options has bit i set while option i of a choice is possible; for a yesno
	// bit 0 is no and bit 1 is yes.
	Options uint64
	// Yes and No have bit i set when option i of a choices question is known to
	// hold or known not to hold.
	Yes, No uint64
	// Readings are the values of a readings question, in order.
	Readings []float64
	// Text is a text, or a code as written.
	Text string
}

// NumberRange is a told number between two bounds.
func NumberRange(low, high float64) Value { return Value{State: Told, Low: low, High: high} }

// Number is a told exact number.
func Number(x float64) Value { return NumberRange(x, x) }

// YesNo is a told yes or no.
func YesNo(yes bool) Value {
	if yes {
		return Value{State: Told, Options: 2}
	}
	return Value{State: Told, Options: 1}
}

// OneOf is a told set of options, by bit.
func OneOf(options uint64) Value { return Value{State: Told, Options: options} }

// Anything is the widest number range.
func Anything() (low, high float64) { return math.Inf(-1), math.Inf(1) }

// Photo is a photograph that shows a finding: a file beside the case's.
type Photo struct {
	File string
	At   Place
}

// Answer is one answer as given: to which question, what, and how it is known.
type Answer struct {
	Question string
	Value    Value
	Written  string // as the person wrote it
	How      Channel
	Note     string
	By       string
	On       string // date, ISO 8601
	Photos   []Photo
	At       Place
}

// Words gives an answer by the names of its options, a figure with its unit.
func (a *Answer) Words(q *Question) string {
	yes, none := optionNames(q, a.Value.Options|a.Value.Yes), optionNames(q, a.Value.No)
	switch {
	case a.Value.State == Hidden:
		return "hidden"
	case a.Value.State == CantTell:
		return "looked, cannot say"
	case len(yes) > 0 && q.Kind == Choice:
		return strings.Join(yes, " or ")
	case len(yes) > 0:
		return strings.Join(yes, ", ")
	case q.Kind == Choices && a.Value.No != q.AllOptions():
		return "not " + strings.Join(none, ", nor ")
	case q.Kind == Choices:
		return "none of these"
	case q.Kind == YesNoKind:
		return []string{"cannot say", "no", "yes", "yes or no"}[a.Value.Options&3]
	}
	return a.figure(q)
}

// figure gives an answered number, year or text as it is said: bounds in words, no
// more places than an instrument has.
func (a *Answer) figure(q *Question) string {
	if q.Kind != NumberKind && q.Kind != Year {
		return strings.TrimSpace(a.Written + " " + q.Unit)
	}
	said, unit := longFigure.ReplaceAllStringFunc(a.Written, shortFigure), " "+q.Unit
	if q.Unit == "money" {
		unit = "" // the currency is the shop's to name
	}
	least, from := strings.CutPrefix(said, "from ")
	most, to := strings.CutPrefix(said, "to ")
	switch {
	case from && q.Kind == Year:
		said = least + " or later"
	case from:
		said = "at least " + least
	case to && q.Kind == Year:
		said = most + " or before"
	case to:
		said = "at most " + most
	}
	return strings.TrimSpace(said + unit)
}

// longFigure finds figures with a point; a converted one has six digits.
var longFigure = regexp.MustCompile(`\d+\.\d+`)

// shortFigure writes such a figure to four digits, or to whole ones.
func shortFigure(s string) string {
	const long, short = 6, 4
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || len(s)-1 < long {
		return s
	}
	whole, _, _ := strings.Cut(s, ".")
	s = strconv.FormatFloat(x, 'f', max(0, short-len(strings.TrimLeft(whole, "0"))), 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

func optionNames(q *Question, bits uint64) (names []string) {
	for i, opt := range q.Options {
		if bits&(1<<i) != 0 {
			names = append(names, opt.Name)
		}
	}
	return names
}
