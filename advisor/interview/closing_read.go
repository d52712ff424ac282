package interview

import (
	"errors"
	"fmt"
	"math"
	"math/bits"
	"regexp"
	"strconv"
	"strings"

	"longstand/advisor"
)

// Understand reads what a person typed at a prompt of a closing: a command, or
// what is to be kept, with what it is in words. It errs with a *FieldError.
func Understand(p *Prompt, typed string) (c Command, e Ending, shown string, err error) {
	q, reading := *p.Question, *p
	q.ID = strings.TrimSuffix(HoursOf, ":") // a key that TOML takes
	reading.Question = &q
	if q.Kind == advisor.Choice {
		if typed, err = p.yesOrNo(typed); err != nil {
			return None, Ending{}, "", err
		}
	}
	r, err := reading.Read(asMeant(typed))
	if f := (*FieldError)(nil); errors.As(err, &f) {
		f.Help = strings.Replace(f.Help, ", hidden, or can't tell", ", or can't tell", 1)
	}
	if err != nil || r.Command != None {
		return r.Command, Ending{}, "", err
	}
	v := &r.Answer.Value
	if r.HowTold && r.Answer.How > advisor.Measured || v.State == advisor.Hidden {
		return None, Ending{}, "", wrong(p.Form, "only what the workshop saw counts here")
	}
	if op, hours := strings.CutPrefix(p.Question.ID, HoursOf); hours {
		if v.State == advisor.Told && v.Low != v.High {
			return None, Ending{}, "", wrong(p.Form, "one figure is wanted, and this is a range")
		}
		return None, Ending{Taken: &advisor.Taken{Operation: op, Hours: v.Low, Known: v.State == advisor.Told, Note: r.Entry.Note}}, r.Shown, nil
	}
	found := advisor.Unsettled
	if v.State == advisor.Told {
		if bits.OnesCount64(v.Options) != 1 {
			return None, Ending{}, "", wrong(p.Form, "one finding is wanted")
		}
		found = strings.ReplaceAll(findings[bits.TrailingZeros64(v.Options)].ID, "_", " ")
	}
	return None, Ending{Looked: &advisor.Looked{Suspect: p.Question.ID, Found: found, Note: r.Entry.Note}}, found, nil
}

// yesOrNo takes a plain yes for found and "not there" for sound. A plain no is
// asked back: it can be said of what was looked at and of what was not.
func (p *Prompt) yesOrNo(typed string) (string, error) {
	said, aside := typed, ""
	if at := strings.IndexAny(typed, "#@"); at >= 0 {
		said, aside = typed[:at], " "+typed[at:]
	}
	switch said = strings.TrimSpace(said); strings.ToLower(said) {
	case "yes", "y", "there", "it was there":
		return "found" + aside, nil
	case "not there", "it was not there":
		return "sound" + aside, nil
	case "no", "n", "not", "none", "nothing", "not found":
		return "", wrong("say which", "%q can be sound, or not looked at", said)
	}
	return typed, nil
}

// clock is a time in hours and minutes, or in minutes.
var clock = regexp.MustCompile(`^(?:(\d+) ?(?:h|hours?) ?)?(\d+) ?(?:m|min|minutes?)\b`)

// asMeant takes "not looked at" for the option, not for what it is not, and
// "2 h 30 min" for hours.
func asMeant(typed string) string {
	typed = strings.TrimSpace(typed)
	if rest, ok := strings.CutPrefix(typed, "not looked at"); ok {
		return "not_looked_at" + rest
	}
	if m := clock.FindStringSubmatch(typed); m != nil {
		h, _ := strconv.Atoi(m[1])
		minutes, _ := strconv.Atoi(m[2])
		return plain(math.Round((float64(h)+float64(minutes)/60)*100)/100) + typed[len(m[0]):]
	}
	return typed
}

// help is the answer to help: how to answer, and the commands that it has.
func (cl *Closing) help(p *Prompt) string {
	var b strings.Builder
	b.WriteString(fold(p.Question.Help, "", "") + fold("Answer with "+p.Form+". A note goes behind it: found # at the back. Enter alone: another time.", "", ""))
	for _, c := range Commands {
		if c.Word != Station {
			fmt.Fprintf(&b, "  %s  %-8s %s\n", c.Key, c.Word, strings.ReplaceAll(strings.ReplaceAll(c.Does, "the advice so far", "the page so far"), "intake", "close"))
		}
	}
	return strings.TrimRight(b.String(), "\n")
}
