package report

import (
	"slices"

	"longstand/advisor"
)

// Spoken is an advice in the words of the shop's region (sump or oil pan, petrol
// or gasoline): every text of the book in it, and nothing that a person wrote.
// The advice itself stays as it is; where the region has no words of its own it
// is given back.
func Spoken(a *advisor.Advice, b *advisor.Book) *advisor.Advice {
	r := newRegion(b.Words, a.Settings)
	if r.atHome() {
		return a
	}
	out := *a
	say := func(texts ...*string) {
		for _, t := range texts {
			*t = r.say(*t)
		}
	}
	out.Holds = inEach(a.Holds, func(h *advisor.HoldAdvice) { say(&h.Name, &h.Because, &h.Until) })
	out.Inspections = inEach(a.Inspections, func(k *advisor.InspectionAdvice) {
		say(&k.Name, &k.Reason, &k.Breaks)
		k.Cautions = inEach(k.Cautions, func(c *advisor.CautionAdvice) { say(&c.Text, &c.Defers) })
	})
	out.Operations = inEach(a.Operations, func(o *advisor.OperationAdvice) {
		say(&o.Name, &o.Reason, &o.Until, &o.Variant)
		o.Cautions = inEach(o.Cautions, func(c *advisor.CautionAdvice) { say(&c.Text, &c.Defers) })
	})
	out.Suspects = inEach(a.Suspects, func(k *advisor.SuspectAdvice) {
		say(&k.Name, &k.Because, &k.BaseNote)
		k.Ledger = inEach(k.Ledger, func(n *advisor.LedgerLine) { say(&n.Name, &n.Because) })
	})
	out.Standing = inEach(a.Standing, func(s *advisor.StandingAdvice) { say(&s.Because) })
	out.Derived = inEach(a.Derived, func(d *advisor.DerivedValue) { say(&d.Name, &d.Because) })
	out.Routes = inEach(a.Routes, func(w *advisor.RouteAdvice) { say(&w.Name, &w.Place, &w.Why) })
	out.Total.Lines = inEach(a.Total.Lines, func(n *advisor.Line) { say(&n.Name) })
	out.Notes = inEach(a.Notes, func(n *string) { say(n) })
	return &out
}

// inEach changes the items of a copy of a list.
func inEach[T any](list []T, change func(*T)) []T {
	out := slices.Clone(list)
	for i := range out {
		change(&out[i])
	}
	return out
}

// SpokenWhy is what belongs to one id, in the words and units of the shop's
// region.
func SpokenWhy(a *advisor.Advice, b *advisor.Book, w *advisor.Why) *advisor.Why {
	l, err := newLetter(a, b, LetterOptions{})
	if err != nil {
		return w // the phrases are the program's own; without them in the book's words
	}
	out := *w
	for _, t := range []*string{&out.Name, &out.Because, &out.Now} {
		*t = l.region.say(*t)
	}
	out.Turns = inEach(w.Turns, func(t *advisor.Turn) {
		for _, s := range []*string{&t.Name, &t.Written, &t.Now} {
			*s = l.region.say(*s)
		}
		t.Ways = inEach(t.Ways, func(f *advisor.Finding) { f.Name = l.region.say(f.Name) })
		q := l.b.Question(t.Question)
		if q != nil && (q.Kind == advisor.NumberKind && t.Value.Low == t.Value.High || q.Kind == advisor.ReadingsKind) {
			t.Written = l.value(q, t.Value)
			if told := l.answer(t.Question); told != nil {
				t.Now = l.value(q, told.Value) + " (" + told.How.String() + ")"
			}
		}
	})
	return &out
}

// answer is the one answer of the case to a question; nil when there is none,
// or more than one.
func (l *letter) answer(question string) (one *advisor.Answer) {
	for i := range l.a.Case.Answers {
		if a := &l.a.Case.Answers[i]; a.Question == question && a.Value.State == advisor.Told {
			if one != nil {
				return nil
			}
			one = a
		}
	}
	return one
}
