package advisor

// What was found of a suspect by the end of a job, as a case and a page say it.
// A suspect of which nothing is said was not looked at, which is no word on
// whether it is there.
const (
	Found       = "found"         // looked at: the fault is there
	Sound       = "sound"         // looked at: the fault is not there
	Unsettled   = "can't tell"    // looked at, and nobody could say
	NotLookedAt = "not looked at" // nobody looked
)

// Findings lists what can be found of a suspect.
var Findings = []string{Found, Sound, Unsettled, NotLookedAt}

// Closed says that a job has ended.
type Closed struct {
	Date string // ISO 8601
	By   string
	At   Place
}

// Looked is what was found of one suspect by the end of the job.
type Looked struct {
	Suspect  string
	Found    string // one of Findings
	By, Note string
	At       Place
}

// Taken is how long one operation really took.
type Taken struct {
	Operation string
	Hours     float64
	Known     bool   // false: nobody noted them
	Estimate  *Three // hours as the book estimated them when they were noted; nil when not kept
	By, Note  string
	At        Place
}

// LookedAt is what a case says of a suspect at the end of its job, or nil.
func (c *Case) LookedAt(suspect string) *Looked {
	return find(c.Looked, func(l *Looked) bool { return l.Suspect == suspect })
}

// Took is what a case says of the hours that an operation took, or nil.
func (c *Case) Took(operation string) *Taken {
	return find(c.Taken, func(t *Taken) bool { return t.Operation == operation })
}

// Estimate gives the hours of an operation as an advice has them, to the
// hundredth.
func (o *OperationAdvice) Estimate() *Three {
	hours := func(minutes int) float64 { return float64((minutes*100+30)/60) / 100 }
	return &Three{Low: hours(o.MinutesLow), Usual: hours(o.MinutesUsual), High: hours(o.MinutesHigh)}
}
