package book

import (
	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/tomltext"
)

var typeTable = table[advisor.Type]{
	name: "type", doc: "a type of car that the shop sees often, with the answers known of it in advance",
	fields: append([]field[advisor.Type]{
		must("id", "its name at intake", func(t *advisor.Type) slot { return ownID(&t.ID) }),
		must("name", "the type in words", func(t *advisor.Type) slot { return text(&t.Name) }),
		must("answers", "what is so of every such car: question = value", func(*advisor.Type) slot { return knownSlot{} }),
	}, groundKeys(true, func(t *advisor.Type) *advisor.Ground { return &t.Ground })...),
}

// knownSlot is a table of answers. They can be read only when every question
// is there, so here no more than their form is looked at.
type knownSlot struct{}

func (knownSlot) form() form { return form{Type: asAnswers} }

func (knownSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Table || len(f.Value.Fields) == 0 {
		d.wrong(f.Value, "answers are a table, question = value")
	}
}

// known reads the answers of a known type: bare values, since how they are
// known is settled. What can only be seen on the car itself is no answer.
func (r *specimenReader) known(t *advisor.Type, n *tomltext.Node) {
	for i := range n.Fields {
		f := &n.Fields[i]
		q := r.questions[f.Key]
		switch {
		case q == nil:
			r.noQuestion(f)
			continue
		case f.Value.Kind == tomltext.Table, len(f.Value.Items) > 0 && f.Value.Items[0].Kind == tomltext.Table:
			r.list.Errorf(f.Value.Span, "wrong-kind", "a known type gives the value alone, and this is %s", f.Value.Kind).Help = "how it is known is settled: from paper, with the type's id as a note"
			continue
		}
		answers, faults := casefile.ReadAnswers(q, f.Value, SpecimenYear)
		r.list = append(r.list, faults...)
		for _, a := range answers {
			if a.Value.State != advisor.Told {
				r.list.Errorf(f.Value.Span, "not-known", "a known type cannot say that %s is not known", q.ID).Help = "leave the question out, and it is asked"
			}
			a.How, a.Note, a.Written = advisor.Paper, t.Note(), f.Value.Raw()
			t.Answers = append(t.Answers, a)
		}
	}
}
