package interview

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// The ways in which people hedge a figure. Each is cut off, front or back.
var (
	aboutBefore = []string{"about ", "around ", "roughly ", "approximately ", "approx. ", "approx ", "circa ", "ca. ", "ca ", "some ", "maybe ", "perhaps ", "~"}
	aboutAfter  = []string{"-ish", "ish", " or so", " odd"}
	leastBefore = []string{"at least ", "more than ", "over ", "above ", "not under ", ">= ", ">=", "> ", ">"}
	leastAfter  = []string{" or more", " plus", "+"}
	mostBefore  = []string{"at most ", "less than ", "under ", "below ", "up to ", "not over ", "<= ", "<=", "< ", "<"}
	mostAfter   = []string{" or less"}
)

// between are the ways to write a range; a bare hyphen only where no fraction stands.
var between = []*regexp.Regexp{
	regexp.MustCompile(`^(?:from |between )?(.+?) (?:to|and|until|or) (.+)$`),
	regexp.MustCompile(`^(.+?) ?(?:\.\.+|…|–) ?(.+)$`),
	regexp.MustCompile(`^(.+?) - (.+)$`),
	regexp.MustCompile(`^([^/-]*\d[^/-]*)-(\d[^/]*)$`),
}

// cut takes one of some beginnings or ends off.
func cut(s string, before, after []string) (string, bool) {
	for _, b := range before {
		if rest, ok := strings.CutPrefix(s, b); ok {
			return strings.TrimSpace(rest), true
		}
	}
	for _, a := range after {
		if rest, ok := strings.CutSuffix(s, a); ok && rest != "" {
			return strings.TrimSpace(rest), true
		}
	}
	return s, false
}

// figure reads a number as people say it: "9.6 bar", "about ten", "5 to 8",
// "at least 3", "1970s".
func (p *Prompt) figure(s string, e *casefile.Entry) (string, error) {
	if strings.HasPrefix(s, "not ") && !strings.HasPrefix(s, "not under ") && !strings.HasPrefix(s, "not over ") {
		return "", wrong("a figure, or a range as: 5 to 8", "a number is not answered by what it is not")
	}
	if low, ok := decade(s); ok && p.Question.Kind == advisor.Year {
		return p.span(low, low+9, e)
	}
	rest, about := cut(s, aboutBefore, aboutAfter)
	if rest, ok := cut(rest, leastBefore, leastAfter); ok {
		m, err := p.measure(rest)
		e.From = &m.value
		return "at least " + m.shown, err
	}
	if rest, ok := cut(rest, mostBefore, mostAfter); ok {
		m, err := p.measure(rest)
		e.To = &m.value
		return "at most " + m.shown, err
	}
	if low, high, ok, err := p.ends(rest); err != nil {
		return "", err
	} else if ok {
		shown, err := p.span(low.value, high.value, e)
		if said := asSaid(low.shown) + " to " + asSaid(high.shown); err == nil && said != " to " {
			shown += " (" + said + ")"
		}
		return shown, err
	}
	m, err := p.measure(rest)
	if err != nil {
		return "", err
	}
	if about {
		low, high := p.roughly(m.value)
		return p.span(low, high, e)
	}
	e.Is = m.value
	return m.shown, nil
}

// asSaid is what stands in brackets behind a converted figure, "" where nothing
// was converted.
func asSaid(shown string) string {
	_, said, _ := strings.Cut(shown, "(")
	return strings.TrimSuffix(said, ")")
}

var decadeShape = regexp.MustCompile(`^(?:the )?((?:18|19|20)\d)0'?s$`)

// decade reads "1970s".
func decade(s string) (float64, bool) {
	m := decadeShape.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	x, err := strconv.Atoi(m[1] + "0")
	return float64(x), err == nil
}

// span is a range, in the entry and in words.
func (p *Prompt) span(low, high float64, e *casefile.Entry) (string, error) {
	if low > high {
		return "", wrong("the lesser figure first", "%s is more than %s", plain(low), plain(high))
	}
	e.Is = plain(low) + " to " + plain(high)
	if low == high {
		e.Is = low
	}
	return strings.TrimSpace(plain(low) + " to " + plain(high) + " " + p.unit()), nil
}

// ends reads a range; a unit behind the second figure is the first one's too.
func (p *Prompt) ends(s string) (low, high measured, ok bool, err error) {
	for _, shape := range between {
		m := shape.FindStringSubmatch(s)
		if m == nil {
			continue
		}
		left, right := m[1], m[2]
		if unit := unitOf(right); unit != "" && unitOf(left) == "" {
			left += " " + unit
		}
		if low, err = p.measure(left); err != nil {
			return low, high, true, err
		}
		high, err = p.measure(right)
		return low, high, true, err
	}
	return low, high, false, nil
}

// unitOf is what follows the last digit of a figure.
func unitOf(s string) string {
	s = inDigits(s)
	return strings.TrimSpace(s[strings.LastIndexAny(s, "0123456789½¼¾⅛⅜⅝⅞⅓⅔")+1:])
}

// roughly is a tenth either way, two years for a year, in whole steps of the
// question's resolution and within its range.
func (p *Prompt) roughly(x float64) (low, high float64) {
	step := p.Question.Step
	if step == 0 {
		step = 1
	}
	tenth := max(math.Abs(x)/10, step/2)
	if p.Question.Kind == advisor.Year {
		tenth = 2
	}
	const hair = 1e-9 // so that 9.000000001 steps are 9
	low = math.Floor((x-tenth)/step+hair) * step
	high = math.Ceil((x+tenth)/step-hair) * step
	if q := p.Question; q.Low < q.High {
		low, high = max(low, min(q.Low, x)), min(high, max(q.High, x))
	}
	return tidy(low), tidy(high)
}

func tidy(x float64) float64 {
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	return y
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
