package condition

import (
	"strings"

	"github.com/expr-lang/expr/file"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// derivedState is how far a derived value has come.
type derivedState uint8

// derived is a value computed from answers: a number or a condition.
type derived struct {
	id       string
	state    derivedState
	isNumber bool
	number   int32
	root     ref
	cond     advisor.CondID
}

// Derivation is one derived value and its expression.
type Derivation struct {
	ID string
	Text
}

// whole is the place of a text as a whole.
var whole = file.Location{From: 0, To: 1 << 20}

// Declare tells that a derived value of this id exists. Its index, by which a
// View is asked for it, is the order of the declarations.
func (c *Compiler) Declare(id string) {
	if _, ok := c.derivedAt[id]; ok {
		return
	}
	c.derivedAt[id] = len(c.derived)
	c.derived = append(c.derived, derived{id: id, root: refFault})
	c.names = append(c.names, id)
}

// Derive compiles a derived value; those that it reads must have been compiled
// before. One with errors is never known, and its users are not blamed for it.
func (c *Compiler) Derive(id string, t Text) diag.List {
	c.Declare(id)
	d := &c.derived[c.derivedAt[id]]
	g := c.gate(t)
	n := g.read()
	if n == nil && len(g.faults) == 0 && !g.hollow {
		g.fault(whole, codeSyntax, "", "a derived value needs an expression")
	}
	if n == nil {
		d.state = derivedFaulty
		return g.faults
	}
	isNumber := g.kindOf(n) == kindNumber
	if isNumber {
		d.number, _ = g.number(n)
	} else {
		d.root = g.truth(n, false)
	}
	if !g.faults.HasErrors() && !g.hollow {
		g.checkTypes(n)
	}
	d.state, d.isNumber = derivedReady, isNumber
	if g.faults.HasErrors() || g.hollow {
		d.state, d.isNumber, d.root = derivedFaulty, false, refFault
		return g.faults
	}
	if !isNumber {
		d.cond = c.condition(d.root)
	}
	if c.typing == nil {
		c.typing = newTyping(c)
	}
	c.typing.declare(id, isNumber)
	return g.faults
}

// DeriveAll declares and compiles derived values in whatever order they need.
// Those that rest on themselves are errors which name the circle.
func (c *Compiler) DeriveAll(all []Derivation) diag.List {
	at := map[string]int{}
	for i, d := range all {
		c.Declare(d.ID)
		at[d.ID] = i
	}
	s := sorter{c: c, all: all, at: at, state: make([]byte, len(all))}
	for i := range all {
		s.visit(i)
	}
	return s.faults
}

// sorter walks derived values depth first.
type sorter struct {
	c      *Compiler
	all    []Derivation
	at     map[string]int
	state  []byte // 0 not seen, 1 on the path, 2 compiled
	path   []int
	faults diag.List
}

func (s *sorter) visit(i int) {
	switch s.state[i] {
	case 1:
		s.circle(i)
		return
	case 2:
		return
	}
	s.state[i] = 1
	s.path = append(s.path, i)
	for _, name := range Names(s.all[i].Source) {
		if j, ok := s.at[name]; ok {
			s.visit(j)
		}
	}
	s.path = s.path[:len(s.path)-1]
	if s.state[i] == 1 {
		s.faults = append(s.faults, s.c.Derive(s.all[i].ID, s.all[i].Text)...)
	}
	s.state[i] = 2
}

// circle reports the part of the path that comes back to i, once, and takes its
// members for faulty so that nobody is blamed for them again.
func (s *sorter) circle(i int) {
	from := len(s.path) - 1
	for s.path[from] != i {
		from--
	}
	var ids []string
	for _, j := range s.path[from:] {
		ids = append(ids, s.all[j].ID)
		s.state[j] = 2
		s.c.derived[s.c.derivedAt[s.all[j].ID]].state = derivedFaulty
	}
	ids = append(ids, s.all[i].ID)
	d := s.faults.Errorf(s.all[i].At, codeCycle, "a derived value rests on itself: %s", strings.Join(ids, " -> "))
	for _, j := range s.path[from+1:] {
		d.Related = append(d.Related, diag.Related{At: s.all[j].At, Message: s.all[j].ID + " is part of the circle"})
	}
}
