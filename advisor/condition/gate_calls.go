package condition

import (
	"fmt"

	"github.com/expr-lang/expr/ast"
)

var readingOps = map[string]numberOp{"min": numMin, "max": numMax, "mean": numMean, "spread": numSpread}

func (g *gate) admittedBuiltin(name string) bool {
	switch name {
	case "min", "max", "mean", "count", "any", "all":
		return true
	}
	return g.c.isFunction(name)
}

// isFunction tells whether a name is a function with a number for result.
func (c *Compiler) isFunction(name string) bool {
	_, trade := c.functions[name]
	_, reading := readingOps[name]
	return trade || reading || name == "count"
}

// call is a function of readings or of the trade, with a number for result.
func (g *gate) call(n ast.Node, name string, args []ast.Node) (int32, bool) {
	c := g.c
	if op, ok := readingOps[name]; ok {
		if len(args) != 1 {
			g.fault(n.Location(), codeWrongArguments, "write "+c.usage(name), "%s takes one list of readings", name)
			return 0, false
		}
		q, ok := g.readings(name, args[0])
		return c.tables.number(number{op: op, a: q}), ok
	}
	if b, ok := n.(*ast.BuiltinNode); ok && name == "count" {
		return g.count(b)
	}
	switch name {
	case "known", "done", "any", "all":
		g.fault(n.Location(), codeWrongKind, "", "a number is wanted; %s says yes or no", name)
		return 0, false
	}
	f, ok := c.functions[name]
	if !ok {
		g.fault(n.Location(), codeUnknownFunction, c.functionHelp(name), "there is no function %q", name)
		return 0, false
	}
	return g.tradeCall(n, f, args)
}

// tradeCall admits the arguments of a trade function; all of them are looked
// at, so that every fault is told.
func (g *gate) tradeCall(n ast.Node, f int, args []ast.Node) (int32, bool) {
	fn := &g.c.trade[f]
	if len(args) != len(fn.params) {
		g.fault(n.Location(), codeWrongArguments, "write "+g.c.usage(fn.name), "%s takes %d numbers, here are %d",
			fn.name, len(fn.params), len(args))
		return 0, false
	}
	good := true
	nums := make([]int32, len(args))
	for i, a := range args {
		num, ok := g.number(a)
		nums[i] = num
		good = good && ok
	}
	if !good || !g.answers(n, fn, nums) {
		return 0, false
	}
	return g.c.tables.number(number{op: numCall, a: int32(f), args: pack(nums)}), true
}

// answers refuses a call of nothing but written numbers that the function does
// not take: no answer could ever make it known.
func (g *gate) answers(n ast.Node, fn *function, nums []int32) bool {
	args := make([]float64, len(nums))
	for i, num := range nums {
		c, ok := g.c.tables.constant(num)
		if !ok {
			return true
		}
		args[i] = c
	}
	if _, err := fn.call(args); err != nil {
		g.fault(n.Location(), codeWrongArguments, "write "+g.c.usage(fn.name), "%s cannot answer: %v", fn.name, err)
		return false
	}
	return true
}

// readings is the question whose readings a function takes.
func (g *gate) readings(function string, n ast.Node) (int32, bool) {
	id, ok := n.(*ast.IdentifierNode)
	if !ok {
		g.fault(n.Location(), codeWrongArguments, "write "+g.c.usage(function), "%s takes the name of a question with readings", function)
		return 0, false
	}
	switch k := g.c.nameKind(id.Value); k {
	case kindReadings:
		return int32(g.c.question[id.Value]), true
	case kindBad:
		g.name(id)
	default:
		g.fault(id.Location(), codeWrongKind, "", "%s takes readings; %s is %s", function, id.Value, k)
	}
	return 0, false
}

// count is count(readings) or count(readings, # op constant).
func (g *gate) count(n *ast.BuiltinNode) (int32, bool) {
	if len(n.Arguments) == 0 || len(n.Arguments) > 2 {
		g.fault(n.Location(), codeWrongArguments, "write "+g.c.usage("count"), "count takes readings and a test")
		return 0, false
	}
	q, ok := g.readings("count", n.Arguments[0])
	if len(n.Arguments) == 1 {
		g.patches = append(g.patches, func() { n.Name = "len" })
		return g.c.tables.number(number{op: numCount, a: q}), ok
	}
	rel, c, fits := g.predicate(n.Arguments[1])
	return g.c.tables.number(number{op: numCount, a: q, b: int32(rel), c: c}), ok && fits
}

// test is any(readings, # op constant) or all(...); both are questions about
// the least, the greatest or a count of the readings.
func (g *gate) test(n *ast.BuiltinNode, negated bool) ref {
	if len(n.Arguments) != 2 {
		g.fault(n.Location(), codeWrongArguments, "write "+g.c.usage(n.Name), "%s takes readings and a test", n.Name)
		return refFault
	}
	q, ok := g.readings(n.Name, n.Arguments[0])
	rel, c, fits := g.predicate(n.Arguments[1])
	if !ok || !fits {
		return refFault
	}
	t := g.c.tables
	least, greatest := number{op: numMin, a: q}, number{op: numMax, a: q}
	if n.Name == "all" {
		least, greatest = greatest, least
	}
	switch rel {
	case less, atMost:
		return t.comparison(t.number(least), rel, c, negated)
	case more, atLeast:
		return t.comparison(t.number(greatest), rel, c, negated)
	}
	if n.Name == "all" { // all equal: none is unequal
		other := equal + unequal - rel
		return t.comparison(t.number(number{op: numCount, a: q, b: int32(other), c: c}), atMost, 0, negated)
	}
	return t.comparison(t.number(number{op: numCount, a: q, b: int32(rel), c: c}), more, 0, negated)
}

// predicate admits "# op constant" and its mirror image, nothing else: so a
// test costs no more than the readings are long.
func (g *gate) predicate(n ast.Node) (relation, float64, bool) {
	p, ok := n.(*ast.PredicateNode)
	if ok {
		if b, isBinary := p.Node.(*ast.BinaryNode); isBinary && relations[b.Operator] != always {
			rel := relations[b.Operator]
			if pointer(b.Left) {
				if c, ok := literalNumber(b.Right); ok {
					return rel, c, true
				}
			}
			if c, ok := literalNumber(b.Left); ok && pointer(b.Right) {
				return rel.mirrored(), c, true
			}
		}
	}
	at := n.Location()
	if !g.foreign {
		g.fault(at, codeNotAdmitted, fmt.Sprintf("write # < number (or %s)", "<= == != >= >"), "a test of readings is # and one constant")
	}
	return always, 0, false
}

func pointer(n ast.Node) bool {
	p, ok := n.(*ast.PointerNode)
	return ok && p.Name == ""
}

func literalNumber(n ast.Node) (float64, bool) {
	switch n := n.(type) {
	case *ast.IntegerNode:
		return float64(n.Value), true
	case *ast.FloatNode:
		return n.Value, true
	case *ast.UnaryNode:
		c, ok := literalNumber(n.Node)
		return -c, ok && n.Operator == "-"
	}
	return 0, false
}
