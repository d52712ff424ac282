package interview

import (
	"regexp"
	"strconv"
	"strings"

	"longstand/advisor/casefile"
	"longstand/advisor/reckon"
)

// measured is one figure in the question's unit, and as it is said back.
type measured struct {
	value float64
	shown string
}

// measure reads one figure with or without a unit.
func (p *Prompt) measure(s string) (measured, error) {
	if p.Question.Unit == "years" {
		if m, ok, err := p.age(s); ok {
			return m, err
		}
	}
	if p.Question.Unit == "money" {
		var err error
		if s, err = p.sumOf(s); err != nil {
			return measured{}, err
		}
	}
	said := s
	if s = inFigures(s); isKelvin(said, p.Question.Unit) {
		s = said
	}
	if err := p.ambiguous(said, s); err != nil {
		return measured{}, err
	}
	unit := p.Question.Unit
	if unit == "money" {
		unit = ""
	}
	x, shown, err := reckon.Measure(s, unit)
	if err != nil {
		return measured{}, wrong(p.Form, "%s", err)
	}
	if strings.Contains(shown, "(") {
		// Six figures are more than any instrument gives, and read clean in the file.
		x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 6, 64), 64)
	}
	if unit == "" {
		shown = strings.TrimSpace(plain(x) + " " + p.unit())
	}
	if shown == "1 years" {
		shown = "1 year"
	}
	return measured{x, p.clear(shown)}, nil
}

// hedged tells whether a figure is put less than exactly.
func hedged(s string) bool {
	for _, h := range []hedge{asAbout, asLeast, asMost} {
		if _, ok := h.cut(s); ok {
			return true
		}
	}
	return vague.MatchString(s) || strings.Contains(s, " to ")
}

func (p *Prompt) unit() string {
	if p.Question.Unit == "money" {
		return p.currency
	}
	return p.Question.Unit
}

// readings reads several figures; a unit at the end is that of all without one.
func (p *Prompt) readings(s string, e *casefile.Entry) (string, error) {
	if hedged(s) {
		return "", wrong("the figures as read, a space between them, or can't tell", "a reading is one figure, and %q is none", s)
	}
	items := p.apart(s)
	unit := unitOf(items[len(items)-1])
	var values []float64
	var shown []string
	converted := false
	for _, item := range items {
		if unitOf(item) == "" && unit != "" {
			item += " " + unit
		}
		m, err := p.measure(item)
		if err != nil {
			return "", err
		}
		values = append(values, m.value)
		converted = converted || strings.Contains(m.shown, "(")
		number, _, _ := strings.Cut(m.shown, " ")
		shown = append(shown, number)
	}
	e.Is = values
	back := strings.TrimSpace(strings.Join(shown, ", ") + " " + p.unit())
	if converted {
		back += " (" + s + ")"
	}
	return back, nil
}

var (
	digitsThenUnit = regexp.MustCompile(`(\d) ([^\d\s.,;/+-])`)
	separators     = regexp.MustCompile(`\s*;\s*|,\s+|\s+`)
)

// apart splits readings at spaces, semicolons and commas with a space behind;
// without any, at slashes or commas when there are two at least.
func (p *Prompt) apart(s string) []string {
	s = strings.ReplaceAll(strings.TrimSpace(s), " and ", "; ")
	s = digitsThenUnit.ReplaceAllString(s, "$1\x00$2")
	var items []string
	for _, item := range separators.Split(s, -1) {
		if item = strings.ReplaceAll(item, "\x00", " "); item != "" {
			items = append(items, item)
		}
	}
	if len(items) == 1 {
		for _, mark := range []string{"/", ","} {
			if strings.Count(items[0], mark) > 1 {
				return strings.Split(items[0], mark)
			}
		}
	}
	if len(items) == 0 {
		return []string{s}
	}
	return items
}
