package condition

import (
	"fmt"

	"github.com/expr-lang/expr/ast"

	"longstand/advisor"
)

// compare admits a comparison by the kinds of its two sides.
func (g *gate) compare(n *ast.BinaryNode, negated bool) ref {
	l, r := g.kindOf(n.Left), g.kindOf(n.Right)
	if g.notBinds(n) {
		return refFault
	}
	rel := relations[n.Operator]
	switch {
	case l == kindNumber && r == kindNumber:
		return g.compareNumbers(n, rel, negated)
	case l == kindChoice && r == kindWord:
		return g.compareOption(n, n.Left, n.Right, rel, negated)
	case l == kindWord && r == kindChoice:
		return g.compareOption(n, n.Right, n.Left, rel, negated)
	case l == kindBad || r == kindBad:
		g.side(n.Left, l)
		g.side(n.Right, r)
		return refFault
	}
	g.fault(n.Location(), codeWrongKind, g.compareHelp(n, l, r), "%s is compared with %s", l, r)
	return refFault
}

// side reports the fault of a side that is bad by itself.
func (g *gate) side(n ast.Node, k kind) {
	if k != kindBad {
		return
	}
	if id, ok := n.(*ast.IdentifierNode); ok {
		g.name(id)
		return
	}
	g.refuse(n)
}

// notBinds catches "not x > 3", which the grammar reads as "(not x) > 3".
func (g *gate) notBinds(n *ast.BinaryNode) bool {
	u, ok := n.Left.(*ast.UnaryNode)
	if !ok || u.Operator != "not" && u.Operator != "!" {
		return false
	}
	help := "put the comparison into brackets: not (a " + n.Operator + " b)"
	if n.Operator == "in" {
		help = "write a not in [...]"
	}
	g.fault(u.Location(), codeNotBinds, help, "not belongs to the name after it, not to the whole comparison")
	return true
}

// compareHelp says how the thing that was compared is read instead.
func (g *gate) compareHelp(n *ast.BinaryNode, l, r kind) string {
	for _, side := range []ast.Node{n.Left, n.Right} {
		id, ok := side.(*ast.IdentifierNode)
		if !ok {
			continue
		}
		switch g.kindOf(id) {
		case kindTruth:
			return fmt.Sprintf("write %s, or not %s", id.Value, id.Value)
		case kindChoice, kindChoices:
			if q, ok := g.c.question[id.Value]; ok {
				return g.c.optionHelp(&g.c.questions[q])
			}
		case kindReadings:
			return fmt.Sprintf("compare min(%[1]s), max(%[1]s) or mean(%[1]s), or write any(%[1]s, # < number)", id.Value)
		case kindText:
			return "conditions do not read texts; ask a question with options"
		}
	}
	if l == kindWord || r == kindWord {
		return "a number is written without quotes"
	}
	return "numbers are compared with numbers, choices with options"
}

// compareOption is question == "option" or question != "option".
func (g *gate) compareOption(n *ast.BinaryNode, choice, word ast.Node, rel relation, negated bool) ref {
	q := g.c.question[choice.(*ast.IdentifierNode).Value]
	if rel != equal && rel != unequal {
		g.fault(n.Location(), codeWrongKind, g.c.optionHelp(&g.c.questions[q])+"; options have no order",
			"a choice is compared with %s", n.Operator)
		return refFault
	}
	bit, ok := g.option(&g.c.questions[q], word.(*ast.StringNode))
	if !ok {
		return refFault
	}
	return g.c.tables.literal(atom{kind: atomSet, of: int32(q), mask: 1 << bit}, negated != (rel == unequal))
}

// option finds an option of a question, or reports that there is none such.
func (g *gate) option(q *advisor.Question, word *ast.StringNode) (int, bool) {
	if bit, ok := q.OptionBit(word.Value); ok {
		return bit, true
	}
	ids := optionIDs(q)
	help := "the options are " + listed(ids)
	if near := g.c.nearest(word.Value, ids); near != "" {
		help = "the nearest is " + near + "; " + help
	}
	g.fault(word.Location(), codeUnknownOption, help, "%s has no option %q", q.ID, shown(word.Value))
	return 0, false
}

// member is question in ["a", "b"], or "a" in question.
func (g *gate) member(n *ast.BinaryNode, negated bool) ref {
	l, r := g.kindOf(n.Left), g.kindOf(n.Right)
	if g.notBinds(n) {
		return refFault
	}
	switch {
	case l == kindChoice && r == kindList:
		return g.memberOf(n, negated)
	case l == kindWord && r == kindChoices:
		q := g.c.question[n.Right.(*ast.IdentifierNode).Value]
		bit, ok := g.option(&g.c.questions[q], n.Left.(*ast.StringNode))
		if !ok {
			return refFault
		}
		return g.c.tables.literal(atom{kind: atomFlag, of: int32(q), mask: 1 << bit}, negated)
	case l == kindBad || r == kindBad:
		g.side(n.Left, l)
		g.side(n.Right, r)
		return refFault
	}
	help := "write question in [\"a\", \"b\"], or \"a\" in question"
	switch {
	case l == kindNumber:
		help = "write low <= x <= high, or x == a or x == b"
	case l == kindWord && r == kindChoice, l == kindChoices || l == kindTruth:
		help = g.compareHelp(n, l, r)
	}
	g.fault(n.Location(), codeWrongKind, help, "%s cannot be in %s", l, r)
	return refFault
}

func (g *gate) memberOf(n *ast.BinaryNode, negated bool) ref {
	q := g.c.question[n.Left.(*ast.IdentifierNode).Value]
	list := n.Right.(*ast.ArrayNode)
	var mask uint64
	good := len(list.Nodes) > 0
	if !good {
		g.fault(list.Location(), codeWrongKind, g.c.optionHelp(&g.c.questions[q]), "the list of options is empty")
	}
	for _, item := range list.Nodes {
		word, ok := item.(*ast.StringNode)
		if !ok {
			g.fault(item.Location(), codeWrongKind, "put each option into double quotes", "an option in quotes is wanted")
			good = false
			continue
		}
		bit, ok := g.option(&g.c.questions[q], word)
		if good = good && ok; ok {
			mask |= 1 << bit
		}
		if g.full() {
			return refFault
		}
	}
	if !good {
		return refFault
	}
	return g.c.tables.literal(atom{kind: atomSet, of: int32(q), mask: mask}, negated)
}
