package condition

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// The gate never panics, places every fault inside the text, and lets nothing
// through that a view cannot work out.
func FuzzGate(f *testing.F) {
	for _, seed := range []string{
		"", "damp", "not damp or turns and climate == \"dry\"", "1 <= laid_up < 5", "climate not in ['dry', \"salt\"]",
		"any(compression, # < 100) and spread(compression) > 20", "\"mud\" in finds", "known(damp) and done(head_off)",
		"case_year - made > 10 / (laid_up + 1)", "damp ? 1 : 2", "let x = 1; x", "a.b?.c[0:1]", "`x`", "b'x'", "1..2", "# > 1",
		"count(compression) > 2", "{a: 1}", "if damp { 1 } else { 2 }", "damp | not", "::damp", "laid_up ?? 3", "$env[\"x\"]", "0x1F < laid_up",
		"all(compression, {# > 1})", "none(compression, .x)", "((((", "\"\\u{110000}\"", "damp // x", "not not not damp", "-+-laid_up > -.5",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, source string) {
		c := vocabularyCompiler()
		id, faults := c.Condition(placed(source))
		length := utf8.RuneCountInString(source)
		for _, d := range faults {
			require.True(t, 0 <= d.At.Start && d.At.Start <= d.At.End && d.At.End <= max(length, 1), "%q: %v", source, d)
			require.NotEmpty(t, d.Code)
			require.NotEqual(t, codeTypeCheck, d.Code, "the gate let through: %q: %s", source, d.Message)
		}
		if source != "" && !faults.HasErrors() {
			require.NotEqual(t, refFault, c.conds[id], "%q", source)
		}
		p := c.Program()
		v := p.NewView()
		v.Reset(2025)
		require.LessOrEqual(t, len(v.Missing(id, nil)), len(p.Reads(id)))
	})
}
