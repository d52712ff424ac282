package advisor

// OnceOver is one prompt for several questions of one station, which a person
// takes in at one look. It belongs to the interview alone: a case holds the
// answers of its questions, and no rule reads it.
type OnceOver struct {
	ID, Name string
	Station  string // of all its questions
	Ask      string // as put to a person
	Help     string
	Members  []OnceMember
	Ground
}

// OnceMember is one question of a once-over.
type OnceMember struct {
	Question string
	// Usual is the option that an ordinary sound part shows, by id; of a yesno
	// "yes" or "no". It is "" when nothing may be taken for granted.
	Usual string
	At    Place
}

// Questions are the ids of its questions, in its order.
func (o *OnceOver) Questions() (ids []string) {
	for i := range o.Members {
		ids = append(ids, o.Members[i].Question)
	}
	return ids
}

// OnceOver is the once-over of an id; nil when the book has none.
func (b *Book) OnceOver(id string) *OnceOver {
	return find(b.OnceOvers, func(o *OnceOver) bool { return o.ID == id })
}
