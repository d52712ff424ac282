package condition

import (
	"testing"

	"github.com/expr-lang/expr"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
)

// exprAnswer runs a text in expr's own virtual machine over one world.
func exprAnswer(t require.TestingT, text string, w *world) bool {
	env := map[string]any{
		"p": w.yes[0], "q": w.yes[1], "r": w.yes[2], "c": wordsOf[w.choice[0]], "d": wordsOf[w.choice[1]],
		"x": float64(w.number[0]), "y": float64(w.number[1]), "z": float64(w.number[2]),
		"f": []string{}, "l": w.readings, "op": w.done, "case_year": 2025.5,
		"known":  func(any) bool { return true },
		"done":   func(done bool) bool { return done },
		"spread": func(l []float64) float64 { return readingsSpread(l) },
	}
	for i, m := range []string{"m", "n"} {
		if w.flags>>i&1 == 1 {
			env["f"] = append(env["f"].([]string), m)
		}
	}
	program, err := expr.Compile(text, expr.Env(env), expr.AsBool())
	require.NoError(t, err, text)
	out, err := expr.Run(program, env)
	require.NoError(t, err, text)
	return out.(bool)
}

func readingsSpread(l []float64) float64 {
	least, greatest := l[0], l[0]
	for _, x := range l {
		least, greatest = min(least, x), max(greatest, x)
	}
	return greatest - least
}

func drawWorld(t *rapid.T) (*world, []advisor.Value) {
	values := drawValues(t, true)
	var w *world
	completions(values, nil, func(one *world) { w = one })
	w.done = rapid.Bool().Draw(t, "done")
	return w, values
}

// Where everything is known the tables say what expr's own machine says, and
// what the meaning written by hand says.
func TestAgainstExpr(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		g := formulas{t: rt}
		f := g.draw(3)
		p, id := compileFormula(rt, f.text)
		w, values := drawWorld(rt)
		v := p.NewView()
		v.Reset(2025.5)
		v.Load(values)
		v.SetDone(0, advisor.TruthOf(w.done))
		got := v.Truth(id)
		require.Equal(rt, advisor.TruthOf(f.holds(w)), got, "by hand: %s", f.text)
		require.Equal(rt, advisor.TruthOf(exprAnswer(rt, f.text, w)), got, "by expr: %s", f.text)
	})
}

// The same for texts whose reading depends on how tightly operators bind.
func TestBindingAgainstExpr(t *testing.T) {
	for _, text := range []string{
		"p or q and r", "not p and q", "not p or q", "p and not q or r", "x + y * z > 6", "x - y - z < 1", "x - (y - z) < 1",
		"x / (y + 1) / 2 > 1", "-x + y > 0", "- (x + 1) < -2", "1 <= x < 3", "1 <= x + y < 3 < z + 2", "x != y", "2 * x == y + z",
		"c != \"a\" and d in [\"a\", \"k\"]", "\"k\" == c", "not (c in [\"a\"])", "\"m\" not in f", "any(l, 3 < #)", "count(l, # >= 0) > 2",
		"1 <= count(l, # >= 2) < 3", "mean(l) * 2 > x", "x > 1.5 and x < 4.25", "case_year - 2020 > x", "all(l, # <= 4) or spread(l) == 2",
		"known(p) and p or known(c)", "any(l, # != -1)", "min(l) > -x",
	} {
		p, id := compileFormula(t, text)
		rapid.Check(t, func(rt *rapid.T) {
			w, values := drawWorld(rt)
			v := p.NewView()
			v.Reset(2025.5)
			v.Load(values)
			require.Equal(rt, advisor.TruthOf(exprAnswer(rt, text, w)), v.Truth(id), text)
		})
	}
}
