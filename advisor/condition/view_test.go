package condition

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// Atoms over what is still possible: a range, a set of options, listed and
// excluded options, readings.
func TestWhatIsStillPossible(t *testing.T) {
	readings := advisor.Value{State: advisor.Told, Readings: []float64{140, 138, 95, 136}}
	listed := advisor.Value{State: advisor.Told, Yes: 1, No: 2}
	hidden := advisor.Value{State: advisor.Hidden}
	for _, row := range []struct {
		source, question string
		value            advisor.Value
		want             advisor.Truth
	}{
		{"laid_up > 4", "laid_up", advisor.NumberRange(5, 8), y},
		{"laid_up > 8", "laid_up", advisor.NumberRange(5, 8), n},
		{"laid_up > 6", "laid_up", advisor.NumberRange(5, 8), u},
		{"laid_up == 5", "laid_up", advisor.Number(5), y},
		{"laid_up != 9", "laid_up", advisor.NumberRange(5, 8), y},
		{"5 <= laid_up <= 8", "laid_up", advisor.NumberRange(5, 8), y},
		{"laid_up / 2 < 31", "laid_up", hidden, y}, // its range ends at 60
		{"pressure < 61", "pressure", hidden, u},
		{"climate != \"dry\"", "climate", advisor.OneOf(0b110), y},
		{"climate in [\"damp\", \"salt\"]", "climate", advisor.OneOf(0b110), y},
		{"climate == \"damp\"", "climate", advisor.OneOf(0b110), u},
		{"climate == \"dry\"", "climate", advisor.OneOf(0b110), n},
		{"climate == \"dry\"", "climate", advisor.Value{State: advisor.CantTell}, u},
		{"\"mud\" in finds", "finds", listed, y},
		{"\"oil_film\" in finds", "finds", listed, n},
		{"\"nest\" in finds", "finds", listed, u},
		{"\"nest\" not in finds", "finds", listed, u},
		{"min(compression) < 100", "compression", readings, y},
		{"max(compression) == 140", "compression", readings, y},
		{"mean(compression) == 127.25", "compression", readings, y},
		{"spread(compression) == 45", "compression", readings, y},
		{"count(compression) == 4", "compression", readings, y},
		{"count(compression, # > 130) == 3", "compression", readings, y},
		{"any(compression, # < 100)", "compression", readings, y},
		{"all(compression, # < 140)", "compression", readings, n},
		{"any(compression, # == 95)", "compression", readings, y},
		{"all(compression, # != 95)", "compression", readings, n},
		{"any(compression, # < 100)", "compression", hidden, u},
		{"spread(compression) < 301", "compression", hidden, y},
		{"case_year - made > 20", "made", advisor.NumberRange(1990, 1995), y},
		{"case_year - tyre_code > 10", "tyre_code", advisor.NumberRange(2009.4, 2009.42), y},
		{"10 / laid_up > 1", "laid_up", advisor.NumberRange(0, 2), u},
		{"10 / laid_up > 1", "laid_up", advisor.NumberRange(1, 2), y},
		{"laid_up > 3", "laid_up", advisor.NumberRange(9, 2), u}, // makes no sense: nothing told
	} {
		v, id := viewOf(t, row.source, map[string]advisor.Value{row.question: row.value})
		assert.Equal(t, row.want, v.Truth(id), "%s with %+v", row.source, row.value)
	}
}

func TestKnownAndDone(t *testing.T) {
	c := vocabularyCompiler()
	known, done := one(t, c, "known(climate)"), one(t, c, "not done(engine_out)")
	code := one(t, c, "known(tyre_code)")
	finds := one(t, c, "known(finds)")
	p := c.Program()
	v := p.NewView()
	assert.Equal(t, n, v.Truth(known))
	v.OpenKnown(true)
	assert.Equal(t, u, v.Truth(known), "may still be asked")
	v.Set(3, advisor.Value{State: advisor.CantTell})
	assert.Equal(t, n, v.Truth(known), "was asked")
	v.Set(3, advisor.OneOf(0b011))
	assert.Equal(t, n, v.Truth(known), "two are possible")
	v.Set(3, advisor.OneOf(0b010))
	assert.Equal(t, y, v.Truth(known))
	v.Set(3, advisor.Value{})
	v.SetKnown(3, y)
	assert.Equal(t, y, v.Truth(known), "known by another channel")
	v.Load(make([]advisor.Value, 10))
	assert.Equal(t, y, v.Truth(known), "stays over a load")
	v.FreeKnown(3)
	assert.Equal(t, u, v.Truth(known))
	v.OpenKnown(false)
	assert.Equal(t, n, v.Truth(known))

	assert.Equal(t, y, v.Truth(done))
	v.SetDone(1, advisor.True)
	assert.Equal(t, n, v.Truth(done))
	v.SetDone(0, advisor.True) // read by nothing
	v.Reset(2025)
	assert.Equal(t, y, v.Truth(done))

	v.Set(7, advisor.NumberRange(2009.42, 2009.439)) // one week
	assert.Equal(t, y, v.Truth(code))
	v.Set(7, advisor.NumberRange(1989, 1999)) // which decade?
	assert.Equal(t, n, v.Truth(code))
	v.Set(4, advisor.Value{State: advisor.Told, Yes: 1, No: 6})
	assert.Equal(t, y, v.Truth(finds))
	v.Set(4, advisor.Value{State: advisor.Told, Yes: 1, No: 2})
	assert.Equal(t, n, v.Truth(finds))
}

// Missing names what the undecided part still reads, and nothing else.
func TestMissing(t *testing.T) {
	c := vocabularyCompiler()
	require.Empty(t, c.DeriveAll([]Derivation{{"age", placed("case_year - made")}, {"wet", placed("damp or climate == \"damp\"")}}))
	id := one(t, c, "(age > 10 or turns) and not wet and \"mud\" in finds")
	p := c.Program()
	v := p.NewView()
	v.Reset(2025)
	index := func(names ...string) (out []int) {
		for _, name := range names {
			out = append(out, c.question[name])
		}
		return out
	}
	assert.Equal(t, index("damp", "turns", "climate", "finds", "made"), v.Missing(id, nil))
	assert.Equal(t, index("damp", "turns", "climate", "finds", "made"), p.Reads(id))
	v.Set(c.question["made"], advisor.Number(1990))
	assert.Equal(t, index("damp", "climate", "finds"), v.Missing(id, nil))
	v.Set(c.question["damp"], advisor.YesNo(false))
	v.Set(c.question["finds"], advisor.Value{State: advisor.Told, Yes: 1})
	assert.Equal(t, index("climate"), v.Missing(id, nil))
	assert.Equal(t, append([]int{99}, index("climate")...), v.Missing(id, []int{99}), "appends")
	v.Set(c.question["climate"], advisor.OneOf(0b010))
	assert.Empty(t, v.Missing(id, nil))
	assert.Equal(t, n, v.Truth(id))
}

func TestCopyFrom(t *testing.T) {
	b := newBigBook(t, 100)
	a, o := b.program.NewView(), b.program.NewView()
	a.Reset(2024)
	a.Load(b.cases[1])
	o.CopyFrom(a)
	for q := range 50 {
		a.Set(q, b.cases[2][q])
		o.Set(q, b.cases[2][q])
	}
	assert.Equal(t, a.slots, o.slots)
	assert.Equal(t, a.tallies, o.tallies)
	assert.Equal(t, a.figures, o.figures)
}

// CopyFrom makes this view equal to another of the same program.
func (v *View) CopyFrom(o *View) {
	copy(v.slots, o.slots)
	copy(v.tallies, o.tallies)
	copy(v.figures, o.figures)
	copy(v.options, o.options)
	copy(v.yes, o.yes)
	copy(v.no, o.no)
	copy(v.readings, o.readings)
	copy(v.state, o.state)
	copy(v.exact, o.exact)
	copy(v.said, o.said)
	copy(v.sayKnown, o.sayKnown)
	v.open, v.caseYear = o.open, o.caseYear
}

// ViewOf is NewView, Reset, OpenKnown and Load at once.
func TestViewOf(t *testing.T) {
	b := newBigBook(t, 100)
	for _, open := range []bool{false, true} {
		want := b.program.NewView()
		want.Reset(2024)
		want.OpenKnown(open)
		want.Load(b.cases[1])
		got := b.program.ViewOf(b.cases[1], 2024, open)
		assert.Equal(t, want.slots, got.slots)
		assert.Equal(t, want.tallies, got.tallies)
		assert.Equal(t, want.figures, got.figures)
		got.Set(3, b.cases[2][3])
		want.Set(3, b.cases[2][3])
		assert.Equal(t, want.slots, got.slots)
	}
}
