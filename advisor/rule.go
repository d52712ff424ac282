package advisor

import "strings"

// CondID names a compiled condition of the book. 0 is always true.
type CondID int32

// Condition is a condition of a rule: its text, where it stands, its compiled
// form, and the examples that pin it.
type Condition struct {
	Text      string
	ID        CondID
	At        Place
	Specimens []Specimen
}

// Given tells whether a condition was written at all.
func (c Condition) Given() bool { return c.Text != "" }

// Specimen is one example of answers and what the condition must say of it.
type Specimen struct {
	Answers []Answer
	Done    []string // operations recorded as done
	Year    float64  // the decimal year to which ages are reckoned
	Want    Truth
	At      Place
}

// Source says where a rule or a figure comes from.
type Source struct {
	ID       string
	Kind     string // standard, regulation, handbook, paper, practice, shop
	Cite     string
	Recalled bool // the figure is from memory, not re-read
	At       Place
}

// SourceKinds are the kinds of a Source.
var SourceKinds = []string{"standard", "regulation", "handbook", "paper", "practice", "shop"}

// Ground is what every rule must say for itself.
type Ground struct {
	Because string   // one line, shown before any number
	Sources []string // ids of sources
	By      string   // house rules: who wrote it
	Learned string   // house rules: the case it was learned on
	Again   string   // house rules: date to look at it again
	Layer   string   // "" for the built-in book, else the house layer
	At      Place    // where the item starts
}

// Derived is a value computed from answers by an expression.
type Derived struct {
	ID, Name, Unit string
	Is             Condition // the expression; boolean or number
	Shown          Condition // the cars on whose page it stands, once it is known; left out: none
	Ground
}

// Count is "N of Of cars".
type Count struct{ N, Of int }

// Chance is the smoothed share (n + 1/2)/(N + 1).
func (c Count) Chance() float64 { return (float64(c.N) + 0.5) / (float64(c.Of) + 1) }

// Raw is the share as counted, for decisive signs.
func (c Count) Raw() float64 { return float64(c.N) / float64(c.Of) }

// Base is one branch of a suspect's base chance.
type Base struct {
	When  Condition
	Count Count
	Ground
}

// Loss is one branch of what a fault costs if left, in minor units.
type Loss struct {
	When Condition
	Cost int64
	Ground
}

// Danger marks a suspect that can hurt: Good says what counts as looked at and
// found sound.
type Danger struct {
	Kind string // brakes, steering, wheels, fuel_fire, structure, belts
	Good Condition
	// Before lists operations that come after the look: until the danger is
	// known, no money on them, or on what needs them, is firm.
	Before []string
	Ground
}

// Suspect is one fault that may be there.
type Suspect struct {
	ID, Name string
	Part     string // area of the car
	When     Condition
	Bases    []Base
	IfLeft   []Loss
	Danger   *Danger
	CuredBy  []string // all of these cure it
	Family   string   // exactly_one family, or ""
	Ground
}

// Level is one of a sign's exclusive ordered levels.
type Level struct {
	When          Condition
	Name          string
	With, Without Count
}

// Sign is evidence on one suspect: of Of cars with the fault N show it, of Of
// cars without N show it anyway. A sign with Levels uses those instead.
type Sign struct {
	ID, Suspect string
	Name        string // in words, when it is so
	NameNot     string // in words, when it is not so
	When        Condition
	With        Count
	Without     Count
	Levels      []Level
	Group       string
	Decisive    bool
	Ground
}

// Inspection is a way to answer questions that the walk-round cannot.
type Inspection struct {
	ID, Name   string
	Where      string // station where one stands
	Minutes    int
	Tools      []string
	Access     []string // operations opened to look
	Needs      []string // operations that must be done before it (the first start: clean fuel, oil ...)
	Answers    []string // questions
	Acts       []string // acts it performs, which a standing hold may stop
	After      []string // inspections that must come first
	Breaks     string   // what it may break
	Bundle     []string // inspections it consists of
	When       Condition
	Hazards    []string
	FirstStart bool // the first start of the engine
	Last       bool // the proof at the end: advised whatever its worth once no hold stops its acts; no work waits for it
	Ground
}

// Three are three figures: 1 in 10 is less, usual, 1 in 10 is more.
type Three struct{ Low, Usual, High float64 }

// Mean is .3 low + .4 usual + .3 high (extended Swanson-Megill).
func (t Three) Mean() float64 { return 0.3*t.Low + 0.4*t.Usual + 0.3*t.High }

// Need is another operation that an operation requires, perhaps only when.
type Need struct {
	Op   string // an operation or a route
	When Condition
	At   Place
}

// Saving is hours that apply when another operation is in the scope as well.
type Saving struct {
	With    string
	Hours   Three
	Because string
	At      Place
}

// Risk is what opening may break: N of Of times, at a cost in minor units.
type Risk struct {
	Count Count
	Cost  int64
	Ground
}

// Variant is one way an operation may have to be done, picked by condition.
type Variant struct {
	Name  string
	When  Condition
	Hours *Three
	Parts *Three // major units
	Needs []Need
	Ground
}

// Operation is a piece of work.
type Operation struct {
	ID, Name string
	Part     string
	Phase    string   // one of Phases
	Who      string   // shop, sent_out, owner, licensed
	Hours    Three    // hours
	Parts    Three    // major units of money, no tax
	Access   bool     // done only to get at something
	Door     bool     // opens an assembly: pages say that it is opened or stays shut
	Looks    []string // dangers (suspects) that this strip-and-report answers
	Fitted   Condition
	Needs    []Need
	Brings   []Need
	Savings  []Saving
	Risks    []Risk
	Variants []Variant
	Upgrade  string // the base operation of which this is the upgrade
	Until    string // left until when: a date, a distance, a thing to watch
	NoFactor bool   // hours factor (rusted fixings) does not apply
	Hazards  []string
	Ground
}

// Phases of the work in their order on the bench.
var Phases = []string{"make_safe", "look", "strip", "repair", "refit", "wake", "test"}

// Trades that may do an operation.
var Trades = []string{"shop", "sent_out", "owner", "licensed"}

// Route is a place that can be reached in more than one way. Operations need
// the route by its id.
type Route struct {
	ID, Name string
	Ways     []Way
	Ground
}

// Way is one way of a Route: the operations it goes through.
type Way struct {
	ID, Name string
	Through  []string
	Tools    []string  // a shop that has said that it lacks one goes another way
	When     Condition // not possible when known false
}

// StandingRule is a firm rule of the shop: when known true, its operations are in (or out).
// One that is declined speaks for the owner: its operations are out as if the
// owner had declined them, whatever else puts them in.
type StandingRule struct {
	ID         string
	Operations []string
	Out        bool
	Declined   bool // and then Out as well
	Routine    bool
	When       Condition
	Ground
}

// Hold is a stop on acts until a condition is known to be true.
type Hold struct {
	ID    string
	Name  string // in words: until what
	Stops []string
	When  Condition
	Until Condition
	Ground
}

// Acts that a hold can stop, in the order of waking a car.
var Acts = []string{"lifted", "powered", "charged", "filled", "turned", "cranked", "run", "moved", "driven", "road"}

// ActStops says which act's stop stops which others.
var ActStops = map[string][]string{
	"turned": {"cranked", "run", "driven", "road"}, "cranked": {"run", "driven", "road"},
	"run": {"driven", "road"}, "powered": {"cranked", "run", "driven", "road"},
	"moved": {"driven", "road"}, "driven": {"road"},
}

// Caution is a safety note on a hazard.
type Caution struct {
	ID, Hazard string
	Text       string // what to do
	Defers     string // what it defers to: local code, maker's data, licensed trade
	When       Condition
	Ground
}

// Type is a known type: a type of car that the shop sees often, with the
// answers that it knows of it in advance.
type Type struct {
	ID, Name string
	Answers  []Answer // in order of the file, known from paper; Written is the value in TOML
	Ground
}

// TypeQuestion is the id by which an intake asks for the type; no question of
// a book bears it.
const TypeQuestion = "known_type"

const typeNote = "known type "

// Note is the remark by which a case says that an answer comes from the type.
func (t *Type) Note() string { return typeNote + t.ID }

// TypeOf gives the type that an answer's note names, or false.
func TypeOf(note string) (id string, ok bool) { return strings.CutPrefix(note, typeNote) }

// Withdrawal is an item that a house layer took out of the book, and why.
type Withdrawal struct {
	Kind, ID string
	Ground
}

// Family is a set of causes that exclude one another.
type Family struct {
	ID, Name string
	Ground
}

// Word is a glossary entry: a trade word in plain words, with region forms.
type Word struct {
	ID      string
	Text    string            // the word on pages
	Means   string            // in plain words
	Regions map[string]string // locale -> word, for instance "en-US" -> "oil pan"
	Forms   []string          // other forms found in text (plural)
	Ground
}
