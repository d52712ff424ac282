package condition

import (
	"strings"

	"github.com/expr-lang/expr/ast"

	"longstand/advisor"
)

// kind is what a piece of a condition is, as far as its top shows.
type kind uint8

const (
	kindBad kind = iota // unknown name or refused: a fault is due or given
	kindTruth
	kindNumber
	kindChoice
	kindChoices
	kindReadings
	kindText
	kindWord // in quotes
	kindList
)

var kindWords = [...]string{"", "a yes or no", "a number", "a choice", "a question with several answers",
	"a list of readings", "a text", "a word in quotes", "a list of words"}

func (k kind) String() string { return kindWords[k] }

// questionKind is what a question is inside a condition.
func questionKind(k advisor.Kind) kind {
	switch k {
	case advisor.YesNoKind:
		return kindTruth
	case advisor.Choice:
		return kindChoice
	case advisor.Choices:
		return kindChoices
	case advisor.NumberKind, advisor.Year, advisor.Code:
		return kindNumber
	case advisor.ReadingsKind:
		return kindReadings
	}
	return kindText
}

// kindOf looks at the top of a node only, so it is quick on any tree.
func (g *gate) kindOf(n ast.Node) kind {
	switch n := n.(type) {
	case *ast.IdentifierNode:
		return g.c.nameKind(n.Value)
	case *ast.IntegerNode, *ast.FloatNode:
		return kindNumber
	case *ast.StringNode:
		return kindWord
	case *ast.ArrayNode:
		return kindList
	case *ast.UnaryNode:
		if n.Operator == "-" || n.Operator == "+" {
			return kindNumber
		}
		return kindTruth
	case *ast.BinaryNode:
		switch n.Operator {
		case "+", "-", "*", "/":
			return kindNumber
		case "and", "&&", "or", "||", "in", "==", "!=", "<", "<=", ">", ">=":
			return kindTruth
		}
		return kindBad
	case *ast.CallNode:
		return g.callKind(n.Callee)
	case *ast.BuiltinNode:
		if n.Name == "any" || n.Name == "all" {
			return kindTruth
		}
		return kindNumber
	}
	return kindBad
}

func (g *gate) callKind(callee ast.Node) kind {
	id, ok := callee.(*ast.IdentifierNode)
	switch {
	case !ok:
		return kindBad
	case id.Value == "known" || id.Value == "done":
		return kindTruth
	}
	return kindNumber
}

// nameKind is what a name stands for; kindBad when it is unknown, or a derived
// value that has faults of its own.
func (c *Compiler) nameKind(name string) kind {
	if q, ok := c.question[name]; ok {
		return questionKind(c.questions[q].Kind)
	}
	if i, ok := c.derivedAt[name]; ok {
		switch d := &c.derived[i]; {
		case d.state != derivedReady:
			return kindBad
		case d.isNumber:
			return kindNumber
		}
		return kindTruth
	}
	if name == "case_year" {
		return kindNumber
	}
	return kindBad
}

// has tells whether a name is a question or a derived value.
func (c *Compiler) has(name string) bool {
	_, q := c.question[name]
	_, d := c.derivedAt[name]
	return q || d
}

// name reports a name that is of no use where it stands: unknown, or a derived
// value not compiled yet. One that has faults of its own leaves the condition
// hollow, without a second complaint.
func (g *gate) name(n *ast.IdentifierNode) {
	i, derived := g.c.derivedAt[n.Value]
	switch {
	case derived && g.c.derived[i].state == derivedDeclared:
		g.fault(n.Location(), codeCycle, "a derived value may rest only on those compiled before it",
			"%s rests on itself or is not compiled yet", n.Value)
	case strings.Contains(n.Value, "$"): // the scan has spoken of it
	case !derived && !g.c.has(n.Value) && n.Value != "case_year":
		g.fault(n.Location(), codeUnknownName, g.c.nameHelp(n.Value), "there is no question or derived value %q", n.Value)
	default:
		g.hollow = true
	}
}
