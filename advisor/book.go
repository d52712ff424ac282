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
	Types       []Type
	OnceOvers   []OnceOver
	Withdrawn   []Withdrawal // by house layers, in order of their places
	Settings    Settings
	Layers      []string // house layers that took part
	Fingerprint string   // SHA-256 over the rule texts, hex
}

// boxesOfQuestions is the number from which the boxes of questions count on in
// hundreds, so that a number of work and one of a finding look different.
const boxesOfQuestions = 100

// Edition names the rules that the boxes of a sheet hold for: the first four
// digits of the fingerprint.
func (b *Book) Edition() string { return b.Fingerprint[:min(4, len(b.Fingerprint))] }

// Box is the number by which a work sheet and `record` know an operation (from
// 1) or a question (from the next hundred above the operations); 0 for no such
// id. It holds for one book: see Fingerprint.
func (b *Book) Box(id string) int {
	for i := range b.Operations {
		if b.Operations[i].ID == id {
			return i + 1
		}
	}
	for i := range b.Questions {
		if b.Questions[i].ID == id {
			return b.firstQuestion() + i
		}
	}
	return 0
}

// Boxed is the operation or question of a box number, "" when there is none.
func (b *Book) Boxed(number int) string {
	if i := number - 1; i >= 0 && i < len(b.Operations) {
		return b.Operations[i].ID
	}
	if i := number - b.firstQuestion(); i >= 0 && i < len(b.Questions) {
		return b.Questions[i].ID
	}
	return ""
}

func (b *Book) firstQuestion() int {
	return (len(b.Operations)/boxesOfQuestions+1)*boxesOfQuestions + 1
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
	Tools       []string // that the shop has, hand tools aside; none: not said
	HandTools   []string // that every shop has, never said to be lacking
	Shop        string   // the shop's name for letters
	GoodForDays int      // an estimate's life
	HoursAWeek  float64  // that the shop can give to one car; 0 when not said
	PartsDays   int      // that one waits for parts before the work goes on
	RingAt      float64  // share of the agreed sum at which the owner is rung

	Grounds map[string]Ground // by key, as "rate": why the figure is so, and where it comes from
	At      []Place           // where each layer gives settings, the built-in book first
}

// Price is an exact ratio Num/Den: what one unit of avoided later cost is worth.
type Price struct{ Num, Den int64 }

// Cares lists the names of care from lean to thorough.
var Cares = []string{"thrifty", "normal", "thorough"}
