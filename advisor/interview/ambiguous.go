package interview

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	bareFraction = regexp.MustCompile(`^[+-]?(?:\d+ )?(\d+) ?/ ?(\d+)(?: (.*)|)$`)
	pointThree   = regexp.MustCompile(`^[+-]?([1-9]\d{0,2})\.(\d{3})(?:[^\d.,].*)?$`)
	vague        = regexp.MustCompile(`^(?:a )?(?:few|several|many|some|lots?|handful|number|good many|while|long time)\b`)
)

// ambiguous asks back what two people would read in two ways: what was said,
// and the same in figures.
func (p *Prompt) ambiguous(said, s string) error {
	q := p.Question
	if vague.MatchString(said) {
		return wrong("a figure, a range as: 3 to 6, or can't tell", "%q is no figure", said)
	}
	if m := bareFraction.FindStringSubmatch(s); m != nil {
		switch bottom := m[2]; {
		case m[3] == "" && slices.Contains(lengths, q.Unit):
			return wrong("say of what, as: "+m[0]+" in", "%s can be a part of an inch or of one %s", m[0], q.Unit)
		case m[3] == "" && q.Unit == "%":
			return wrong("write it in per cent", "%s can be a part of the whole or of one per cent", m[0])
		case !slices.Contains(lengths, q.Unit) && !slices.Contains([]string{"2", "3", "4"}, bottom):
			return wrong("write it with a point, or as: "+m[1]+" to "+bottom, "%s can be a part of one, or a range", m[0])
		}
	}
	if m := pointThree.FindStringSubmatch(s); m != nil && (q.Step == 0 || q.Step >= 1) {
		whole, _ := strconv.ParseFloat(m[1]+m[2], 64)
		if q.Low >= q.High || whole <= q.High {
			less := strings.TrimSuffix(strings.TrimRight(m[1]+"."+m[2], "0"), ".")
			if len(less) == len(m[1]+m[2])+1 {
				less += "0"
			}
			return wrong("write one of these", "%s.%s can be read as %s or as %s", m[1], m[2], plain(whole), less)
		}
	}
	return nil
}

// lengths are the units of questions in which a part may be meant of an inch.
var lengths = []string{"mm", "cm", "in"}

// isKelvin tells that a k behind a temperature is no thousand.
func isKelvin(s, unit string) bool {
	return slices.Contains([]string{"C", "F", "K"}, unit) && strings.HasSuffix(s, "k")
}

// clear shows a figure so that nobody, and no second reading, takes its point
// for a mark of thousands.
func (p *Prompt) clear(shown string) string {
	number, unit, _ := strings.Cut(shown, " ")
	if pointThree.MatchString(number) && p.ambiguous(number, number) != nil {
		return strings.TrimSpace(number + "0 " + unit)
	}
	return shown
}
