package condition

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

func TestDerived(t *testing.T) {
	c := vocabularyCompiler()
	faults := c.DeriveAll([]Derivation{ // in the wrong order
		{"very_old", placed("age > 30 and not wet")},
		{"age", placed("case_year - made")},
		{"wet", placed("climate in [\"damp\", \"salt\"]")},
	})
	require.Empty(t, faults)
	id := one(t, c, "not very_old or age < 3")
	p := c.Program()
	age, ok := p.DerivedIndex("age")
	require.True(t, ok)
	old, _ := p.DerivedIndex("very_old")
	_, ok = p.DerivedIndex("nothing")
	assert.False(t, ok)
	assert.True(t, p.DerivedIsNumber(age))
	assert.False(t, p.DerivedIsNumber(old))
	v := p.NewView()
	v.Reset(2025)
	lo, hi := v.Number(age)
	assert.Equal(t, [2]float64{-5, 125}, [2]float64{lo, hi})
	v.Set(6, advisor.NumberRange(1980, 1990))
	lo, hi = v.Number(age)
	assert.Equal(t, [2]float64{35, 45}, [2]float64{lo, hi})
	assert.Equal(t, u, v.DerivedTruth(old))
	v.Set(3, advisor.OneOf(1))
	assert.Equal(t, y, v.DerivedTruth(old))
	assert.Equal(t, n, v.Truth(id))
	cond, ok := p.DerivedCondition(old)
	require.True(t, ok)
	assert.Equal(t, y, v.Truth(cond))
	lo, hi = v.Number(old)
	assert.True(t, lo < -1e300 && hi > 1e300, "a condition has no number")
}

func TestDerivedFaults(t *testing.T) {
	c := vocabularyCompiler()
	faults := c.DeriveAll([]Derivation{
		{"a", placed("b + 1")}, {"b", placed("cc - 1")}, {"cc", placed("a * 2")},
		{"bad", placed("nonsense > 3")}, {"user", placed("bad and damp")}, {"blank", placed("")}, {"fine", placed("damp")},
	})
	var codes []string
	for _, d := range faults {
		codes = append(codes, d.Code)
	}
	assert.Equal(t, []string{"cycle", "unknown-name", "syntax"}, codes)
	assert.Equal(t, "a derived value rests on itself: a -> b -> cc -> a", faults[0].Message)
	assert.Len(t, faults[0].Related, 2)
	_, faults = c.Condition(placed("bad or a > 3 or user or not fine"))
	assert.Empty(t, faults, "nobody is blamed twice")
	c.Declare("later")
	_, faults = c.Condition(placed("later > 3"))
	require.Len(t, faults, 1)
	assert.Equal(t, codeCycle, faults[0].Code)
	c.Program().NewView()
}

// One way in: equal conditions are one, equal atoms are one, an empty text is
// condition 0 and always true.
func TestSharing(t *testing.T) {
	c := vocabularyCompiler()
	a := one(t, c, "laid_up > 3 and damp")
	assert.Equal(t, a, one(t, c, "(laid_up>3) and (damp and damp)"))
	assert.Equal(t, a, one(t, c, "3 < laid_up and damp"))
	assert.Equal(t, a, one(t, c, "not (laid_up <= 3 or not damp)"))
	assert.NotEqual(t, a, one(t, c, "laid_up >= 3 and damp"))
	empty, faults := c.Condition(placed(""))
	assert.Zero(t, empty)
	assert.Empty(t, faults)
	p := c.Program()
	assert.Len(t, p.atoms, 2+3, "two constants, two comparisons, one yes or no")
	assert.Equal(t, y, p.NewView().Truth(0))
	assert.Equal(t, []advisor.CondID{a, a + 1}, p.ReadBy(0))
	assert.Empty(t, p.ReadBy(8))
}

func TestDoneAndThresholds(t *testing.T) {
	c := vocabularyCompiler()
	require.Empty(t, c.DeriveAll([]Derivation{{"age", placed("case_year - made")}}))
	id := one(t, c, "done(sump_off) and (age > 10 or done(head_off)) and 2 * laid_up + 1 < 8 and laid_up > 5")
	one(t, c, "any(compression, # < 90) or min(compression) < 100 and count(compression, # > 120) > 2 and age * laid_up > 3")
	p := c.Program()
	assert.Equal(t, []int{0, 2}, p.Done(id))
	assert.Equal(t, []float64{3.5, 5}, p.Thresholds(0))
	assert.Equal(t, []float64{90, 100, 120}, p.Thresholds(5))
	assert.Empty(t, p.Thresholds(6), "it turns at another year in another case")
	assert.Equal(t, []float64{2015.5}, p.ThresholdsAt(6, 2025.5))
}

// Atoms read as an author would write them.
func TestAtomTexts(t *testing.T) {
	c := vocabularyCompiler()
	require.Empty(t, c.DeriveAll([]Derivation{{"age", placed("case_year - made")}, {"wet", placed("damp")}}))
	texts := []string{"laid_up >= 10", "laid_up < 3", "laid_up == 2", "laid_up != 2", "laid_up <= 7.5", "laid_up > 1", "turns", "not turns",
		"climate == \"dry\"", "climate != \"salt\"", "climate in [\"dry\", \"salt\"]", "climate not in [\"damp\", \"salt\"]", "\"nest\" in finds",
		"\"nest\" not in finds", "known(made)", "not done(head_off)", "age > 3", "wet", "not wet", "made > tyre_code", "case_year - tyre_code > 3",
		"laid_up / (made + 1) > 2", "laid_up - (made - 2) < 4", "min(compression) < 3", "count(compression, # >= 2) > 1", "-(laid_up + made) < 2",
		"cut_limit(laid_up) > 3"}
	for _, text := range texts {
		id := one(t, c, text)
		atoms := c.Program().Atoms(id)
		require.Len(t, atoms, 1, text)
		assert.Equal(t, text, atoms[0].Text)
	}
	id := one(t, c, "laid_up > 3 and (done(sump_off) or wet)")
	atoms := c.Program().Atoms(id)
	require.Len(t, atoms, 3)
	assert.Equal(t, AtomInfo{Text: "laid_up > 3", Questions: []int{0}, Operation: -1, Derived: -1, Number: true, Constant: 3, Step: 1}, atoms[0])
	assert.Equal(t, 2, atoms[1].Operation)
	assert.Equal(t, AtomInfo{Text: "wet", Questions: []int{1}, Operation: -1, Derived: 1}, atoms[2])
}

func TestNamesAndReserved(t *testing.T) {
	assert.Equal(t, []string{"age", "a", "cond"}, Names("age > 3 and not a or \"a\" in cond == known(age) ? &"))
	for _, name := range []string{"and", "min", "known", "case_year", "matches", trade[0].name} {
		assert.True(t, Reserved(name), name)
	}
	assert.False(t, Reserved("climate"))
}
