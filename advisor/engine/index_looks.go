package engine

import (
	"slices"

	"longstand/advisor"
)

func (e *Engine) indexLooks() {
	for i := range e.book.Inspections {
		e.looks = append(e.looks, inspection{Inspection: &e.book.Inspections[i], minutes: e.book.Inspections[i].Minutes})
	}
	for i := range e.looks {
		l := &e.looks[i]
		answers, access := newSet(len(e.book.Questions)), newSet(len(e.ops))
		routes, needs := newSet(len(e.routes)), newSet(len(e.ops))
		parts := []*advisor.Inspection{l.Inspection}
		sum := 0
		for _, id := range l.Bundle {
			if k, ok := e.look[id]; ok {
				parts = append(parts, e.looks[k].Inspection)
				sum += e.looks[k].Minutes
			}
		}
		if l.minutes == 0 {
			l.minutes = sum
		}
		for _, p := range parts {
			for _, q := range p.Answers {
				if k, ok := e.question[q]; ok {
					answers.add(k)
				}
			}
			access.addAll(e.operationsOf(p.Access))
			routes.addAll(e.routesOf(p.Access))
			needs.addAll(e.operationsOf(p.Needs))
		}
		l.cautions = e.cautionsOf(l.Hazards)
		l.answers, l.access, l.routes, l.needs = answers.list(), access.list(), routes.list(), needs.list()
	}
}

// lookSign is a sign that an inspection's answers bear on: its conditions, and
// the answers that each of them reads.
type lookSign struct {
	*advisor.Sign
	suspect    int
	conditions []advisor.CondID
	questions  [][]int
}

// indexLookSigns finds, once for a book, what signs each inspection bears on.
func (e *Engine) indexLookSigns() {
	for i := range e.looks {
		l := &e.looks[i]
		for k := range e.suspects {
			for _, sign := range e.suspects[k].signs {
				s := lookSign{Sign: sign, suspect: k}
				for _, id := range conditionsOf(sign) {
					reads := slices.DeleteFunc(e.program.Reads(id), func(q int) bool { return !slices.Contains(l.answers, q) })
					if len(reads) > 0 {
						s.conditions, s.questions = append(s.conditions, id), append(s.questions, reads)
					}
				}
				if len(s.conditions) > 0 {
					l.signs = append(l.signs, s)
				}
			}
		}
	}
}
