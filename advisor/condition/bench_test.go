package condition

import (
	"strings"
	"testing"

	"longstand/advisor"
)

// A rule file of 2 MB that is nothing but the longest conditions, with faults
// and without.
func BenchmarkHostileFile(b *testing.B) {
	for name, source := range map[string]string{
		"faults": strings.Repeat("nil or ", 190) + "nil",
		"names":  strings.Repeat("abcdefg or ", 180) + "abc",
		"sound":  strings.Repeat("damp or ", 199) + "turns",
		"minus":  strings.Repeat("-", 390) + "laid_up > 1",
		"calls":  strings.Repeat("min(compression) > 1 or ", 55) + "damp",
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				c := vocabularyCompiler()
				for range 1000 {
					c.Condition(placed(source))
				}
				c.Program()
			}
		})
	}
}

// What a check of the book spends on specimens: measure and mutants of 600
// rules, two specimens each.
func BenchmarkMutants(b *testing.B) {
	book := newBigBook(b, 600)
	v := book.program.NewView()
	b.ReportAllocs()
	for b.Loop() {
		for id := range book.program.Conditions() {
			m := book.program.Measure(advisor.CondID(id))
			for i := range 2 {
				v.Load(book.cases[i])
				m.Add(v, v.Truth(advisor.CondID(id)))
			}
			m.Pins()
			m.Mutants()
		}
	}
}
