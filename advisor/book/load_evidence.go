package book

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// signPaths: one question may reach a suspect by one way only, or its weight
// would be counted twice. Signs that share a question share a group.
func (b *builder) signPaths() {
	bySuspect := map[string][]*item{}
	for _, it := range b.items {
		if s, ok := it.value.(*advisor.Sign); ok {
			bySuspect[s.Suspect] = append(bySuspect[s.Suspect], it)
		}
	}
	for _, suspect := range b.ids("suspect") {
		signs := bySuspect[suspect]
		for i, x := range signs {
			for _, y := range signs[i+1:] {
				b.signPath(x, y)
			}
		}
	}
}

func (b *builder) signPath(x, y *item) {
	s, t := x.value.(*advisor.Sign), y.value.(*advisor.Sign)
	if s.Group != "" && s.Group == t.Group {
		return
	}
	read := b.signReads(t)
	for _, q := range b.signReads(s) {
		if !slices.Contains(read, q) {
			continue
		}
		id := b.book.Questions[q].ID
		d := b.list.Errorf(y.at, "counted-twice", "%s and %s both read %s and speak of %s", s.ID, t.ID, id, s.Suspect)
		d.Help = `give both the same group, or make them levels of one sign`
		d.Related = []diag.Related{{At: x.at, Message: s.ID}, {At: b.book.Questions[q].At, Message: id}}
		return
	}
}

func (b *builder) signReads(s *advisor.Sign) []int {
	read := b.program.Reads(s.When.ID)
	for _, l := range s.Levels {
		read = append(read, b.program.Reads(l.When.ID)...)
	}
	return read
}

// dangers: what can hurt must be looked at, and must stop something until then.
func (b *builder) dangers() {
	looked, held := map[int]bool{}, map[int]bool{}
	index := map[string]int{}
	for i := range b.book.Questions {
		index[b.book.Questions[i].ID] = i
	}
	for _, i := range b.book.Inspections {
		for _, id := range i.Answers {
			if q, ok := index[id]; ok {
				looked[q] = true
			}
		}
	}
	for _, h := range b.book.Holds {
		for _, q := range append(b.program.Reads(h.Until.ID), b.program.Reads(h.When.ID)...) {
			held[q] = true
		}
	}
	stripped := map[string]bool{}
	for _, o := range b.book.Operations {
		for _, id := range o.Looks {
			stripped[id] = true
		}
	}
	for _, it := range b.items {
		s, ok := it.value.(*advisor.Suspect)
		if !ok || s.Danger == nil || s.Danger.Good.Text == "" {
			continue
		}
		reads := b.program.Reads(s.Danger.Good.ID)
		if !stripped[s.ID] && !slices.ContainsFunc(reads, func(q int) bool { return looked[q] }) {
			d := b.list.Errorf(s.Danger.At, "danger-without-look", "no inspection answers what good of %s reads", s.ID)
			d.Help = "an inspection must answer one of: " + b.names(reads)
		}
		if !slices.ContainsFunc(reads, func(q int) bool { return held[q] }) && !b.heldByWork(s) {
			d := b.list.Errorf(s.Danger.At, "danger-without-hold", "no hold stands until the danger of %s is looked at", s.ID)
			d.Help = "a hold's when or until must read one of: " + b.names(reads)
		}
	}
}

// heldByWork tells whether a hold waits for an operation that cures a suspect.
func (b *builder) heldByWork(s *advisor.Suspect) bool {
	for _, h := range b.book.Holds {
		for _, id := range []advisor.CondID{h.When.ID, h.Until.ID} {
			for _, op := range b.program.Done(id) {
				if slices.Contains(s.CuredBy, b.book.Operations[op].ID) {
					return true
				}
			}
		}
	}
	return false
}

func (b *builder) names(questions []int) string {
	ids := make([]string, len(questions))
	for i, q := range questions {
		ids[i] = b.book.Questions[q].ID
	}
	return diag.OneOf(ids)
}
