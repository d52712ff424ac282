package report

import (
	"math"
	"strconv"
	"strings"

	"longstand/advisor"
)

// looked tells what is known of the car: first what the shop saw and measured,
// then what papers and people said.
func (l *letter) looked() section {
	s := section{ID: "found", Title: l.say("title.found", nil)}
	for _, told := range []bool{false, true} {
		var rows [][]string
		for _, st := range advisor.Stations {
			for i := range l.b.Questions {
				q := &l.b.Questions[i]
				if q.Station == st {
					rows = append(rows, l.answersTo(q, told)...)
				}
			}
		}
		if len(rows) == 0 {
			continue
		}
		caption := "found.seen"
		if told {
			caption = "found.told"
		}
		s.Blocks = append(s.Blocks, block{Kind: tableBlock, Text: l.say(caption, nil), Short: true, Rows: rows,
			Columns: []string{l.say("found.what", nil), l.say("found.how", nil), l.say("found.known", nil)}})
	}
	return s
}

// answersTo are the rows of one question's answers, of the shop or of others.
func (l *letter) answersTo(q *advisor.Question, told bool) [][]string {
	var rows [][]string
	for i := range l.a.Case.Answers {
		an := &l.a.Case.Answers[i]
		if an.Question != q.ID || (an.How.Stage() > 0) != told || an.Value.State != advisor.Told {
			continue
		}
		if q.ID == "stop_sum" || q.ID == "ring_sum" {
			continue // said among the terms
		}
		how := l.say("known."+an.How.String(), nil)
		if an.Note != "" {
			how += "; " + an.Note
		}
		rows = append(rows, []string{l.title(q.Name), l.value(q, an.Value), how})
	}
	return rows
}

// value says what an answer leaves possible, in the question's own words.
func (l *letter) value(q *advisor.Question, v advisor.Value) string {
	switch q.Kind {
	case advisor.YesNoKind:
		return [4]string{"", "no", "yes", "yes or no"}[v.Options&3]
	case advisor.Choice:
		return l.name(strings.Join(options(q, v.Options), ", or "))
	case advisor.Choices:
		if v.Yes == 0 {
			return l.say("value.none", nil)
		}
		return l.name(strings.Join(options(q, v.Yes), ", "))
	case advisor.NumberKind, advisor.Year:
		return l.amount(q.Unit, v.Low, v.High)
	case advisor.ReadingsKind:
		var out []string
		for _, x := range v.Readings {
			out = append(out, l.figure(q.Unit, x))
		}
		return strings.TrimSpace(strings.Join(out, ", ") + " " + l.unit(q.Unit))
	}
	return v.Text
}

// amount writes what is left possible of a number.
func (l *letter) amount(unit string, low, high float64) string {
	words := l.figure(unit, low)
	switch {
	case math.IsInf(low, -1) && math.IsInf(high, 1):
		return l.say("value.any", nil)
	case math.IsInf(low, -1):
		words = l.say("value.most", with{"Amount": l.figure(unit, high)})
	case math.IsInf(high, 1):
		words = l.say("value.least", with{"Amount": words})
	case low != high:
		words = l.say("value.range", with{"Low": words, "High": l.figure(unit, high)})
	}
	return strings.TrimSpace(words + " " + l.unit(unit))
}

// imperial gives the unit that stands for a metric one, and how it is reckoned:
// times a factor, plus a shift (NIST SP 811, appendix B), to so many decimals.
var imperial = map[string]struct {
	unit          string
	factor, shift float64
	decimals      int
}{"km": {"miles", 1 / 1.609344, 0, 0}, "mm": {"in", 1 / 25.4, 0, 2}, "bar": {"psi", 14.50377, 0, 0}, "C": {"°F", 1.8, 32, 0}}

// unit writes a unit as the shop's readers know it.
func (l *letter) unit(u string) string {
	if i, ok := imperial[u]; ok && l.a.Settings.Units == "imperial" {
		return i.unit
	}
	if u == "C" {
		return "°C"
	}
	return u
}

// figure writes a number of a unit as the shop's readers know it.
func (l *letter) figure(u string, x float64) string {
	decimals := -1
	if i, ok := imperial[u]; ok && l.a.Settings.Units == "imperial" {
		x, decimals = x*i.factor+i.shift, i.decimals
	}
	return strconv.FormatFloat(x, 'f', decimals, 64)
}

// options gives the words of a set of options.
func options(q *advisor.Question, set uint64) []string {
	var out []string
	for i := range q.Options {
		if set>>i&1 == 1 {
			out = append(out, q.Options[i].Name)
		}
	}
	return out
}

// notLooked tells what has not been seen and why: looks still to come, and what
// hides until something is off.
func (l *letter) notLooked() section {
	s := section{ID: "unseen", Title: l.say("title.unseen", nil)}
	var rows [][]string
	for i := range l.a.Inspections {
		if k := &l.a.Inspections[i]; k.Advised {
			rows = append(rows, []string{l.title(k.Name), l.whyNotYet(k), l.book(k.Reason)})
		}
	}
	if len(rows) > 0 {
		s.Blocks = append(s.Blocks, block{Kind: tableBlock, Text: l.say("unseen.looks", nil), Rows: rows,
			Columns: []string{l.say("unseen.look", nil), l.say("unseen.why", nil), l.say("unseen.tells", nil)}})
	}
	var hidden []string
	for i := range l.a.Case.Answers {
		an := &l.a.Case.Answers[i]
		phrase := map[advisor.State]string{advisor.Hidden: "unseen.hidden", advisor.CantTell: "unseen.cannot"}[an.Value.State]
		if phrase == "" {
			continue
		}
		for q := range l.b.Questions {
			if l.b.Questions[q].ID == an.Question {
				hidden = append(hidden, l.say(phrase, with{"Name": l.title(l.b.Questions[q].Name), "Note": an.Note}))
			}
		}
	}
	if len(hidden) > 0 {
		s.Blocks = append(s.Blocks, block{Kind: listBlock, Items: hidden})
	}
	if n := len(l.a.Open); n > 0 {
		s.Blocks = append(s.Blocks, block{Kind: paraBlock, Text: l.say("unseen.open", with{"Count": n})})
	}
	return s
}

// whyNotYet says what stands before a look.
func (l *letter) whyNotYet(k *advisor.InspectionAdvice) string {
	p := &page{a: l.a}
	switch {
	case len(k.Blocked) > 0:
		return l.say("unseen.blocked", with{"Until": l.name(p.holdNames(k.Blocked)[0])})
	case k.WhenOpen:
		return l.say("unseen.open_anyway", nil)
	case len(k.Access) > 0:
		return l.say("unseen.access", with{"Access": l.name(joined(p.names(k.Access)))})
	}
	return l.say("unseen.minutes", with{"Time": Hours(k.Minutes)})
}
