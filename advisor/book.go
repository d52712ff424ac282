package advisor

// Book is all rules: the built-in ones plus the shop's house rules, checked
// and immutable. Every list is in order of id; conditions carry the ids of the
// compiled tables that were made with it.
type Book struct {
	Questions   []Question // in order of station, then file order
	Derived     []Derived
	Suspects    []Suspect
	Signs       []Sign
	Families    []Family
	Inspections []Inspection
	Operations  []Operation
	Routes      []Route
	Standing    []StandingRule
	Holds       []Hold
	Cautions    []Caution
	Sources     []Source
	Words       []Word
	Settings    Settings
	Layers      []string // house layers that took part
	Fingerprint string   // SHA-256 over the rule texts, hex
}

// HoursFactor is one branch of the shop's list for rusted fixings.
type HoursFactor struct {
	When   Condition
	Factor float64
	Ground
}

// CareWhen picks a case's care from its answers when the case does not say.
type CareWhen struct {
	When Condition
	Care string
	Ground
}

// Trust is how often a channel says yes when it is so and when it is not.
type Trust struct{ Hit, FalseAlarm float64 }

// Settings are the shop's own figures.
type Settings struct {
	Rate        int64 // per hour, minor units
	Currency    string
	MinorDigits int     // 2 for pence and cents
	Tax         float64 // share, 0.2 is 20 %
	Locale      string
	Units       string           // metric or imperial
	Care        map[string]Price // thrifty, normal, thorough
	CareWhen    []CareWhen
	Trust       [5]Trust // by Channel
	Hours       []HoursFactor
	Tools       []string
	Shop        string  // the shop's name for letters
	GoodForDays int     // an estimate's life
	RingAt      float64 // share of the agreed sum at which the owner is rung
}

// Price is an exact ratio Num/Den: what one unit of avoided later cost is worth.
type Price struct{ Num, Den int64 }

// Cares lists the names of care from lean to thorough.
var Cares = []string{"thrifty", "normal", "thorough"}
