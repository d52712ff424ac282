package condition

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
)

const (
	u = advisor.Unknown
	y = advisor.True
	n = advisor.False
)

func answerOf(t advisor.Truth) advisor.Value {
	switch t {
	case y:
		return advisor.YesNo(true)
	case n:
		return advisor.YesNo(false)
	}
	return advisor.Value{}
}

// The tables of strong Kleene logic; implication is written not a or b.
func TestKleeneTables(t *testing.T) {
	for _, row := range []struct {
		source     string
		a, b, want advisor.Truth
	}{
		{"damp and turns", y, u, u}, {"damp and turns", n, u, n}, {"damp and turns", u, u, u}, {"damp and turns", y, y, y},
		{"damp or turns", y, u, y}, {"damp or turns", n, u, u}, {"damp or turns", n, n, n},
		{"not damp", u, u, u}, {"not damp", y, u, n}, {"not damp", n, u, y},
		{"not damp or turns", n, u, y}, {"not damp or turns", u, y, y}, {"not damp or turns", y, u, u},
		{"not damp or turns", u, n, u}, {"not damp or turns", u, u, u},
		{"damp or not damp", u, u, u},
		{"damp and turns or not damp and turns", u, y, u},
		{"not (damp and turns)", u, n, y}, {"not (damp or turns)", u, y, n},
	} {
		v, id := viewOf(t, row.source, map[string]advisor.Value{"damp": answerOf(row.a), "turns": answerOf(row.b)})
		assert.Equal(t, row.want, v.Truth(id), "%s with %v, %v", row.source, row.a, row.b)
	}
}

// compileFormula compiles a random condition over the formulas' questions.
func compileFormula(t require.TestingT, text string) (*Program, advisor.CondID) {
	c := NewCompiler(formulaQuestions(), []string{"op"})
	id, faults := c.Condition(placed(text))
	require.False(t, faults.HasErrors(), "%s: %v", text, faults)
	return c.Program(), id
}

// What is known is never contradicted by a completion, and where each question
// occurs once nothing that could be known is missed.
func TestAgainstAllCompletions(t *testing.T) {
	for _, once := range []bool{false, true} {
		rapid.Check(t, func(rt *rapid.T) {
			g := formulas{t: rt, once: once}
			f := g.draw(3)
			p, id := compileFormula(rt, f.text)
			v := p.NewView()
			values := drawValues(rt, false)
			v.Load(values)
			some, all := false, true
			completions(values, f.reads, func(w *world) {
				holds := f.holds(w)
				some, all = some || holds, all && holds
			})
			got := v.Truth(id)
			if got == y {
				require.True(rt, all, "said true: %s", f.text)
			}
			if got == n {
				require.False(rt, some, "said false: %s", f.text)
			}
			if once && (all || !some) && !readsReadings(f) {
				require.True(rt, got.Known(), "missed: %s", f.text)
			}
		})
	}
}

// readsReadings: unknown readings are only sampled, so exactness is not claimed.
func readsReadings(f drawn) bool {
	for _, q := range f.reads {
		if q == "l" {
			return true
		}
	}
	return false
}

// Changing one answer after another gives what loading the last state gives.
func TestSetEqualsLoad(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := NewCompiler(formulaQuestions(), []string{"op"})
		require.Empty(rt, c.DeriveAll([]Derivation{{"big", placed("x + y > 4")}, {"sum", placed("x + 2 * y")},
			{"odd", placed("not big and known(c) or sum > 7")}}))
		var ids []advisor.CondID
		for _, text := range []string{"known(x) and not known(f)", "odd or not big", "sum / z > 2", "not done(op) and big", "not odd"} {
			id, faults := c.Condition(placed(text))
			require.False(rt, faults.HasErrors())
			ids = append(ids, id)
		}
		for range 6 {
			g := formulas{t: rt}
			id, faults := c.Condition(placed(g.draw(3).text))
			require.False(rt, faults.HasErrors())
			ids = append(ids, id)
		}
		p := c.Program()
		step, whole := p.NewView(), p.NewView()
		values := make([]advisor.Value, 10)
		for range 12 {
			q := rapid.IntRange(0, 9).Draw(rt, "question")
			values[q] = drawValues(rt, false)[q]
			step.Set(q, values[q])
			done := advisor.TruthOf(rapid.Bool().Draw(rt, "done"))
			step.SetDone(0, done)
			whole.Reset(0)
			whole.SetDone(0, done)
			whole.Load(values)
			for _, id := range ids {
				require.Equal(rt, whole.Truth(id), step.Truth(id))
			}
			require.Equal(rt, whole.slots, step.slots)
			require.Equal(rt, whole.figures, step.figures)
		}
	})
}
