package condition

import (
	"errors"
	"reflect"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/checker"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/types"

	"longstand/advisor"
)

// typing is expr's own type check over what the gate has admitted. Building its
// configuration is the dear part, so one serves the whole book; it is not safe
// for two goroutines, and neither is a Compiler.
type typing struct {
	config *conf.Config
	check  checker.Checker
}

// exprType is how expr sees a question.
func exprType(k advisor.Kind) types.Type {
	switch questionKind(k) {
	case kindTruth:
		return types.Bool
	case kindNumber:
		return types.Float64
	case kindChoices:
		return types.Array(types.String)
	case kindReadings:
		return types.TypeOf([]float64{})
	}
	return types.String
}

func newTyping(c *Compiler) *typing {
	env := types.Map{
		"case_year": types.Float64,
		"known":     types.TypeOf(func(any) bool { return false }),
		"done":      types.TypeOf(func() bool { return false }),
		"spread":    types.TypeOf(func([]float64) float64 { return 0 }),
	}
	for i := range c.trade {
		in := make([]reflect.Type, len(c.trade[i].params))
		for j := range in {
			in[j] = reflect.TypeFor[float64]()
		}
		signature := reflect.FuncOf(in, []reflect.Type{reflect.TypeFor[float64]()}, false)
		env[c.trade[i].name] = types.TypeOf(reflect.Zero(signature).Interface())
	}
	for i := range c.questions {
		env[c.questions[i].ID] = exprType(c.questions[i].Kind)
	}
	return &typing{config: conf.New(env)}
}

// declare adds a derived value, once its kind is known.
func (t *typing) declare(id string, isNumber bool) {
	nature := types.Bool.Nature()
	if isNumber {
		nature = types.Float64.Nature()
	}
	t.config.Env.Fields[id] = nature
}

// checkTypes runs expr's check over an admitted tree. The gate should leave it
// nothing to find; what it finds all the same is an error.
func (g *gate) checkTypes(n ast.Node) {
	for _, patch := range g.patches {
		patch()
	}
	if g.c.typing == nil {
		g.c.typing = newTyping(g.c)
	}
	t := g.c.typing
	_, err := t.check.Check(&parser.Tree{Node: n, Source: file.NewSource(g.text.Source)}, t.config)
	if err == nil {
		return
	}
	at := file.Location{From: 0, To: len(g.runes)}
	message := err.Error()
	var e *file.Error
	if errors.As(err, &e) {
		at, message = e.Location, e.Message
	}
	g.fault(at, codeTypeCheck, "", "%s", message)
}
