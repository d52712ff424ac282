package condition

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
)

func TestVerdicts(t *testing.T) {
	c := vocabularyCompiler()
	require.Empty(t, c.DeriveAll([]Derivation{{"wet", placed("climate in [\"damp\", \"salt\"]")}, {"age", placed("case_year - made")}}))
	ids := map[string]advisor.CondID{}
	id := func(text string) advisor.CondID {
		if _, ok := ids[text]; !ok {
			ids[text] = one(t, c, text)
		}
		return ids[text]
	}
	for _, row := range []struct {
		ask     string
		a, b    string
		want    advisor.Truth
		example string
	}{
		{"never", "laid_up > 3 and laid_up < 4", "", y, ""}, // answers come in whole years
		{"never", "laid_up > 3 and laid_up < 5", "", n, "laid_up = 4"},
		{"never", "pressure > 0.3 and pressure < 0.4", "", y, ""},
		{"never", "climate == \"dry\" and wet", "", y, ""},
		{"never", "damp and not turns", "", n, "damp = true, turns = false"},
		{"never", "age > 10 and age < 5", "", y, ""},
		{"never", "age > 10 and age < 15", "", n, "age = 11"},
		{"never", "age > 400", "", y, ""}, // nothing is older than the range allows
		{"never", "min(compression) < 90 and max(compression) > 100", "", u, "min(compression) = 89, max(compression) = 101"},
		{"always", "damp or not damp", "", y, ""},
		{"always", "climate == \"dry\" or wet", "", y, ""},
		{"always", "laid_up < 60", "", n, "laid_up = 60"},
		{"implies", "laid_up > 8", "laid_up > 3", y, ""},
		{"implies", "laid_up > 3", "laid_up > 8", n, "laid_up = 4"},
		{"implies", "climate == \"salt\" and damp", "wet", y, ""},
		{"apart", "laid_up > 8", "laid_up <= 8", y, ""},
		{"apart", "laid_up >= 8", "laid_up <= 8", n, "laid_up = 8"},
		{"apart", "\"mud\" in finds", "\"nest\" in finds", n, "\"mud\" in finds, \"nest\" in finds"},
		{"apart", "done(head_off)", "not done(head_off)", y, ""},
		{"apart", "known(climate)", "wet", n, "known(climate), climate == \"damp\""},
		{"apart", "not known(climate)", "wet", u, "not known(climate), climate == \"damp\""},
		{"apart", "laid_up > 8 and damp", "climate == \"dry\" or laid_up > 3", n, "laid_up = 9, damp = true"}, // climate can be left out
		{"cover", "laid_up < 5", "laid_up > 5", n, "laid_up = 5"},
		{"cover", "laid_up <= 5", "laid_up > 5", y, ""},
	} {
		a := id(row.a)
		b := advisor.CondID(0)
		if row.b != "" {
			b = id(row.b)
		}
		p := c.Program()
		got := map[string]func() Verdict{
			"never": func() Verdict { return p.Never(a) }, "always": func() Verdict { return p.Always(a) },
			"implies": func() Verdict { return p.Implies(a, b) }, "apart": func() Verdict { return p.Apart(a, b) },
			"cover": func() Verdict { return p.Cover(a, b) },
		}[row.ask]()
		assert.Equal(t, row.want, got.Answer, "%s %s | %s: %v", row.ask, row.a, row.b, got.Example)
		assert.Equal(t, row.example, strings.Join(got.Example, ", "), "%s %s | %s", row.ask, row.a, row.b)
	}
}

// Beyond the cap nothing is claimed.
func TestTooManyRegions(t *testing.T) {
	var questions []advisor.Question
	var parts []string
	for i := range 21 {
		questions = append(questions, advisor.Question{ID: fmt.Sprintf("q%d", i), Kind: advisor.YesNoKind})
		parts = append(parts, fmt.Sprintf("q%d", i))
	}
	c := NewCompiler(questions, nil)
	long, short := one(t, c, strings.Join(parts, " and ")), one(t, c, strings.Join(parts[:18], " and "))
	p := c.Program()
	assert.Equal(t, Verdict{}, p.Never(long))
	assert.Equal(t, n, p.Never(short).Answer)
	assert.Equal(t, y, p.Implies(short, short).Answer)
}

// Decisions agree with trying every world by hand.
func TestVerdictsAgainstWorlds(t *testing.T) {
	decided := 0
	rapid.Check(t, func(rt *rapid.T) {
		g := formulas{t: rt}
		a, b := g.draw(2), g.draw(2)
		c := NewCompiler(formulaQuestions(), []string{"op"})
		ca, _ := c.Condition(placed(a.text))
		cb, _ := c.Condition(placed(b.text))
		p := c.Program()
		never, always, implies, apart := true, true, true, true
		completions(make([]advisor.Value, 10), append(a.reads, b.reads...), func(w *world) {
			x, y := a.holds(w), b.holds(w)
			never, always, implies, apart = never && !x, always && x, implies && (!x || y), apart && !(x && y)
		})
		for _, row := range []struct {
			got  Verdict
			want bool
		}{{p.Never(ca), never}, {p.Always(ca), always}, {p.Implies(ca, cb), implies}, {p.Apart(ca, cb), apart}} {
			if row.got.Answer.Known() {
				require.Equal(rt, advisor.TruthOf(row.want), row.got.Answer, "%s | %s: %v", a.text, b.text, row.got.Example)
				decided++
			}
		}
	})
	assert.Positive(t, decided)
}
