package condition

import (
	"testing"

	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/diag"
)

func options(ids ...string) (out []advisor.Option) {
	for _, id := range ids {
		out = append(out, advisor.Option{ID: id, Name: id})
	}
	return out
}

// vocabulary is what the conditions in these tests speak of.
func vocabulary() ([]advisor.Question, []string) {
	return []advisor.Question{
		{ID: "laid_up", Kind: advisor.NumberKind, Low: 0, High: 60, Step: 1, Unit: "years"},
		{ID: "damp", Kind: advisor.YesNoKind},
		{ID: "turns", Kind: advisor.YesNoKind},
		{ID: "climate", Kind: advisor.Choice, Options: options("dry", "damp", "salt")},
		{ID: "finds", Kind: advisor.Choices, Options: options("mud", "oil_film", "nest")},
		{ID: "compression", Kind: advisor.ReadingsKind, Low: 0, High: 300, Unit: "psi"},
		{ID: "made", Kind: advisor.Year, Low: 1900, High: 2030},
		{ID: "tyre_code", Kind: advisor.Code, CodeOf: "tyre_date"},
		{ID: "words", Kind: advisor.Text},
		{ID: "pressure", Kind: advisor.NumberKind, Step: 0.1, Unit: "bar"},
	}, []string{"head_off", "engine_out", "sump_off"}
}

func vocabularyCompiler() *Compiler {
	questions, operations := vocabulary()
	return NewCompiler(questions, operations)
}

// placed is a text whose faults carry their runes as columns.
func placed(s string) Text {
	return Text{Source: s, Inside: func(from, to int) diag.Span {
		return diag.Span{File: "t", Line: 1, Col: from + 1, EndLine: 1, EndCol: to + 1, Start: from, End: to}
	}}
}

// one compiles a single condition that must be without faults.
func one(t *testing.T, c *Compiler, source string) advisor.CondID {
	t.Helper()
	id, faults := c.Condition(placed(source))
	require.Empty(t, faults, source)
	return id
}

// viewOf compiles one condition over the vocabulary and sets some answers.
func viewOf(t *testing.T, source string, answers map[string]advisor.Value) (*View, advisor.CondID) {
	t.Helper()
	c := vocabularyCompiler()
	id := one(t, c, source)
	v := c.Program().NewView()
	v.Reset(2025.5)
	for name, val := range answers {
		q, ok := c.question[name]
		require.True(t, ok, name)
		v.Set(q, val)
	}
	return v, id
}
