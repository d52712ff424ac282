package condition

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// bigBook is a made-up book of some size: 200 questions and rules of one to six
// atoms each, always the same.
type bigBook struct {
	questions []advisor.Question
	texts     []string
	program   *Program
	cases     [][]advisor.Value
}

func newBigBook(t testing.TB, rules int) *bigBook {
	r := rand.New(rand.NewPCG(7, 7))
	b := &bigBook{}
	for i := range 200 {
		q := advisor.Question{ID: fmt.Sprintf("q%d", i), Kind: advisor.YesNoKind}
		switch {
		case i >= 190:
			q.Kind, q.Low, q.High = advisor.ReadingsKind, 0, 100
		case i >= 150:
			q.Kind, q.Options = advisor.Choice, options("a", "b", "c", "d", "e", "g")
		case i >= 90:
			q.Kind, q.Low, q.High = advisor.NumberKind, 0, 100
		}
		b.questions = append(b.questions, q)
	}
	c := NewCompiler(b.questions, nil)
	for range rules {
		text := b.atom(r)
		for range r.IntN(6) {
			text += []string{" and ", " and ", " or "}[r.IntN(3)] + b.atom(r)
		}
		b.texts = append(b.texts, text)
		one(nil2(t), c, text)
	}
	b.program = c.Program()
	for range 64 {
		b.cases = append(b.cases, b.answers(r, 0.3))
	}
	return b
}

// nil2 lets one be used from benchmarks.
func nil2(t testing.TB) *testing.T {
	if real, ok := t.(*testing.T); ok {
		return real
	}
	return &testing.T{}
}

func (b *bigBook) atom(r *rand.Rand) string {
	i := r.IntN(200)
	k := 10 * (1 + r.IntN(9))
	switch b.questions[i].Kind {
	case advisor.Choice:
		return fmt.Sprintf("q%d == %q", i, []string{"a", "b", "c", "d", "e", "g"}[r.IntN(6)])
	case advisor.NumberKind:
		if r.IntN(7) == 0 {
			return fmt.Sprintf("q%d + q%d > %d", i, 90+r.IntN(60), 2*k)
		}
		return fmt.Sprintf("q%d %s %d", i, []string{"<", ">", "<=", ">="}[r.IntN(4)], k)
	case advisor.ReadingsKind:
		return fmt.Sprintf("any(q%d, # > %d)", i, k)
	}
	return []string{"", "not "}[r.IntN(2)] + fmt.Sprintf("q%d", i)
}

func (b *bigBook) answers(r *rand.Rand, unknown float64) []advisor.Value {
	values := make([]advisor.Value, len(b.questions))
	for i := range values {
		if r.Float64() < unknown {
			continue
		}
		switch b.questions[i].Kind {
		case advisor.Choice:
			values[i] = advisor.OneOf(1 << r.IntN(6))
		case advisor.NumberKind:
			values[i] = advisor.Number(float64(r.IntN(101)))
		case advisor.ReadingsKind:
			values[i] = advisor.Value{State: advisor.Told, Readings: []float64{r.Float64() * 100, r.Float64() * 100, r.Float64() * 100, r.Float64() * 100}}
		default:
			values[i] = advisor.YesNo(r.IntN(2) == 0)
		}
	}
	return values
}

// Nothing that a case is asked allocates.
func TestNothingAllocates(t *testing.T) {
	b := newBigBook(t, 200)
	v := b.program.NewView()
	buf := make([]int, 0, 200)
	i := 0
	for name, f := range map[string]func(){
		"load":  func() { v.Load(b.cases[i%64]) },
		"set":   func() { v.Set(i%200, b.cases[(i+1)%64][i%200]) },
		"reset": func() { v.Reset(2025) },
		"known": func() { v.SetKnown(i%200, advisor.True); v.OpenKnown(i%2 == 0); v.FreeKnown(i % 200) },
		"missing": func() {
			for id := range b.program.Conditions() {
				buf = v.Missing(advisor.CondID(id), buf[:0])
			}
		},
	} {
		require.Zero(t, testing.AllocsPerRun(200, func() { f(); i++ }), name)
	}
}

// Calls of trade functions allocate nothing of their own either.
func TestCallsDoNotAllocate(t *testing.T) {
	c := newCompiler(formulaQuestions(), nil, testFunctions)
	one(t, c, "rising(x, y) > 2")
	v := c.Program().NewView()
	require.Zero(t, testing.AllocsPerRun(100, func() { v.Set(5, advisor.NumberRange(1, 4)) }))
}

func BenchmarkLoad(b *testing.B) {
	book := newBigBook(b, 600)
	v := book.program.NewView()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		v.Load(book.cases[i&63])
		i++
	}
}

func BenchmarkSet(b *testing.B) {
	book := newBigBook(b, 600)
	v := book.program.NewView()
	v.Load(book.cases[0])
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		q := i % 200
		v.Set(q, book.cases[1+i/200%63][q])
		i++
	}
}

func BenchmarkCompile(b *testing.B) {
	book := newBigBook(b, 600)
	b.ReportAllocs()
	for b.Loop() {
		c := NewCompiler(book.questions, nil)
		for _, text := range book.texts {
			c.Condition(placed(text))
		}
		c.Program()
	}
}
