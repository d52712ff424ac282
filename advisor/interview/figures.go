package interview

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"longstand/advisor/casefile"
)

// hedge is how people put a figure less than exactly: words before or behind it.
type hedge struct{ before, behind []string }

// The hedges of a figure. Each is cut off.
var (
	asAbout = hedge{[]string{"about ", "around ", "roughly ", "approximately ", "approx. ", "approx ", "circa ", "ca. ", "ca ", "some ", "maybe ", "perhaps ",
		"nearly ", "almost ", "just over ", "just under ", "~"},
		[]string{"-ish", "ish", " or so", " or thereabouts", " odd", "-odd", " give or take", " roughly", " approx", " approx."}}
	asLeast = hedge{[]string{"at least ", "no less than ", "not less than ", "more than ", "over ", "above ", "not under ", "upwards of ", "minimum ", "min ", ">=", ">", "≥"},
		[]string{" or more", " or over", " and over", " and more", " and up", " at least", " plus", "+"}}
	asMost = hedge{[]string{"at most ", "no more than ", "not more than ", "less than ", "fewer than ", "under ", "below ", "up to ", "not over ", "maximum ", "max ", "<=", "<", "≤"},
		[]string{" or less", " or fewer", " or under", " at most"}}
)

// hedgedInside is a hedge between a figure and its unit, as in "10-ish years".
var hedgedInside = regexp.MustCompile(`^(.*[\pL\d])((?:-| )?(?:ish|odd)|\+| plus| or so| or more) (\pL.*)$`)

// denies are the hedges that begin with a not; any other not is no answer.
var denies = []string{"not less than ", "not under ", "not more than ", "not over "}

// between are the ways to write a range; a bare hyphen only where no fraction stands.
var between = []*regexp.Regexp{
	regexp.MustCompile(`^between (.+) and (.+)$`),
	regexp.MustCompile(`^(?:from )?(.+?) (?:to|until|or) (.+)$`),
	regexp.MustCompile(`^(.+?) ?(?:\.\.+|…|–) ?(.+)$`),
	regexp.MustCompile(`^(.+?) - (.+)$`),
	regexp.MustCompile(`^([^/-]*\d[^/-]*)-(\d[^/]*)$`),
}

// cut takes one of some beginnings or ends off.
func (h hedge) cut(s string) (string, bool) {
	for _, b := range h.before {
		if rest, ok := strings.CutPrefix(s, b); ok {
			return strings.TrimSpace(rest), true
		}
	}
	for _, a := range h.behind {
		if rest, ok := strings.CutSuffix(s, a); ok && rest != "" {
			return strings.TrimSpace(rest), true
		}
	}
	return s, false
}

// figure reads a number as people say it: "9.6 bar", "about ten", "5 to 8",
// "at least 3", "60k miles".
func (p *Prompt) figure(s string, e *casefile.Entry) (string, error) {
	denied := func(d string) bool { return strings.HasPrefix(s, d) }
	if denied("not ") && !slices.ContainsFunc(denies, denied) {
		return "", wrong("a figure, or a range as: 5 to 8", "a number is not answered by what it is not")
	}
	if p.Question.Unit == "years" {
		if shown, ok, err := p.ageSince(s, e); ok {
			return shown, err
		}
		s = strings.TrimSuffix(strings.TrimSuffix(s, " ago"), " old")
	}
	s = hedgedInside.ReplaceAllString(s, "$1 $3$2")
	rest, rough := asAbout.cut(s)
	if rough {
		rest, _ = asAbout.cut(rest) // about ten or so
	}
	if rest, ok := asLeast.cut(rest); ok {
		m, err := p.measure(rest)
		e.From = &m.value
		return "at least " + m.shown, err
	}
	if rest, ok := asMost.cut(rest); ok {
		m, err := p.measure(rest)
		e.To = &m.value
		return "at most " + m.shown, err
	}
	if low, high, ok, err := p.ends(rest); err != nil {
		return "", err
	} else if ok {
		shown, err := p.span(low.value, high.value, e)
		if err == nil && asSaid(low.shown)+asSaid(high.shown) != "" {
			shown += " (" + cmp.Or(asSaid(low.shown), low.shown) + " to " + cmp.Or(asSaid(high.shown), high.shown) + ")"
		}
		return shown, err
	}
	m, err := p.measure(rest)
	if err != nil {
		return "", err
	}
	if rough {
		return p.about(m, e)
	}
	e.Is = m.value
	return m.shown, nil
}

// about is the range that a rough figure stands for, said back with the figure
// when that was converted.
func (p *Prompt) about(m measured, e *casefile.Entry) (string, error) {
	low, high := p.roughly(m.value)
	shown, err := p.span(low, high, e)
	if said := asSaid(m.shown); said != "" && err == nil {
		shown += " (about " + said + ")"
	}
	return shown, err
}

// asSaid is what stands in brackets behind a converted figure, "" where nothing
// was converted.
func asSaid(shown string) string {
	_, said, _ := strings.Cut(shown, "(")
	return strings.TrimSuffix(said, ")")
}

// span is a range, in the entry and in words.
func (p *Prompt) span(low, high float64, e *casefile.Entry) (string, error) {
	if low > high {
		return "", wrong("the lesser figure first", "%s is more than %s", plain(low), plain(high))
	}
	if low == high {
		e.Is = low
		return strings.TrimSpace(p.clear(plain(low)) + " " + p.unit()), nil
	}
	e.Is = plain(low) + " to " + plain(high)
	return strings.TrimSpace(p.clear(plain(low)) + " to " + p.clear(plain(high)) + " " + p.unit()), nil
}

// ends reads a range; a unit behind the second figure is the first one's too.
func (p *Prompt) ends(s string) (low, high measured, ok bool, err error) {
	for _, shape := range between {
		m := shape.FindStringSubmatch(s)
		if m == nil {
			continue
		}
		left, right := m[1], m[2]
		if many := manyOf(right); many != "" && manyOf(left) == "" && unitOf(left) == "" {
			left += " " + many // 60 to 65k
		}
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
	s = inFigures(s)
	return strings.TrimSpace(s[strings.LastIndexAny(s, "0123456789½¼¾⅛⅜⅝⅞⅓⅔")+1:])
}

// roughly is a tenth either way, in whole steps of the question's resolution and within its range.
func (p *Prompt) roughly(x float64) (low, high float64) {
	step := p.Question.Step
	if step == 0 {
		step = 1
	}
	tenth := max(math.Abs(x)/10, step/2)
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
