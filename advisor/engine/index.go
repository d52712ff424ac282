package engine

import (
	"slices"

	"longstand/advisor"
)

// operation is an advisor.Operation with its references resolved.
type operation struct {
	*advisor.Operation
	needs    []need // needs and brings alike: requirement arcs
	variants [][]need
	savings  []saving
	upgrade  int // index of the base operation, or -1
	looks    []int
	suspects []int // those it helps to cure
}

// need is a requirement arc: on an operation, or on a route.
type need struct {
	op, route int // one of them is -1
	when      advisor.CondID
}

type saving struct {
	with  int
	hours advisor.Three
}

// suspect is an advisor.Suspect with its references resolved.
type suspect struct {
	*advisor.Suspect
	curedBy []int
	before  []int // what waits until the danger is known
	signs   []*advisor.Sign
	family  int // index within the book's families, or -1
}

// inspection is an advisor.Inspection with its references resolved; a bundle
// holds the union of its parts.
type inspection struct {
	*advisor.Inspection
	answers []int
	access  []int
	routes  []int // places that it opens by whichever way is taken
	needs   []int
	signs   []lookSign
	minutes int
}

func (e *Engine) indexOperations() {
	for i := range e.book.Operations {
		o := operation{Operation: &e.book.Operations[i], upgrade: -1}
		o.needs = append(e.needsOf(o.Needs), e.needsOf(o.Brings)...)
		if o.Upgrade != "" {
			if base, ok := e.operation[o.Upgrade]; ok {
				o.upgrade = base
				o.needs = append(o.needs, need{op: base, route: -1})
			}
		}
		for v := range o.Variants {
			o.variants = append(o.variants, e.needsOf(o.Variants[v].Needs))
		}
		for _, s := range o.Savings {
			if with, ok := e.operation[s.With]; ok {
				o.savings = append(o.savings, saving{with, s.Hours})
			}
		}
		for _, id := range o.Looks {
			if k, ok := e.suspect[id]; ok {
				o.looks = append(o.looks, k)
			}
		}
		e.ops = append(e.ops, o)
	}
}

func (e *Engine) needsOf(list []advisor.Need) []need {
	var out []need
	for _, n := range list {
		if op, ok := e.operation[n.Op]; ok {
			out = append(out, need{op: op, route: -1, when: n.When.ID})
			continue
		}
		for r := range e.routes {
			if e.routes[r].ID == n.Op {
				out = append(out, need{op: -1, route: r, when: n.When.ID})
			}
		}
	}
	return out
}

func (e *Engine) operationsOf(ids []string) []int {
	var out []int
	for _, id := range ids {
		if i, ok := e.operation[id]; ok {
			out = append(out, i)
		}
	}
	return out
}

func (e *Engine) indexSuspects() {
	family := map[string]int{}
	for i := range e.book.Families {
		family[e.book.Families[i].ID] = i
	}
	for i := range e.book.Suspects {
		s := suspect{Suspect: &e.book.Suspects[i], family: -1}
		s.curedBy = e.operationsOf(s.CuredBy)
		if s.Danger != nil {
			s.before = e.operationsOf(s.Danger.Before)
		}
		if f, ok := family[s.Family]; ok {
			s.family = f
		}
		for _, o := range s.curedBy {
			e.ops[o].suspects = append(e.ops[o].suspects, i)
		}
		for j := range e.book.Signs {
			if e.book.Signs[j].Suspect == s.ID {
				s.signs = append(s.signs, &e.book.Signs[j])
			}
		}
		e.suspects = append(e.suspects, s)
	}
}

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
