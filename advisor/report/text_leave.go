package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// headOff is the one way in that every page turns on: to lift the head or not.
const headOff = "head_off"

// told tells whether a page says of an operation that it is left alone: of the
// ways in only the doors, and those whose call was set by hand.
func told(o *advisor.OperationAdvice) bool {
	return !o.Access || o.Overruled != nil || o.Door
}

// mostNone is how much work is named that a car has no place for.
const mostNone = 8

// leave prints what to leave shut, why and until when.
func (p *page) leave() {
	p.title("Leave alone")
	var none []string
	for _, o := range p.inOrder() {
		switch {
		case o.Call == advisor.NotFitted:
			if !o.Access {
				none = append(none, o.Name)
			}
		case o.Call == advisor.Leave && told(o):
			words := p.because(o)
			if o.Chance != nil && o.Forced == "" {
				words += " " + needed(*o.Chance)
			}
			if o.Until != "" && o.Forced != "done" && o.ContainedIn == "" {
				words += " " + until(o.Until)
			}
			p.para("  - ", "    ", fmt.Sprintf("%s [%s]: %s", o.Name, o.ID, words))
		}
	}
	if more := len(none) - mostNone; more > 0 {
		none = append(none[:mostNone], fmt.Sprintf("and %d more", more))
	}
	if len(none) > 0 {
		p.para("Not on this car: ", "  ", strings.Join(none, "; ")+".")
	}
}

// until says what a leave lasts until.
func until(words string) string {
	if strings.HasPrefix(strings.ToLower(words), "left") {
		return advisor.Sentence(words)
	}
	return "Left until: " + sentenceStart(words)
}
