package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// SpecimenYear is the decimal year to which ages in specimens are reckoned
// unless one says case_year itself: fixed, so that a book does not go stale.
const SpecimenYear = 2025.8

// specimenReader reads the examples that stand beside conditions. It keeps a
// list of its own, since it works while the conditions are compiled.
type specimenReader struct {
	decoder
	b         *builder
	questions map[string]*advisor.Question
}

func (b *builder) readSpecimens() diag.List {
	r := specimenReader{b: b, questions: map[string]*advisor.Question{}}
	for i := range b.book.Questions {
		r.questions[b.book.Questions[i].ID] = &b.book.Questions[i]
	}
	for _, it := range b.read() {
		for _, p := range it.conds {
			r.specimensOf(p)
		}
		if t, ok := it.value.(*advisor.Type); ok && it.node.Get("answers") != nil {
			r.known(t, it.node.Get("answers"))
		}
	}
	return r.list
}

func (r *specimenReader) specimensOf(p *pending) {
	if p.node == nil {
		for _, key := range p.keys {
			if key.Line > 0 {
				r.list.Errorf(key, "stray-specimen", "there is no condition here that these could pin")
			}
		}
		return
	}
	add := func(role int, want advisor.Truth, base *advisor.Specimen) {
		for _, n := range p.specs[role] {
			if r.full() {
				return
			}
			before := len(r.list)
			s := r.specimen(n)
			s.Want = want
			if r.list[before:].HasErrors() {
				s.Want = advisor.Unknown // not to be blamed again when it is run
			}
			if base != nil {
				s = changed(base, s)
			}
			p.to.Specimens = append(p.to.Specimens, s)
		}
	}
	add(fires, advisor.True, nil)
	var first *advisor.Specimen
	if len(p.to.Specimens) > 0 {
		one := p.to.Specimens[0]
		first = &one
	}
	for _, role := range []int{butNot, butFires} {
		if first == nil && len(p.specs[role]) > 0 {
			r.list.Errorf(p.keys[role], "stray-specimen", "there is no first specimen that these could change").Help = "give one on which the condition is true"
			return
		}
	}
	add(firesNot, advisor.False, nil)
	add(butNot, advisor.False, first)
	add(butFires, advisor.True, first)
}

// specimen reads one table of answers.
func (r *specimenReader) specimen(n *tomltext.Node) advisor.Specimen {
	s := advisor.Specimen{At: n.Span}
	if year := n.Get("case_year"); year != nil {
		s.Year, _ = r.number(year, "case_year", 1900, 2200)
	}
	by := s.Year
	if by == 0 {
		by = SpecimenYear
	}
	for i := range n.Fields {
		f := &n.Fields[i]
		switch q := r.questions[f.Key]; {
		case f.Key == "case_year":
		case f.Key == "done":
			for _, op := range r.listOf(f, "operations") {
				r.b.follow(&r.list, reference{anOperation, op.Str, op.Span})
				s.Done = append(s.Done, op.Str)
			}
		case q == nil:
			r.noQuestion(f)
		default:
			answers, faults := casefile.ReadAnswers(q, f.Value, by)
			r.list = append(r.list, faults...)
			s.Answers = append(s.Answers, answers...)
		}
	}
	return s
}

func (r *specimenReader) noQuestion(f *tomltext.Field) {
	d := r.list.Errorf(f.KeySpan, "unknown-question", "there is no question %q", f.Key)
	d.Help = diag.DidYouMean(f.Key, r.b.ids("question"))
	if of := r.b.live["derived"][f.Key]; of != nil {
		d.Help = "it is a derived value: give the answers from which it is computed"
		d.Related = []diag.Related{{At: of.at, Message: "declared here"}}
	}
}

// changed is a specimen with some answers replaced or added.
func changed(base *advisor.Specimen, by advisor.Specimen) advisor.Specimen {
	s := advisor.Specimen{Year: base.Year, Done: base.Done, Want: by.Want, At: by.At}
	if base.Want == advisor.Unknown {
		s.Want = advisor.Unknown
	}
	if by.Year != 0 {
		s.Year = by.Year
	}
	if by.Done != nil {
		s.Done = by.Done
	}
	for _, a := range base.Answers {
		if !slices.ContainsFunc(by.Answers, func(x advisor.Answer) bool { return x.Question == a.Question }) {
			s.Answers = append(s.Answers, a)
		}
	}
	s.Answers = append(s.Answers, by.Answers...)
	return s
}
