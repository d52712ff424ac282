package interview

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// Reply is what a person typed, understood.
type Reply struct {
	Command Command
	Station string         // of the station command
	Entry   casefile.Entry // of an answer: as the case will hold it
	Answer  advisor.Answer // of an answer: as the case will read it
	Shown   string         // of an answer: said back in words
	HowTold bool           // of an answer: it says itself how it is known
	Sweep   *Sweep         // of a once-over, in place of an answer
}

// FieldError says what is wrong with an answer and what would be right.
type FieldError struct{ Message, Help string }

// Error gives both lines in one.
func (f *FieldError) Error() string {
	if f.Help == "" {
		return f.Message
	}
	return f.Message + "; " + f.Help
}

func wrong(help, format string, args ...any) *FieldError {
	return &FieldError{fmt.Sprintf(format, args...), help}
}

// Read understands what a person typed at a prompt. It errs with a *FieldError.
func (p *Prompt) Read(typed string) (Reply, error) {
	s := strings.Join(strings.Fields(typed), " ")
	if s == "" {
		return Reply{Command: Skip}, nil
	}
	if r, ok := command(s); ok {
		if r.Command == Station && r.Station != "" && !slices.Contains(walk(), r.Station) {
			return r, wrong("stations are "+strings.Join(walk(), ", "), "there is no station %q", r.Station)
		}
		return r, nil
	}
	if p.Once != nil {
		return p.sweep(s)
	}
	e := casefile.Entry{How: p.Question.How}
	if e.How == advisor.Nohow {
		e.How = advisor.Seen
	}
	value, said, err := p.aside(s, &e)
	if err != nil {
		return Reply{}, err
	}
	shown, err := p.value(value, &e)
	if err != nil {
		return Reply{}, err
	}
	r, err := p.judged(e, shown)
	r.HowTold = said
	return r, err
}

// aside takes "@owner" and "# a note" off the end of what was typed, in either
// order, and tells whether it was said how the answer is known.
func (p *Prompt) aside(s string, e *casefile.Entry) (rest string, said bool, err error) {
	text := p.Question.Kind == advisor.Text
	value, note, noted := strings.Cut(s, " # ")
	if !text && !noted {
		value, note, _ = strings.Cut(s, "#")
	}
	value, e.Note = strings.TrimSpace(value), strings.TrimSpace(note)
	if at := strings.LastIndex(e.Note, "@"); at >= 0 && !strings.Contains(value, "@") {
		if how, ok := channel(e.Note[at+1:]); ok {
			e.How, e.Note = how, strings.TrimSpace(e.Note[:at])
			return value, true, nil
		}
	}
	at := strings.LastIndex(value, "@")
	if at < 0 || at > 0 && value[at-1] != ' ' && text {
		return value, false, nil
	}
	if how, ok := channel(value[at+1:]); ok {
		e.How = how
		return strings.TrimSpace(value[:at]), true, nil
	}
	if text {
		return value, false, nil
	}
	return "", false, wrong("say @seen, @measured, @paper, @owner or @secondhand", "%q is no way of knowing", strings.ToLower(value[at:]))
}

// channel finds a way of knowing by the beginning of its name.
func channel(word string) (advisor.Channel, bool) {
	word = strings.ToLower(strings.TrimSpace(word))
	for i, name := range advisor.Channels {
		if word != "" && strings.HasPrefix(name, word) {
			return advisor.Channel(i), true
		}
	}
	return advisor.Nohow, false
}

// unseen and unsaid are the words for hidden and can't tell.
var (
	unseen = []string{"hidden", "cannot be seen until something is off", "cannot be seen", "can't see", "cant see", "not visible", "x"}
	unsaid = []string{"can't tell", "cannot be told", "cant tell", "cannot tell", "can't say", "don't know", "dont know", "do not know", "not known", "unknown", "no idea", "not sure", "dk", "c"}
)

// value reads the value itself into the entry, and says it back.
func (p *Prompt) value(s string, e *casefile.Entry) (string, error) {
	plain := strings.ToLower(strings.NewReplacer("’", "'", "`", "'").Replace(s))
	if slices.Contains(unseen, plain) {
		e.Is = casefile.Hidden
		return "cannot be seen until something is off", nil
	}
	if slices.Contains(unsaid, plain) {
		e.Is = casefile.CantTell
		return "cannot be told", nil
	}
	if s == "" {
		return "", wrong(p.Form, "there is no answer before the remark")
	}
	switch p.Question.Kind {
	case advisor.YesNoKind:
		return yesno(plain, e)
	case advisor.Choice, advisor.Choices:
		return p.options(plain, e)
	case advisor.NumberKind:
		shown, err := p.figure(plain, e)
		return asTyped(shown, s), err
	case advisor.Year:
		shown, err := p.year(plain, e)
		return asTyped(shown, s), err
	case advisor.ReadingsKind:
		shown, err := p.readings(plain, e)
		return asTyped(shown, s), err
	}
	e.Is = strings.TrimSuffix(strings.TrimPrefix(s, `"`), `"`)
	return fmt.Sprint(e.Is), nil
}

// asTyped gives the words in brackets, which were read in small letters, as they
// were typed: 62 F, not 62 f.
func asTyped(shown, typed string) string {
	before, inner, ok := strings.Cut(shown, " (")
	if !ok {
		return shown
	}
	words := strings.Fields(strings.TrimSuffix(inner, ")"))
	for i, w := range words {
		for _, as := range strings.Fields(typed) {
			if strings.EqualFold(as, w) {
				words[i] = as
			}
		}
	}
	return before + " (" + strings.Join(words, " ") + ")"
}

func yesno(s string, e *casefile.Entry) (string, error) {
	switch s {
	case "y", "yes", "yep", "yeah", "true", "aye", "not no":
		e.Is = true
		return "yes", nil
	case "n", "no", "nope", "false", "not yes", "none":
		e.Is = false
		return "no", nil
	}
	return "", wrong("yes, no, hidden or can't tell", "%q is neither yes nor no", s)
}

// judged lets the case's own reader have the last word.
func (p *Prompt) judged(e casefile.Entry, shown string) (Reply, error) {
	text, err := e.TOML(p.Question)
	if err != nil {
		return Reply{}, wrong("", "%s", err)
	}
	a, faults := casefile.Judge(p.Question, text, p.day)
	if len(faults) > 0 {
		return Reply{}, &FieldError{faults[0].Message, faults[0].Help}
	}
	if a.Value.State == advisor.NotAsked {
		return Reply{}, errors.New("the answer says nothing")
	}
	if e.How != p.Question.How {
		shown += " (" + e.How.String() + ")"
	}
	return Reply{Entry: e, Answer: a, Shown: shown}, nil
}
