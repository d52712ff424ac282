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
	upgrades []int // operations that contain it
	cautions []int // those of its hazards
	standing []int // rules that speak of it
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

	cautions []int // those of its hazards
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
		o.cautions = e.cautionsOf(o.Hazards)
		e.ops = append(e.ops, o)
	}
	for i := range e.ops {
		if base := e.ops[i].upgrade; base >= 0 {
			e.ops[base].upgrades = append(e.ops[base].upgrades, i)
		}
	}
	for r := range e.book.Standing {
		e.standing = append(e.standing, e.operationsOf(e.book.Standing[r].Operations))
		for _, o := range e.standing[r] {
			if list := e.ops[o].standing; len(list) == 0 || list[len(list)-1] != r {
				e.ops[o].standing = append(list, r)
			}
		}
	}
}

// cautionsOf finds the cautions of some hazards.
func (e *Engine) cautionsOf(hazards []string) (out []int) {
	for i := range e.book.Cautions {
		if slices.Contains(hazards, e.book.Cautions[i].Hazard) {
			out = append(out, i)
		}
	}
	return out
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
