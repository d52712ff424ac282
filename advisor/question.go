package advisor

import "longstand/advisor/diag"

// Place is where a thing stands in a file.
type Place = diag.Span

// Kind is the kind of a question's answer.
type Kind int

// The eight kinds of question.
const (
	YesNoKind Kind = iota
	Choice
	Choices
	NumberKind
	ReadingsKind
	Year
	Code
	Text
)

// Kinds lists the kinds' names in rule files, by value.
var Kinds = []string{"yesno", "choice", "choices", "number", "readings", "year", "code", "text"}

// String gives the kind's name.
func (k Kind) String() string { return Kinds[k] }

// Option is one possible answer of a choice or choices question.
type Option struct {
	ID, Name string
	At       Place
}

// Question is something that can be known about a car.
type Question struct {
	ID      string
	Kind    Kind
	Ask     string // the question as put to a person
	Name    string // short label for pages
	Station string // station of the walk-round, or "inspection"
	Help    string // how to see or measure it
	Options []Option
	Unit    string  // for numbers and readings
	Low     float64 // range of a number
	High    float64
	Step    float64 // resolution of a number; 0 is 1
	CodeOf  string  // decoder of a code question: "tyre_date"
	How     Channel // default channel
	Minutes int
	Always  bool // asked whatever it changes
	Fixed   bool // layout, age: not varied in what-ifs
	Rank    int  // 1..10 among the first questions of an intake, 0 otherwise
	Hazards []string
	// AgainAfter lists work that undoes what was known: once it is done, an
	// older answer counts as not asked, and the holds that it lifted come back.
	AgainAfter []string
	At         Place
}

// OptionBit gives the bit of an option by id, or false.
func (q *Question) OptionBit(id string) (int, bool) {
	if q.Kind == YesNoKind {
		switch id {
		case "no":
			return 0, true
		case "yes":
			return 1, true
		}
		return 0, false
	}
	for i := range q.Options {
		if q.Options[i].ID == id {
			return i, true
		}
	}
	return 0, false
}

// AllOptions is the set of every option of a choice or yesno question.
func (q *Question) AllOptions() uint64 {
	if q.Kind == YesNoKind {
		return 3
	}
	return 1<<len(q.Options) - 1
}

// Stations lists the stations of the walk-round in order, then "inspection"
// for what only an inspection can answer.
var Stations = []string{"story", "papers", "outside", "cabin", "luggage", "bonnet", "underneath", "bench", "inspection"}
