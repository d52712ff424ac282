package condition

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/diag"
)

const (
	derivedDeclared derivedState = iota
	derivedFaulty
	derivedReady
)

// Compiler takes the conditions of one book, one after the other. It is not
// safe for two goroutines; the Program it makes is.
type Compiler struct {
	questions      []advisor.Question
	question       map[string]int
	operations     map[string]int
	operationNames []string
	derived        []derived
	derivedAt      map[string]int
	trade          []function
	functions      map[string]int
	names          []string // what a bare name may be, for nearest names
	tables         *tables
	conds          []ref
	condAt         map[ref]advisor.CondID
	hints          int
	bytes          int  // of all texts read
	tooMuch        bool // that was said
	typing         *typing
}

// NewCompiler starts a book's tables over its questions and the ids of its
// operations. Truths of done() are later set by index into operations.
func NewCompiler(questions []advisor.Question, operations []string) *Compiler {
	return newCompiler(questions, operations, trade)
}

func newCompiler(questions []advisor.Question, operations []string, trade []function) *Compiler {
	c := &Compiler{questions: slices.Clone(questions), question: map[string]int{}, operations: map[string]int{},
		operationNames: slices.Clone(operations), derivedAt: map[string]int{}, trade: trade, functions: map[string]int{},
		names: []string{"case_year"}, tables: newTables(), conds: []ref{refTrue},
		condAt: map[ref]advisor.CondID{refTrue: 0}}
	for i := range c.questions {
		c.question[c.questions[i].ID] = i
		c.names = append(c.names, c.questions[i].ID)
	}
	for i, id := range operations {
		c.operations[id] = i
	}
	for i := range trade {
		c.functions[trade[i].name] = i
	}
	return c
}

// Condition compiles a condition. An empty text is condition 0, always true. A
// text with errors still gives a condition: its faulty parts are never known.
func (c *Compiler) Condition(t Text) (advisor.CondID, diag.List) {
	if t.Source == "" {
		return 0, nil
	}
	g := c.gate(t)
	n := g.read()
	if n == nil {
		if len(g.faults) == 0 && !g.hollow {
			g.fault(whole, codeSyntax, "leave the condition out when it is always so", "the condition is blank")
		}
		return c.condition(refFault), g.faults
	}
	r := g.truth(n, false)
	if !g.faults.HasErrors() && !g.hollow {
		g.checkTypes(n)
	}
	return c.condition(r), g.faults
}

// condition numbers a root; equal conditions share a number.
func (c *Compiler) condition(r ref) advisor.CondID {
	id, ok := c.condAt[r]
	if !ok {
		id = advisor.CondID(len(c.conds))
		c.conds = append(c.conds, r)
		c.condAt[r] = id
	}
	return id
}
