package condition

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Texts that stop, blow up or kill expr itself are turned away with a place,
// before anything is built from them.
func TestHostileTexts(t *testing.T) {
	chain := "laid_up"
	for range 22 {
		chain = "(0 < " + chain + " < 9 ? 1 : 2)"
	}
	chains := "laid_up"
	for range 90 {
		chains = "0 < (" + chains + ") < 9"
	}
	for _, row := range []struct{ name, source, code string }{
		{"maps in maps", `map(1..1000000, map(1..1000000, # * 2))`, codeNotAdmitted},
		{"a loop of loops", `let r = 1..900000; all(r, all(r, # > 0))`, codeNotAdmitted},
		{"tests in tests", `any(compression, any(compression, any(compression, any(compression, any(compression, # > 1000)))))`, codeNotAdmitted},
		{"growing words", `reduce(1..24, #acc + #acc, "aaaaaaaaaa") == "x"`, codeNotAdmitted},
		{"joined words", `join(map(1..300000, "x"), repeat("y", 300000)) == "x"`, codeNotAdmitted},
		{"a million brackets", strings.Repeat("(", 1_000_000), codeTooLong},
		{"two thousand brackets", strings.Repeat("(", 2000), codeTooDeep},
		{"brackets hidden in words", strings.Repeat(`(")"`, 400), codeTooDeep},
		{"lists in lists", strings.Repeat("[", 2000), codeTooDeep},
		{"doubling chains", chain, codeNotAdmitted},
		{"many chains", chains, codeTooDeep},
		{"chains without brackets", strings.Repeat("laid_up < ", 180) + "3", ""},
		{"words without end", strings.Repeat("a+", 900) + "3 > 2", codeTooLong},
		{"two thousand minus signs", strings.Repeat("-", 2000) + "laid_up > 1", codeTooLong},
		{"hundreds of minus signs", strings.Repeat("-", 390) + "laid_up > 1", codeNotAdmitted},
		{"hundreds of nots", strings.Repeat("not ", 399) + "damp", codeNotAdmitted},
		{"two of each", "not not damp and 3 - -laid_up > 2", ""},
		{"a word that never ends", `"` + strings.Repeat("x", 2000), codeSyntax},
		{"a remark that never ends", "damp /*" + strings.Repeat("x", 1900), codeNotAdmitted},
		{"a name without end", strings.Repeat("x", 2040), codeUnknownName},
		{"hundreds of faults", strings.Repeat("nil or ", 190) + "nil", codeNotAdmitted},
		{"no text at all", string([]byte{0xff, 0xfe, 0x00}), codeNotAdmitted},
	} {
		c := vocabularyCompiler()
		_, faults := c.Condition(placed(row.source))
		if row.code == "" {
			assert.Empty(t, faults, row.name)
		} else if assert.NotEmpty(t, faults, row.name) {
			assert.Equal(t, row.code, faults[0].Code, row.name)
			assert.LessOrEqual(t, len(faults), maxFaults+1, row.name)
		}
		assert.Less(t, len(c.tables.nodes)+len(c.tables.atoms)+len(c.tables.numbers), 3000, row.name)
		c.Program().NewView()
	}
}

// A book of nothing but the longest conditions is stopped as a whole, with one
// word and not with thousands.
func TestHostileBook(t *testing.T) {
	c := vocabularyCompiler()
	said := 0
	for range 1000 {
		_, faults := c.Condition(placed(strings.Repeat("damp and ", 199) + "turns"))
		said += len(faults)
	}
	assert.Equal(t, 1, said)
	faults := c.Derive("late", placed("damp"))
	assert.Empty(t, faults)
	assert.Len(t, c.Program().atoms, 4)
}

// Chains inside chains: the grammar puts the middle of a chain into the tree
// twice, so what hangs below must not be entered twice at every level.
func TestNestedChainsAreRefusedAtTheTop(t *testing.T) {
	source := "laid_up"
	for range 30 {
		source = "0 < (" + source + " < 9) < 9"
	}
	g := vocabularyCompiler().gate(placed(source))
	node := g.read()
	require.NotNil(t, node)
	g.truth(node, false)
	assert.Len(t, g.faults, 2)
	assert.Equal(t, codeWrongKind, g.faults[0].Code)
}

// Derived values that double at every step stay linear in the tables, in the
// views and in everything that is told about them.
func TestDoublingDerivedValues(t *testing.T) {
	c := vocabularyCompiler()
	all := []Derivation{{"n0", placed("laid_up + 1")}, {"b0", placed("damp")}}
	for i := range 60 {
		all = append(all, Derivation{fmt.Sprintf("n%d", i+1), placed(fmt.Sprintf("n%d + n%d", i, i))},
			Derivation{fmt.Sprintf("b%d", i+1), placed(fmt.Sprintf("b%d and turns or not b%d", i, i))})
	}
	require.Empty(t, c.DeriveAll(all))
	id := one(t, c, "n60 > 5764607523034234880 and b60")
	p := c.Program()
	v := p.NewView()
	assert.Equal(t, []int{0, 1, 2}, p.Reads(id))
	assert.Equal(t, []int{0, 1, 2}, v.Missing(id, nil))
	assert.Len(t, p.Thresholds(0), 1)
	assert.Len(t, p.Atoms(id), 2)
	assert.Less(t, len(p.nodes), 400)
	assert.Equal(t, n, p.Never(id).Answer|n)
}
