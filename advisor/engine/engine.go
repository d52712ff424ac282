// Package engine is the workshop: a book and a case go in, one record of
// advice comes out. It is pure: no clock, no files, no random order, so equal
// inputs give equal advice to the byte.
package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/scope"
)

// Engine is a book made ready to advise: every id resolved to an index once.
// It is immutable and may be shared.
type Engine struct {
	book      *advisor.Book
	program   *condition.Program
	question  map[string]int
	operation map[string]int
	suspect   map[string]int
	look      map[string]int
	ops       []operation
	suspects  []suspect
	looks     []inspection
	routes    []route
	combos    [][]int // every choice of a way per route
	house     []houseItem
	houseAt   map[[2]string]int // its places, by kind and id
}

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

type route struct {
	*advisor.Route
	through [][]int
}

// maxCombos bounds the ways that are tried for the routes of a book.
const maxCombos = 64

// New makes a checked book ready. The program must be the one that was
// compiled with it.
func New(book *advisor.Book, program *condition.Program) *Engine {
	e := &Engine{book: book, program: program,
		question: map[string]int{}, operation: map[string]int{}, suspect: map[string]int{}, look: map[string]int{}}
	for i := range book.Questions {
		e.question[book.Questions[i].ID] = i
	}
	for i := range book.Operations {
		e.operation[book.Operations[i].ID] = i
	}
	for i := range book.Suspects {
		e.suspect[book.Suspects[i].ID] = i
	}
	for i := range book.Inspections {
		e.look[book.Inspections[i].ID] = i
	}
	e.indexRoutes()
	e.indexOperations()
	e.indexSuspects()
	e.indexLooks()
	e.house, e.houseAt = houseItems(book), map[[2]string]int{}
	for i := range e.house {
		e.houseAt[[2]string{e.house[i].kind, e.house[i].id}] = i
	}
	e.indexLookSigns()
	return e
}

// Book gives the book that the engine advises by.
func (e *Engine) Book() *advisor.Book { return e.book }

// Program gives the compiled conditions of the book.
func (e *Engine) Program() *condition.Program { return e.program }

func (e *Engine) indexRoutes() {
	e.combos = [][]int{nil}
	for i := range e.book.Routes {
		r := route{Route: &e.book.Routes[i]}
		var next [][]int
		for w := range r.Ways {
			r.through = append(r.through, e.operationsOf(r.Ways[w].Through))
			for _, c := range e.combos {
				next = append(next, append(append([]int(nil), c...), w))
			}
		}
		if len(next) > 0 && len(next) <= maxCombos {
			e.combos = next
		}
		e.routes = append(e.routes, r)
	}
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

func (e *Engine) routesOf(ids []string) []int {
	var out []int
	for r := range e.routes {
		if slices.Contains(ids, e.routes[r].ID) {
			out = append(out, r)
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
		answers, access, routes, needs := map[int]bool{}, map[int]bool{}, map[int]bool{}, map[int]bool{}
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
					answers[k] = true
				}
			}
			mark(access, e.operationsOf(p.Access))
			mark(routes, e.routesOf(p.Access))
			mark(needs, e.operationsOf(p.Needs))
		}
		l.answers, l.access, l.routes, l.needs = sorted(answers), sorted(access), sorted(routes), sorted(needs)
	}
}

// opens lists the operations by which a look gets at its place, through the
// ways taken.
func (e *Engine) opens(l *inspection, combo []int) []int {
	if len(l.routes) == 0 {
		return l.access
	}
	out := append([]int(nil), l.access...)
	for _, r := range l.routes {
		out = append(out, e.routes[r].through[combo[r]]...)
	}
	return out
}

// mayOpen lists the operations by which a look may get at its place, through
// any way.
func (e *Engine) mayOpen(l *inspection) []int {
	out := append([]int(nil), l.access...)
	for _, r := range l.routes {
		for _, through := range e.routes[r].through {
			out = append(out, through...)
		}
	}
	return out
}

// price gives the exact price of a care, 1 when the shop has none of that name.
func (e *Engine) price(care string) scope.Price {
	if p, ok := e.book.Settings.Care[care]; ok {
		return p
	}
	return scope.Price{Num: 1, Den: 1}
}
