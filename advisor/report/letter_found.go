package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// looked tells what is known of the car: first what the shop saw and measured,
// then what papers and people said; photographs stand beside their finding.
func (l *letter) looked() section {
	s := section{ID: "found", Title: l.say("title.found", nil), Shape: wideShape}
	for _, told := range []bool{false, true} {
		var found []pair
		for _, st := range advisor.Stations {
			for i := range l.b.Questions {
				if q := &l.b.Questions[i]; q.Station == st {
					found = append(found, l.answersTo(q, told)...)
				}
			}
		}
		if len(found) == 0 {
			continue
		}
		title := "found.seen"
		if told {
			title = "found.told"
		}
		s.Blocks = append(s.Blocks, block{Kind: pairsBlock, Text: l.say(title, nil), Pairs: found})
	}
	return s
}

// answersTo are one question's answers, of the shop or of others.
func (l *letter) answersTo(q *advisor.Question, told bool) []pair {
	var out []pair
	for i := range l.a.Case.Answers {
		an := &l.a.Case.Answers[i]
		if an.Question != q.ID || (an.How.Stage() > 0) != told {
			continue
		}
		if q.ID == "stop_sum" || q.ID == "ring_sum" {
			continue // said among the terms
		}
		if an.Value.State == advisor.Told || len(an.Photos) > 0 {
			out = append(out, l.finding(q, an))
		}
	}
	return out
}

// finding is one answer in words, with its photographs.
func (l *letter) finding(q *advisor.Question, an *advisor.Answer) pair {
	words := l.value(q, an.Value)
	switch an.Value.State {
	case advisor.Hidden:
		words = l.say("unseen.hidden", nil)
	case advisor.CantTell:
		words = l.say("unseen.cannot", nil)
	}
	how := ""
	if an.How != advisor.Owner && (an.How != q.How || an.How.Stage() > 0) {
		how = l.say("known."+an.How.String(), nil)
	}
	p := pair{Lead: l.title(q.Name), Texts: []string{l.say("found.line", with{"Found": words, "How": how, "Note": an.Note})}}
	for _, ph := range an.Photos {
		p.Photos = append(p.Photos, l.shot(ph.File, l.say("photo.alt", with{"Name": l.title(q.Name), "Found": words})))
	}
	return p
}

// value says what an answer leaves possible, in the question's own words.
func (l *letter) value(q *advisor.Question, v advisor.Value) string {
	switch q.Kind {
	case advisor.YesNoKind:
		return l.say([4]string{"value.any", "value.no", "value.yes", "value.either"}[v.Options&3], nil)
	case advisor.Choice:
		return l.name(strings.Join(options(q, v.Options), l.say("value.or", nil)+" "))
	case advisor.Choices:
		if v.Yes == 0 {
			return l.say("value.none", nil)
		}
		return l.name(strings.Join(options(q, v.Yes), ", "))
	case advisor.Year:
		if v.Low == v.High {
			return fmt.Sprintf("%.0f", v.Low)
		}
		return l.say("value.range", with{"Low": fmt.Sprintf("%.0f", v.Low), "High": fmt.Sprintf("%.0f", v.High)})
	case advisor.NumberKind:
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

// notLooked tells what has not been seen and why: looks still to come by what
// stands before them, and what hides until something is off.
func (l *letter) notLooked() section {
	s := section{ID: "unseen", Title: l.say("title.unseen", nil), Shape: wideShape}
	var why []pair
	put := func(reason, words string) {
		i := slices.IndexFunc(why, func(p pair) bool { return p.Lead == reason })
		if i < 0 {
			i, why = len(why), append(why, pair{Lead: reason})
		}
		why[i].Texts = append(why[i].Texts, advisor.Sentence(words))
	}
	for i := range l.a.Inspections {
		if k := &l.a.Inspections[i]; k.Advised {
			put(l.whyNotYet(k), l.name(k.Name))
		}
	}
	for i := range l.a.Case.Answers {
		an := &l.a.Case.Answers[i]
		phrase := map[advisor.State]string{advisor.Hidden: "unseen.hidden", advisor.CantTell: "unseen.cannot"}[an.Value.State]
		if q := l.b.Question(an.Question); phrase != "" && q != nil {
			put(l.say(phrase, nil), l.say("unseen.note", with{"Name": l.name(q.Name), "Note": an.Note}))
		}
	}
	if len(why) > 0 {
		s.Blocks = append(s.Blocks, block{Kind: pairsBlock, Pairs: why})
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
	return l.say("unseen.not_yet", nil)
}
