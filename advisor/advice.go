package advisor

// Call is the verdict on an operation.
type Call string

// The five calls; pages say the same words.
const (
	Do        Call = "do"
	DoOpen    Call = "do while open"
	LookFirst Call = "look first"
	Leave     Call = "leave"
	NotFitted Call = "not fitted"
)

// Calls lists the calls.
var Calls = []Call{Do, DoOpen, LookFirst, Leave, NotFitted}

// Advice is the one record that every page renders; it carries each reason.
// Money is in minor units of the book's currency, without tax.
type Advice struct {
	Case        *Case
	Settings    *Settings
	Care        string
	CareBecause string
	Holds       []HoldAdvice
	Inspections []InspectionAdvice // in order of rank, then the ones without worth
	Operations  []OperationAdvice  // every operation of the book, in order of id
	Suspects    []SuspectAdvice    // every active suspect, in order of id
	Standing    []StandingAdvice   // acting, and "would apply if"
	Conflicts   []Conflict
	Open        []OpenQuestion // questions that can still matter, in asking order
	Derived     []DerivedValue
	Routes      []RouteAdvice
	Total       Total
	Ladder      Ladder
	HouseRules  []HouseRule // that took part, in order of id
	HoursFactor float64
	Notes       []string // plain lines that a page must show (ring-fenced clashes, unknown fitted, ...)
}

// HouseRule is a house rule that took part in an advice: as an item that it
// added or adjusted, or by taking one out.
type HouseRule struct {
	Kind, ID  string
	Layer     string
	Withdrawn string // why it took the item out, "" when it did not
	By        string // who says so
	Learned   string // the case that taught it
	Again     string // the day to look at it again, ISO 8601
	Due       bool   // that day is not after the case's
}

// Settle is a look or work that can lift a hold or answer a question.
type Settle struct {
	Kind string // inspection, operation, question
	ID   string
}

// HoldAdvice is one hold whose condition is not known to be false.
type HoldAdvice struct {
	ID, Name string
	Stops    []string // with all that those stop in turn, in order of Acts
	When     Truth    // true, or unknown: "stands until known"
	Because  string
	Sources  []string
	LiftedBy []Settle
	Until    string   // the condition in words
	Missing  []string // questions not yet known that it reads
}

// LedgerLine is one sign's weight on one suspect.
type LedgerLine struct {
	Sign      string
	Name      string // in words as it stands (present or absent)
	Truth     Truth
	Level     int // index of the level that is true, -1 for none
	How       Channel
	Ratio     float64 // what the odds were multiplied by
	Decibans  float64 // 10 log10 Ratio, for display
	Counted   bool    // false: also seen, not counted again
	Group     string
	Because   string
	Sources   []string
	Questions []string // that it reads
}

// SuspectAdvice is one active suspect.
type SuspectAdvice struct {
	ID, Name    string
	Part        string
	Chance      float64
	Base        float64
	BaseNote    string // which base and why
	BaseSources []string
	Family      string
	IfLeft      int64 // what else it costs if left
	Loss        int64 // L: if left plus every operation that curing needs
	Benefit     int64 // r = round(p L)
	CuredBy     []string
	Danger      string       // kind, "" for none
	Looked      Truth        // danger: known sound (true), known bad (false), unknown
	When        Truth        // unknown: counted as applying
	Ledger      []LedgerLine // strongest first
	Conflict    bool
	Because     string
	Sources     []string
}

// CautionAdvice is a safety note as it applies.
type CautionAdvice struct {
	ID, Hazard, Text, Defers string
	Sources                  []string
}

// OperationAdvice is the call on one operation and every reason for it.
type OperationAdvice struct {
	ID, Name                              string
	Part                                  string
	Phase, Who                            string
	Call                                  Call
	Overruled                             *Overruling
	Was                                   Call   // the engine's own call when overruled
	Reason                                string // why this call, in words
	Forced                                string // "", "standing rule", "danger", "accepted", "declined", "done", "needed", "to look"
	ForcedBy                              string // id of the rule, suspect, operation or inspection
	Routine                               bool   // forced in by a routine rule
	InScope                               bool
	Access                                bool
	Door                                  bool     // opens an assembly
	Chance                                *float64 // at least one suspect it cures is there; nil for access
	Margin                                *int64   // value forced in minus forced out, in money at the care's price; nil if forced
	Lead                                  string   // the suspect that asks most for it
	BreakEven                             *float64 // chance of Lead at which the call flips; nil when there is none
	Cost                                  int64    // own mean cost, no access
	MinutesLow, MinutesUsual, MinutesHigh int
	PartsLow, PartsUsual, PartsHigh       int64
	Alone                                 int64    // cost with every access it needs
	Saved                                 int64    // saving that acts (open on the stand)
	Needs                                 []string // operations it requires in this case
	NeededBy                              []string // operations in the scope that require it
	SharedWith                            []string // operations in the scope that share a quarter or more of its access, most first
	Suspects                              []string // active suspects it helps to cure, likeliest first
	Settles                               []string // inspections that can settle it
	MaybeChance                           float64  // look first: chance of the outcomes that have it in scope
	Until                                 string
	ContainedIn                           string // chain: the upgrade that contains it
	Variant                               string
	VariantOpen                           bool // not known to be the one: the dearest still possible
	Cautions                              []CautionAdvice
	Sources                               []string
	WouldIf                               []string // standing rules that would apply if
}

// InspectionAdvice is one look and its worth.
type InspectionAdvice struct {
	ID, Name   string
	Where      string
	Rank       int   // 1 first; 0 when not advised
	Net        int64 // worth less the minutes, minor units
	Worth      int64 // before the minutes
	Cost       int64 // minutes x rate / 60
	Minutes    int
	Access     []string
	Tools      []string
	Lacks      []string // tools that the shop does not have
	Answers    []string // open questions it answers
	WhenOpen   bool     // the scope opens it anyway: look when open
	Lifts      []string // holds that it can help to lift
	Dangers    []string // dangers that it looks at
	Settles    []string // operations whose call it can change
	Blocked    []string // standing holds that stop it now
	Before     []string // inspections or operations that come first
	Breaks     string
	Advised    bool
	Reason     string
	FirstStart bool
	Bundle     []string
	Cautions   []CautionAdvice
	Sources    []string
}

// StandingAdvice is a standing rule that acts or would.
type StandingAdvice struct {
	ID         string
	Operations []string
	Out        bool
	Routine    bool
	Truth      Truth
	Because    string
	Sources    []string
	Missing    []string
}

// Conflict is two answers that cannot both be so.
type Conflict struct {
	Questions []string
	Suspect   string // for contradicting decisive signs
	Text      string
	Places    []Place
}

// FeedsCare and FeedsHours stand among what an OpenQuestion feeds for the
// settings of the price and of the hours.
const (
	FeedsCare  = "care"
	FeedsHours = "hours_factor"
)

// OpenQuestion is a question that can still matter.
type OpenQuestion struct {
	ID        string
	Station   string
	Structure bool     // read by structure: no worth in money, comes first
	Worth     int64    // expected worth of knowing it, minor units
	Net       int64    // less its minutes
	Feeds     []string // operations, holds, standing rules, inspections, settings that it bears on
	Suspects  []string
}

// DerivedValue is a derived value as it came out.
type DerivedValue struct {
	ID, Name, Unit string
	Truth          Truth
	IsNumber       bool
	Low, High      float64
	Shown          bool // it is known, and the page says so
	Because        string
	Sources        []string
}

// RouteAdvice says which way was picked to a place that the scope needs.
type RouteAdvice struct {
	Route, Way string
	Name       string   // of the way
	Place      string   // what the route is about
	Why        string   // why this way
	Lacks      []string // tools for it that the shop does not have
}

// Range is a low and a high figure, 1 in 10 each way.
type Range struct{ Low, High int64 }

// Figures are an amount of money as three figures with their mean, minor units.
type Figures struct{ Low, Usual, High, Mean int64 }

// Sum is how the money of an operation comes about: hours x Factor x the
// shop's rate + parts - Saved. Each amount is rounded by itself, so that a line
// may differ from its parts by one minor unit.
type Sum struct {
	Hours         Three   // as the book has them
	HoursMean     float64 // .3, .4, .3 of Hours
	Factor        float64 // on the hours, for rusted fixings
	Labour, Parts Figures
	Saved         int64 // comes off while other work of the scope has it open
}

// Line is one line of money.
type Line struct {
	Operation        string // or inspection
	Name             string
	Kind             string // firm, maybe, look, risk
	Waits            string // the danger that must be known before this line is firm, or ""
	Chance           float64
	Low, Usual, High int64
	Mean             int64   // full mean, before the chance
	Expected         int64   // chance x mean, as added up
	Deviation        float64 // standard deviation with the chance in it, minor units
	Minutes          int     // of a look
	Sum              *Sum    // of an operation's line; nil for looks and risks
}

// Spread is a sum with its standard deviation, minor units: lines that vary
// each on their own, and lines that vary all together.
type Spread struct {
	Mean                   int64
	Independent, Dependent float64
}

// Total is the money of the advice.
type Total struct {
	Firm, Maybe, Likely    int64
	Looking                int64 // the inspections advised, within Firm
	Independent, Dependent Range
	FirmSpread, Spread     Spread // of the firm lines and looks; of all lines
	Lines                  []Line
}

// Step is one step of the ladder.
type Step struct {
	Price               Price    // the step enters just above this price
	Enters              []string // operations that enter as one block
	Cost                int64    // of the whole scope at this step
	Benefit             int64    // what the whole scope is expected to save later, less overlaps
	AddCost, AddBenefit int64
	Again               []string // of what is open before the step: to be done and paid again if the step is done later
	AgainCost           int64
	Alone               int64 // of what enters, when the steps between are passed over
	After               int   // the step that must be in for what enters to be done at all
}

// Ladder is nested scopes from lean to thorough. Step 0 is what is forced in.
type Ladder struct {
	Steps     []Step
	Here      int   // the step that fits this case's care
	Low, High Price // the range shown
}

// Budget is where a sum to spend lies on the ladder, minor units.
type Budget struct {
	Sum    int64
	Within int   // the last step that it covers; -1 when it does not reach step 0
	Left   int64 // over that step
	Short  int64 // of the next step; 0 when there is none
	Fits   []int // later steps whose block by itself fits what is left
}

// Turn is a single answer that would change a call.
type Turn struct {
	Question string
	Name     string
	Value    Value
	Written  string   // the answer in words
	Changes  []Change // what it would change
	Asked    bool     // something is known of it already; this answer would contradict it
	Now      string   // what is known of it in words, with how it is known
	How      Channel  // how that is known
	Ways     []Finding
}

// Change is another call on an operation, or another state of a hold or a look.
type Change struct {
	ID       string
	From, To string
}

// Finding is a way to find out an answer: a question of the walk-round, or an
// inspection with what must be opened for it.
type Finding struct {
	Look    string // id of the inspection, "" for the walk-round
	Name    string
	Station string
	Minutes int
	Cost    int64    // of the minutes and of what must be opened, minor units
	Opens   []string // operations to get at it that the scope does not hold
}

// Why is what belongs to one id beside its advice: the single answers that
// would change the call, and the sources in full.
type Why struct {
	ID, Kind string // operation, suspect, inspection, hold or question
	Name     string
	Because  string   // the rule's own reason; of a question, how to see or measure it
	Now      string   // of a question: what is known of it, in words
	Minutes  int      // of a question or an inspection: to find out
	Turns    []Turn   // unknown ones first, then the cheapest to find out
	Tried    int      // answers that were tried
	Sources  []Source // of the whole book, for the page to pick from
}
