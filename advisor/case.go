package advisor

// Overruling is a call that the foreman set by hand.
type Overruling struct {
	Operation, Call string
	By, Why, Date   string
	At              Place
}

// Decision is an operation that the owner accepted or declined, or that is done.
type Decision struct {
	Operation string
	By, Note  string
	Date      string
	At        Place
}

// Letter is what an earlier letter to the owner said.
type Letter struct {
	Number        int
	Date          string   // ISO 8601
	Agree, Likely int64    // sums as it said them: with tax, in whole units of the currency
	Do, LookFirst []string // operations by call, do while open among Do
	Stops         []string // holds that were sure to apply
	Found         []string // questions answered, once for each answer
	At            Place
}

// Case is one car, one stay: answers, findings and decisions.
type Case struct {
	Version   int
	ID        string // from the file's name
	File      string
	Name      string
	Date      string  // ISO 8601; every age is reckoned to it
	Day       float64 // Date as a decimal year
	Care      string  // "" when not said
	Words     string  // the owner's wish in the owner's words
	Answers   []Answer
	Accepted  []Decision
	Declined  []Decision
	Done      []Decision
	Overruled []Overruling
	Letters   []Letter
	Forecast  map[string]float64 // chance of each suspect, frozen at the end of intake
	Looked    []Looked           // what was found of suspects by the end of the job
	Taken     []Taken            // hours that operations took
	Closed    *Closed            // nil while the job goes on
	Book      string             // fingerprint of the book at intake
	Layers    []string
}
