package engine

import (
	"cmp"
	"slices"

	"longstand/advisor"
)

// Open lists the walk-round questions that can still matter, in the order to
// ask them. It is Advise without everything else, for an interview that wants
// the next question after every answer.
func (e *Engine) Open(c *advisor.Case) []advisor.OpenQuestion {
	ahead := e.feedsBeside(c)
	return e.weigh(c).openQuestions(<-ahead)
}

// feedsBeside looks ahead while the case is weighed: neither reads what the
// other writes.
func (e *Engine) feedsBeside(c *advisor.Case) <-chan map[int]*feed {
	out := make(chan map[int]*feed, 1)
	go func() { out <- e.lookAhead(c).feeds() }()
	return out
}

// openQuestions lists the walk-round questions that can still matter, in the
// order to ask them: within a station, those that structure reads first, then
// by worth for the minutes. What structure reads has no worth in money.
func (s *situation) openQuestions(feeds map[int]*feed) []advisor.OpenQuestion {
	var out []advisor.OpenQuestion
	for q := range s.e.book.Questions {
		question := &s.e.book.Questions[q]
		if question.Station == "inspection" || s.asked[q] {
			continue
		}
		f := feeds[q]
		if f == nil && !question.Always {
			continue
		}
		o := advisor.OpenQuestion{ID: question.ID, Station: question.Station}
		if f != nil {
			o.Structure = f.structure
			o.Feeds, o.Suspects = s.feedNames(f)
			if !f.structure {
				sh := s.showing([]int{q})
				pr := s.prospect(&sh, nil, question.Minutes)
				o.Worth, o.Net = pr.worth, pr.net
			}
		}
		out = append(out, o)
	}
	slices.SortStableFunc(out, func(a, b advisor.OpenQuestion) int {
		return cmp.Or(cmp.Compare(slices.Index(advisor.Stations, a.Station), slices.Index(advisor.Stations, b.Station)),
			last(a.Structure, b.Structure), cmp.Compare(b.Net, a.Net))
	})
	return out
}
