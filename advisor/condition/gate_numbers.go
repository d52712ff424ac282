package condition

import (
	"fmt"
	"math"
	"strconv"

	"github.com/expr-lang/expr/ast"

	"longstand/advisor"
)

// compareNumbers turns "a op b" into one of three atoms: less, at most, equal.
// Two numbers of which neither is a constant are compared by their difference.
func (g *gate) compareNumbers(n *ast.BinaryNode, rel relation, negated bool) ref {
	l, okL := g.number(n.Left)
	r, okR := g.number(n.Right)
	if !okL || !okR {
		return refFault
	}
	t := g.c.tables
	cl, constL := t.constant(l)
	cr, constR := t.constant(r)
	switch {
	case constL && constR:
		g.fault(n.Location(), codeReadsNothing, "compare the answer to a question", "this comparison reads no answer")
		return refFault
	case constR:
		g.inRange(n, l, rel, cr)
		return t.comparison(l, rel, cr, negated)
	case constL:
		g.inRange(n, r, rel.mirrored(), cl)
		return t.comparison(r, rel.mirrored(), cl, negated)
	}
	return t.comparison(t.number(number{op: numSub, a: l, b: r}), rel, 0, negated)
}

// comparison is the literal for a number against a constant; in Kleene logic
// over intervals x >= c is exactly not x < c.
func (t *tables) comparison(num int32, rel relation, c float64, negated bool) ref {
	switch rel {
	case less, atLeast:
		return t.literal(atom{kind: atomLess, of: num, c: c}, negated != (rel == atLeast))
	case atMost, more:
		return t.literal(atom{kind: atomAtMost, of: num, c: c}, negated != (rel == more))
	}
	return t.literal(atom{kind: atomEqual, of: num, c: c}, negated != (rel == unequal))
}

func (t *tables) constant(num int32) (float64, bool) {
	n := t.numbers[num]
	return n.c, n.op == numConst
}

// inRange warns of a comparison that the question's range already decides.
func (g *gate) inRange(n *ast.BinaryNode, num int32, rel relation, c float64) {
	t := g.c.tables.numbers[num]
	if t.op != numFact && t.op != numMin && t.op != numMax && t.op != numMean {
		return
	}
	q := &g.c.questions[t.a]
	w := wide(q)
	if math.IsInf(w.lo, 0) && math.IsInf(w.hi, 0) {
		return
	}
	if d := decide(w, rel, c); d != advisor.Unknown {
		help := fmt.Sprintf("the range of %s is %s to %s %s", q.ID, plainNumber(q.Low), plainNumber(q.High), q.Unit)
		g.warn(n.Location(), codeOutOfRange, help, "this comparison with %s is always %s", plainNumber(c), d)
	}
}

// plainNumber writes a number as an author would.
func plainNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// number admits a node as a number and puts it into the tables.
func (g *gate) number(n ast.Node) (int32, bool) {
	if g.full() {
		return 0, false
	}
	t := g.c.tables
	switch n := n.(type) {
	case *ast.IntegerNode:
		return t.number(number{op: numConst, c: float64(n.Value)}), true
	case *ast.FloatNode:
		return t.number(number{op: numConst, c: n.Value}), true
	case *ast.IdentifierNode:
		return g.namedNumber(n)
	case *ast.UnaryNode:
		if n.Operator == "-" {
			a, ok := g.number(n.Node)
			if !ok {
				return 0, false
			}
			return t.negative(a), true
		}
	case *ast.BinaryNode:
		if op, ok := arithmetic[n.Operator]; ok {
			return g.arithmetic(n, op)
		}
	case *ast.CallNode:
		if id, ok := n.Callee.(*ast.IdentifierNode); ok {
			return g.call(n, id.Value, n.Arguments)
		}
	case *ast.BuiltinNode:
		return g.call(n, n.Name, n.Arguments)
	}
	if k := g.kindOf(n); k != kindBad {
		g.fault(n.Location(), codeWrongKind, "", "a number is wanted; %s is %s", quoted(g.piece(n.Location())), k)
		return 0, false
	}
	g.refuse(n)
	return 0, false
}

var arithmetic = map[string]numberOp{"+": numAdd, "-": numSub, "*": numMul, "/": numDiv}

func (g *gate) arithmetic(n *ast.BinaryNode, op numberOp) (int32, bool) {
	l, okL := g.number(n.Left)
	r, okR := g.number(n.Right)
	if !okL || !okR {
		return 0, false
	}
	t := g.c.tables
	if c, ok := t.constant(r); ok && c == 0 && op == numDiv {
		g.fault(n.Location(), codeZero, "", "a division by 0")
		return 0, false
	}
	a, constL := t.constant(l)
	b, constR := t.constant(r)
	if constL && constR {
		folded := combine(op, interval{a, a}, interval{b, b})
		return t.number(number{op: numConst, c: folded.lo}), true
	}
	return t.number(number{op: op, a: l, b: r}), true
}

func (t *tables) negative(a int32) int32 {
	if c, ok := t.constant(a); ok {
		return t.number(number{op: numConst, c: -c})
	}
	return t.number(number{op: numNeg, a: a})
}

// namedNumber is a question, a derived value or the year of the case.
func (g *gate) namedNumber(n *ast.IdentifierNode) (int32, bool) {
	c := g.c
	k := c.nameKind(n.Value)
	switch {
	case k == kindBad:
		g.name(n)
		return 0, false
	case k != kindNumber:
		help := ""
		if k == kindReadings {
			help = fmt.Sprintf("write min(%[1]s), max(%[1]s), mean(%[1]s) or count(%[1]s, # < number)", n.Value)
		}
		g.fault(n.Location(), codeWrongKind, help, "a number is wanted; %s is %s", n.Value, k)
		return 0, false
	}
	if q, ok := c.question[n.Value]; ok {
		return c.tables.number(number{op: numFact, a: int32(q)}), true
	}
	if i, ok := c.derivedAt[n.Value]; ok {
		return c.derived[i].number, true
	}
	return c.tables.number(number{op: numCaseYear}), true
}
