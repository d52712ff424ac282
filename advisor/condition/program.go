package condition

import (
	"longstand/advisor"
)

// Program is a book's conditions as tables. It does not change, and any number
// of goroutines may use it, each through a View of its own.
//
// A slot holds one truth. Each atom has two, itself and its negation; each node
// has one. Kids stand before the nodes that read them.
type Program struct {
	facts      []fact
	operations []string
	trade      []function

	atoms   []atom               // by kind, so that each kind is one tight loop
	kindAt  [atomKinds + 1]int32 // where each kind starts
	numbers []figure
	widest  []interval // numbers when nothing is known
	nodes   []joint
	kids    []int32 // slots, for nodes in order

	conds   []int32 // slot by CondID
	derived []result
	named   []derived // as compiled, for their names

	numbersOf lists   // question -> numbers that rest on it, in order
	atomsOf   lists   // question -> atoms that rest on it, known() left out
	knownOf   []int32 // question -> its known() atom, -1 for none
	doneOf    []int32 // operation -> its done() atom, -1 for none
	edges     lists   // atom, then node -> twice the nodes that count it, plus one where they count its negation

	reads   lists // atom -> questions
	readsOf lists // CondID -> questions
	doneBy  lists // CondID -> operations
	condsOf lists // question -> CondIDs
}

// fact is what evaluation needs of a question.
type fact struct {
	id     string
	kind   advisor.Kind
	all    uint64   // every option
	wide   interval // every number
	number int32    // its place among the numbers, -1 when none reads it
	source *advisor.Question
}

// figure is a number in the frozen tables.
type figure struct {
	op   numberOp
	rel  relation
	a, b int32
	c    float64
	args []int32
}

// joint is a node in the frozen tables over kids[from:to]: surely true when
// that many kids are, surely false when that many are. For and that is all of
// them and one, for or it is one and all of them. A negated link counts its one
// kid the other way round.
type joint struct {
	from, to          int32
	needTrue, needNot uint16
	negated           bool
	derived           int32
}

// truth counts a node out; see tally.
func (n *joint) truth(t tally) uint8 {
	return bit(uint16(t) >= n.needTrue) | bit(uint16(t>>16) >= n.needNot)<<1
}

// or tells an or from an and; a link is neither.
func (n *joint) or() bool { return n.needTrue < n.needNot }

// tally counts a node's kids that are surely true (low half) and surely false
// (high half). A condition of 2048 bytes cannot have 65536 kids.
type tally uint32

// tallied is what one truth adds to a tally.
func tallied(truth uint8) tally { return tally(truth&1) | tally(truth>>1)<<16 }

func (t tally) swapped() tally { return t>>16 | t<<16 }

// result says where a derived value stands.
type result struct {
	isNumber bool
	number   int32
	slot     int32
	cond     advisor.CondID
}

// lists is many short lists end to end.
type lists struct{ from, items []int32 }

func (l lists) of(i int) []int32 { return l.items[l.from[i]:l.from[i+1]] }

func flatten(in [][]int32) lists {
	l := lists{from: make([]int32, 1, len(in)+1)}
	for _, items := range in {
		l.items = append(l.items, items...)
		l.from = append(l.from, int32(len(l.items)))
	}
	return l
}

// Reads lists the questions that a condition reads, through derived values and
// known() too, in order. The list is the program's own.
func (p *Program) Reads(id advisor.CondID) []int { return ints(p.readsOf.of(int(id))) }

// Done lists the operations that a condition asks done() of, in order.
func (p *Program) Done(id advisor.CondID) []int { return ints(p.doneBy.of(int(id))) }

// ReadBy lists the conditions that read a question, in order.
func (p *Program) ReadBy(q int) []advisor.CondID {
	items := p.condsOf.of(q)
	out := make([]advisor.CondID, len(items))
	for i, c := range items {
		out[i] = advisor.CondID(c)
	}
	return out
}

// Conditions is the number of different conditions, 0 included.
func (p *Program) Conditions() int { return len(p.conds) }

// DerivedIsNumber tells a numeric derived value from a boolean one.
func (p *Program) DerivedIsNumber(i int) bool { return p.derived[i].isNumber }

// DerivedIndex is the place of a derived value by which a View is asked.
func (p *Program) DerivedIndex(id string) (int, bool) {
	for i := range p.named {
		if p.named[i].id == id {
			return i, true
		}
	}
	return 0, false
}

// DerivedCondition is the condition that a boolean derived value is.
func (p *Program) DerivedCondition(i int) (advisor.CondID, bool) {
	return p.derived[i].cond, !p.derived[i].isNumber
}

func ints(items []int32) []int {
	out := make([]int, len(items))
	for i, x := range items {
		out[i] = int(x)
	}
	return out
}
