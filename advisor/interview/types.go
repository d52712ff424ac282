package interview

import (
	"math/bits"

	"longstand/advisor"
)

// noType is the option of a car of which the shop knows nothing in advance.
const noType = "none_of_these"

// ChooseType asks, before all else, which of the shop's known types the car is.
// It gives nil for none of them, and tells when the person stopped. What the
// type answers is not asked again.
func (iv *Interview) ChooseType(asker Asker) (chosen *advisor.Type, stopped bool, err error) {
	p := iv.typePrompt()
	for {
		typed, err := asker.Ask(p)
		if err != nil {
			return nil, false, err
		}
		p.Repeated = true
		r, err := p.Read(typed)
		switch {
		case err != nil:
			asker.Say(err.Error())
		case r.Command == Stop:
			return nil, true, nil
		case r.Command == Skip, r.Answer.Value.State == advisor.Hidden, r.Answer.Value.State == advisor.CantTell:
			return nil, false, nil
		case r.Command == Why:
			asker.Say(p.WhyText())
		case r.Command != None:
			asker.Say(p.HelpText())
		case bits.OnesCount64(r.Answer.Value.Options) != 1:
			asker.Say("one type is wanted; Enter when it is not sure which")
		default:
			if n := bits.TrailingZeros64(r.Answer.Value.Options); n < len(iv.book.Types) {
				chosen = &iv.book.Types[n]
			}
			return chosen, false, nil
		}
	}
}

// typePrompt puts the known types as a question of its own.
func (iv *Interview) typePrompt() *Prompt {
	q := &advisor.Question{ID: advisor.TypeQuestion, Kind: advisor.Choice, Station: "story", How: advisor.Paper,
		Name: "known type", Ask: "Is it of a type that the shop knows?",
		Help: "Answers known in advance are put into the case with the type as a note; a look at the car goes before them."}
	for i := range iv.book.Types {
		q.Options = append(q.Options, advisor.Option{ID: iv.book.Types[i].ID, Name: iv.book.Types[i].Name})
	}
	q.Options = append(q.Options, advisor.Option{ID: noType, Name: "none of these, or not sure"})
	p := &Prompt{Question: q, Left: len(iv.left()), Form: "a number or a word", day: iv.c.Day,
		Reasons: []string{"what the type answers need not be asked"}}
	for i := range q.Options {
		p.Options = append(p.Options, q.Options[i].Name)
	}
	return p
}

// KnownType gives a known type of the book by its id, or nil.
func (iv *Interview) KnownType(id string) *advisor.Type {
	for i := range iv.book.Types {
		if iv.book.Types[i].ID == id {
			return &iv.book.Types[i]
		}
	}
	return nil
}
