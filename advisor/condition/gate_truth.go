package condition

import (
	"fmt"

	"github.com/expr-lang/expr/ast"

	"longstand/advisor"
)

// truth admits a node as a condition and puts it into the tables, with
// negation pushed down to the atoms (valid in Kleene logic). It looks at a node
// before anything below it and does not enter what it refuses. Whatever has a
// fault counts as never known, so that the rest of the condition still stands.
func (g *gate) truth(n ast.Node, negated bool) ref {
	if g.full() {
		return refFault
	}
	switch n := n.(type) {
	case *ast.IdentifierNode:
		return g.plain(n, negated)
	case *ast.UnaryNode:
		if n.Operator == "not" || n.Operator == "!" {
			return g.truth(n.Node, !negated)
		}
		return g.notTruth(n)
	case *ast.BinaryNode:
		switch n.Operator {
		case "and", "&&", "or", "||":
			return g.joined(n, negated)
		case "==", "!=", "<", "<=", ">", ">=":
			return g.compare(n, negated)
		case "in":
			return g.member(n, negated)
		case "+", "-", "*", "/":
			return g.notTruth(n)
		}
		g.refuse(n)
		return refFault
	case *ast.CallNode:
		return g.asked(n, negated)
	case *ast.BuiltinNode:
		if n.Name == "any" || n.Name == "all" {
			return g.test(n, negated)
		}
		return g.notTruth(n)
	case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode:
		return g.notTruth(n)
	}
	g.refuse(n)
	return refFault
}

func isOr(n *ast.BinaryNode) bool { return n.Operator == "or" || n.Operator == "||" }

// joined gathers the parts of a run of ands (or of ors) and joins them at once.
func (g *gate) joined(n *ast.BinaryNode, negated bool) ref {
	or := isOr(n)
	var parts []ref
	var gather func(ast.Node)
	gather = func(m ast.Node) {
		if b, ok := m.(*ast.BinaryNode); ok && (b.Operator == "and" || b.Operator == "&&" || isOr(b)) && isOr(b) == or {
			gather(b.Left)
			gather(b.Right)
			return
		}
		parts = append(parts, g.truth(m, negated))
	}
	gather(n)
	return g.c.tables.join(or != negated, parts)
}

// plain is a bare name: a yes-or-no question or a derived condition.
func (g *gate) plain(n *ast.IdentifierNode, negated bool) ref {
	c := g.c
	k := c.nameKind(n.Value)
	switch k {
	case kindBad:
		g.name(n)
		return refFault
	case kindTruth:
	default:
		return g.notTruth(n)
	}
	if q, ok := c.question[n.Value]; ok {
		return c.tables.literal(atom{kind: atomSet, of: int32(q), mask: 2}, negated)
	}
	i := c.derivedAt[n.Value]
	return c.tables.node(node{negated: negated, derived: int32(i), kids: []ref{c.derived[i].root}})
}

// notTruth says that a condition was wanted and what to write instead.
func (g *gate) notTruth(n ast.Node) ref {
	k := g.kindOf(n)
	help := ""
	id, named := n.(*ast.IdentifierNode)
	switch {
	case k == kindText:
		help = "conditions do not read texts; ask a question with options"
	case k == kindWord:
		help = "write question == \"option\", or question in [\"a\", \"b\"]"
	case k == kindNumber:
		help = "compare it with a number"
	case k == kindReadings && named:
		help = fmt.Sprintf("write any(%s, # < number) or compare min(%s)", id.Value, id.Value)
	case named:
		if q, ok := g.c.question[id.Value]; ok {
			help = g.c.optionHelp(&g.c.questions[q])
		}
	}
	if call, ok := n.(*ast.BuiltinNode); ok && !g.admittedBuiltin(call.Name) {
		g.fault(n.Location(), codeUnknownFunction, g.c.functionHelp(call.Name), "there is no function %q", call.Name)
		return refFault
	}
	what := quoted(g.piece(n.Location()))
	g.fault(n.Location(), codeWrongKind, help, "a yes or no is wanted; %s is %s", what, k)
	return refFault
}

// optionHelp shows how a question with options is read.
func (c *Compiler) optionHelp(q *advisor.Question) string {
	if len(q.Options) == 0 {
		return ""
	}
	if q.Kind == advisor.Choices {
		return fmt.Sprintf("write %q in %s; the options are %s", q.Options[0].ID, q.ID, listed(optionIDs(q)))
	}
	return fmt.Sprintf("write %s == %q; the options are %s", q.ID, q.Options[0].ID, listed(optionIDs(q)))
}

// asked is known(question) or done(operation).
func (g *gate) asked(n *ast.CallNode, negated bool) ref {
	callee, ok := n.Callee.(*ast.IdentifierNode)
	if !ok {
		g.refuse(n)
		return refFault
	}
	if callee.Value != "known" && callee.Value != "done" {
		if g.c.isFunction(callee.Value) {
			return g.notTruth(n)
		}
		g.fault(n.Location(), codeUnknownFunction, g.c.functionHelp(callee.Value), "there is no function %q", callee.Value)
		return refFault
	}
	if len(n.Arguments) != 1 {
		g.fault(n.Location(), codeWrongArguments, "write "+g.c.usage(callee.Value), "%s takes one name", callee.Value)
		return refFault
	}
	id, ok := n.Arguments[0].(*ast.IdentifierNode)
	if !ok {
		g.fault(n.Arguments[0].Location(), codeWrongArguments, "write "+g.c.usage(callee.Value)+", the name without quotes",
			"%s takes a name", callee.Value)
		return refFault
	}
	if callee.Value == "known" {
		return g.known(id, negated)
	}
	g.patches = append(g.patches, func() { n.Arguments = nil })
	return g.done(id, negated)
}

func (g *gate) known(id *ast.IdentifierNode, negated bool) ref {
	if q, ok := g.c.question[id.Value]; ok {
		return g.c.tables.literal(atom{kind: atomKnown, of: int32(q)}, negated)
	}
	if _, ok := g.c.derivedAt[id.Value]; ok || id.Value == "case_year" {
		g.fault(id.Location(), codeWrongKind, "ask for the questions that it rests on",
			"known takes a question; %s is reckoned, not asked", id.Value)
		return refFault
	}
	g.name(id)
	return refFault
}

func (g *gate) done(id *ast.IdentifierNode, negated bool) ref {
	op, ok := g.c.operations[id.Value]
	if !ok {
		help := "done takes an operation of the book"
		if near := g.c.nearest(id.Value, g.c.operationNames); near != "" {
			help = "the nearest is " + near
		}
		g.fault(id.Location(), codeUnknownOperation, help, "there is no operation %q", id.Value)
		return refFault
	}
	return g.c.tables.literal(atom{kind: atomDone, of: int32(op)}, negated)
}
