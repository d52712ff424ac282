package book

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostile are rule files made to keep a reader busy.
func hostile() map[string]string {
	many := func(n int, format string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	rule := "[[standing]]\nid = 'r'\noperation = 'head_off'\nsays = 'in'\nbecause = 'So.'\nsource = 'practice'\n"
	return map[string]string{
		"too large":          strings.Repeat("#", MaxBytes+1),
		"unknown keys":       "[[family]]\nid = 'x'\n" + many(50_000, "key_number_%d = 1\n"),
		"unknown tables":     many(50_000, "table_%d = 1\n"),
		"unknown names":      "[[inspection]]\nid = 'x'\nname = 'x'\nwhere = 'bonnet'\nminutes = 1\nanswers = [" + many(50_000, "'compression_%d',") + "]\n",
		"empty items":        strings.Repeat("[[sign]]\n", 50_000),
		"one id":             strings.Repeat("[[family]]\nid = 'x'\nname = 'x'\n", 15_000),
		"deep":               rule + "fires = " + strings.Repeat("[", 100_000),
		"brackets":           rule + "when = '" + strings.Repeat("(", 1_000_000) + "'\n",
		"a long condition":   rule + "when = '" + strings.Repeat("climate == \"damp\" or ", 50_000) + "engine_turns'\n",
		"specimens":          rule + "when = 'engine_turns'\nfires = [" + strings.Repeat("{engin_turns=1},", 20_000) + "]\n",
		"many rules":         many(6_000, "[[standing]]\nid = 'r%d'\noperation = 'head_off'\nsays = 'in'\nwhen = 'years_laid_up > 3'\nbecause = 'So.'\nsource = 'practice'\n") + "says = 3\n",
		"many holds":         many(6_000, "[[hold]]\nid = 'h%d'\nname = 'x'\nstops = ['run']\nwhen = 'engine_turns'\nuntil = 'done(head_off)'\nbecause = 'So.'\nsource = 'practice'\n") + "stops = 3\n",
		"many cases":         "[[suspect]]\nid = 's'\nname = 's'\npart = 's'\ncured_by = 'head_off'\nbecause = 'So.'\nsource = 'practice'\nbase = [" + strings.Repeat("{ when = 'years_laid_up > 3', count = '1 of 10' },", 5_000) + "]\n",
		"derived in a chain": many(3_000, "[[derived]]\nid = 'd%d'\nis = 'engine_turns and not engine_turns'\n"),
	}
}

// TestHostileEnds: each ends with a fault that is placed.
func TestHostileEnds(t *testing.T) {
	for name, text := range hostile() {
		r := check([]File{base(t), {Name: "x.toml", Data: []byte(text)}}, false)
		if name == "derived in a chain" {
			require.NotNil(t, r.Program)
			continue
		}
		require.True(t, r.Diagnostics.HasErrors(), name)
		assert.Equal(t, "x.toml", r.Diagnostics[0].At.File, name)
		assert.LessOrEqual(t, len(r.Diagnostics), 3*maxFaults, name)
	}
}

func BenchmarkHostile(b *testing.B) {
	small := base(b)
	for name, text := range hostile() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Check([]File{small, {Name: "x.toml", Data: []byte(text)}})
			}
		})
	}
}
