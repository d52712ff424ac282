package condition

import (
	"cmp"
	"slices"
)

// Program freezes what has been compiled: atoms are sorted by kind, what no
// condition reaches is left out, and the indexes are built.
func (c *Compiler) Program() *Program {
	f := freezer{t: c.tables, c: c, atomUsed: make([]bool, len(c.tables.atoms)),
		numUsed: make([]bool, len(c.tables.numbers)), nodeUsed: make([]bool, len(c.tables.nodes))}
	f.mark()
	p := &Program{operations: c.operationNames, trade: c.trade, named: slices.Clone(c.derived)}
	f.p = p
	f.layNumbers()
	f.layFacts()
	f.layAtoms()
	f.layNodes()
	for _, r := range c.conds {
		p.conds = append(p.conds, f.slot(r))
	}
	for i := range c.derived {
		d := &c.derived[i]
		out := result{isNumber: d.isNumber, cond: d.cond, slot: f.slot(refFault)}
		if d.isNumber {
			out.number = f.numAt[d.number]
		} else {
			out.slot = f.slot(d.root)
		}
		p.derived = append(p.derived, out)
	}
	p.index()
	p.widen()
	return p
}

type freezer struct {
	t                           *tables
	c                           *Compiler
	p                           *Program
	atomUsed, numUsed, nodeUsed []bool
	atomAt, numAt, nodeAt       []int32 // places in the frozen tables
}

// mark finds what is reached from conditions and derived values.
func (f *freezer) mark() {
	f.markRef(refTrue)
	f.markRef(refFault)
	for _, r := range f.c.conds {
		f.markRef(r)
	}
	for i := range f.c.derived {
		if d := &f.c.derived[i]; d.isNumber {
			f.markNumber(d.number)
		} else {
			f.markRef(d.root)
		}
	}
}

func (f *freezer) markRef(r ref) {
	if !r.isNode() {
		a := f.t.atoms[r.atom()]
		f.atomUsed[r.atom()] = true
		if a.kind >= atomLess && a.kind <= atomEqual {
			f.markNumber(a.of)
		}
		return
	}
	if f.nodeUsed[r.node()] {
		return
	}
	f.nodeUsed[r.node()] = true
	for _, k := range f.t.nodes[r.node()].kids {
		f.markRef(k)
	}
}

// under lists the numbers that a number is made of.
func (n number) under() []int32 {
	switch n.op {
	case numAdd, numSub, numMul, numDiv:
		return []int32{n.a, n.b}
	case numNeg:
		return []int32{n.a}
	case numCall:
		return unpack(n.args)
	}
	return nil
}

func (f *freezer) markNumber(n int32) {
	if f.numUsed[n] {
		return
	}
	f.numUsed[n] = true
	for _, u := range f.t.numbers[n].under() {
		f.markNumber(u)
	}
}

func (f *freezer) layNumbers() {
	f.numAt = make([]int32, len(f.t.numbers))
	for i, n := range f.t.numbers {
		if !f.numUsed[i] {
			continue
		}
		f.numAt[i] = int32(len(f.p.numbers))
		fig := figure{op: n.op, a: n.a, b: n.b, c: n.c}
		switch under := n.under(); n.op {
		case numCall:
			for _, u := range under {
				fig.args = append(fig.args, f.numAt[u])
			}
		case numAdd, numSub, numMul, numDiv:
			fig.a, fig.b = f.numAt[n.a], f.numAt[n.b]
		case numNeg:
			fig.a = f.numAt[n.a]
		case numCount:
			fig.rel = relation(n.b)
		}
		f.p.numbers = append(f.p.numbers, fig)
	}
}

func (f *freezer) layFacts() {
	for i := range f.c.questions {
		q := &f.c.questions[i]
		f.p.facts = append(f.p.facts, fact{id: q.ID, kind: q.Kind, all: q.AllOptions(), wide: wide(q), number: -1, source: q})
	}
	for i, n := range f.p.numbers {
		if n.op == numFact {
			f.p.facts[n.a].number = int32(i)
		}
	}
}

func (f *freezer) layAtoms() {
	order := []int32{}
	for i := range f.t.atoms {
		if f.atomUsed[i] {
			order = append(order, int32(i))
		}
	}
	slices.SortStableFunc(order, func(a, b int32) int {
		x, y := f.t.atoms[a], f.t.atoms[b]
		return cmp.Or(cmp.Compare(x.kind, y.kind), cmp.Compare(x.of, y.of))
	})
	f.atomAt = make([]int32, len(f.t.atoms))
	for at, i := range order {
		a := f.t.atoms[i]
		if a.kind >= atomLess && a.kind <= atomEqual {
			a.of = f.numAt[a.of]
		}
		f.atomAt[i] = int32(at)
		f.p.atoms = append(f.p.atoms, a)
		for k := a.kind + 1; k <= atomKinds; k++ {
			f.p.kindAt[k] = int32(at) + 1
		}
	}
}

func (f *freezer) layNodes() {
	f.nodeAt = make([]int32, len(f.t.nodes))
	for i, n := range f.t.nodes {
		if !f.nodeUsed[i] {
			continue
		}
		f.nodeAt[i] = int32(len(f.p.nodes))
		j := joint{from: int32(len(f.p.kids)), needTrue: uint16(len(n.kids)), needNot: 1, negated: n.negated, derived: n.derived}
		if n.or {
			j.needTrue, j.needNot = j.needNot, j.needTrue
		}
		for _, k := range n.kids {
			f.p.kids = append(f.p.kids, f.slot(k))
		}
		j.to = int32(len(f.p.kids))
		f.p.nodes = append(f.p.nodes, j)
	}
}

// slot is where a literal or node keeps its truth.
func (f *freezer) slot(r ref) int32 {
	if r.isNode() {
		return int32(2*len(f.p.atoms)) + f.nodeAt[r.node()]
	}
	return 2*f.atomAt[r.atom()] + int32(r&1)
}
