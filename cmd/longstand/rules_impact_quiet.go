package main

import (
	"reflect"
	"slices"

	"longstand/advisor"
)

// additions are the standing rules and holds that house layers add to a book,
// by their places in it, when they change nothing else that an advice reads.
// On a case that none of them touches the advice stays as it is, and need not
// be worked out again.
type additions struct{ standing, holds []int }

// onlyAdditions compares a book with house rules to the one without. It gives
// nil when the house rules do more than add standing rules and holds, with
// questions and derived values for them to read. A known type counts as more:
// the advice tells which cases were begun as one.
func onlyAdditions(was, now *advisor.Book) *additions {
	if len(now.Withdrawn) > 0 || len(now.Types) > 0 || !sameSettings(was.Settings, now.Settings) || !sameQuestions(was, now) {
		return nil
	}
	for _, it := range now.Items() {
		if it.Layer != "" && !slices.Contains([]string{"standing", "hold", "derived", "once_over"}, it.Kind) {
			return nil
		}
	}
	if slices.ContainsFunc(now.Families, func(f advisor.Family) bool { return f.Layer != "" }) {
		return nil
	}
	a := &additions{}
	for i := range now.Standing {
		if now.Standing[i].Layer != "" {
			a.standing = append(a.standing, i)
		}
	}
	for i := range now.Holds {
		if now.Holds[i].Layer != "" {
			a.holds = append(a.holds, i)
		}
	}
	if !a.alone(was, now) {
		return nil
	}
	return a
}

// alone tells whether every rule, hold and derived value of the house is new:
// one that adjusts another changes what the book says without it.
func (a *additions) alone(was, now *advisor.Book) bool {
	for _, i := range a.standing {
		if slices.ContainsFunc(was.Standing, func(s advisor.StandingRule) bool { return s.ID == now.Standing[i].ID }) {
			return false
		}
	}
	for _, i := range a.holds {
		if slices.ContainsFunc(was.Holds, func(h advisor.Hold) bool { return h.ID == now.Holds[i].ID }) {
			return false
		}
	}
	for i := range now.Derived {
		d := &now.Derived[i]
		if d.Layer != "" && slices.ContainsFunc(was.Derived, func(x advisor.Derived) bool { return x.ID == d.ID }) {
			return false
		}
	}
	return true
}

// sameQuestions tells whether the questions of one book stand in the other as they are.
func sameQuestions(was, now *advisor.Book) bool {
	by := map[string]*advisor.Question{}
	for i := range now.Questions {
		by[now.Questions[i].ID] = &now.Questions[i]
	}
	for i := range was.Questions {
		if q := by[was.Questions[i].ID]; q == nil || !reflect.DeepEqual(q, &was.Questions[i]) {
			return false
		}
	}
	return true
}

// sameSettings compares all settings but for the places of their conditions in
// the compiled tables.
func sameSettings(was, now advisor.Settings) bool {
	for _, s := range []*advisor.Settings{&was, &now} {
		s.Hours, s.CareWhen = slices.Clone(s.Hours), slices.Clone(s.CareWhen)
		for i := range s.Hours {
			s.Hours[i].When.ID = 0
		}
		for i := range s.CareWhen {
			s.CareWhen[i].When.ID = 0
		}
	}
	return reflect.DeepEqual(was, now)
}
