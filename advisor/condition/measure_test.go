package condition

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
)

// measured runs specimens of a condition over the vocabulary: each the answers
// and what is wanted.
func measured(t *testing.T, source string, specimens ...map[string]advisor.Value) *Measure {
	t.Helper()
	c := vocabularyCompiler()
	require.Empty(t, c.DeriveAll([]Derivation{{"wet", placed("climate in [\"damp\", \"salt\"]")}, {"age", placed("case_year - made")}}))
	id := one(t, c, source)
	p := c.Program()
	m := p.Measure(id)
	v := p.NewView()
	for _, s := range specimens {
		v.Reset(2025)
		for name, val := range s {
			v.Set(c.question[name], val)
		}
		require.True(t, m.Add(v, v.Truth(id)))
	}
	return m
}

type answers = map[string]advisor.Value

var (
	yes = advisor.YesNo(true)
	no  = advisor.YesNo(false)
	num = advisor.Number
)

func TestPins(t *testing.T) {
	m := measured(t, "damp and laid_up >= 10",
		answers{"damp": yes, "laid_up": num(10)}, answers{"damp": yes, "laid_up": num(9)})
	pins := m.Pins()
	require.Len(t, pins, 2)
	assert.Equal(t, Pin{Atom: pins[0].Atom, True: PinMet, False: PinOpen, Below: PinNone, At: PinNone, Above: PinNone}, pins[0])
	assert.Equal(t, Pin{Atom: pins[1].Atom, True: PinMet, False: PinMet, Below: PinMet, At: PinMet, Above: PinOpen}, pins[1])

	m = measured(t, "damp and laid_up >= 10", answers{"damp": yes, "laid_up": num(10)}, answers{"damp": yes, "laid_up": num(9)},
		answers{"damp": yes, "laid_up": num(11)}, answers{"damp": no, "laid_up": num(11)})
	for _, pin := range m.Pins() {
		assert.NotContains(t, []Pinned{pin.True, pin.False, pin.Below, pin.At, pin.Above}, PinOpen, pin.Atom.Text)
	}
}

// A derived value is one atom; what cannot be met is not asked for.
func TestPinsOfDerivedAndImpossible(t *testing.T) {
	m := measured(t, "wet and (climate != \"dry\" or damp)", answers{"climate": advisor.OneOf(2), "damp": no}, answers{"climate": advisor.OneOf(1), "damp": yes})
	pins := m.Pins()
	require.Len(t, pins, 3)
	assert.Equal(t, "wet", pins[0].Atom.Text)
	assert.Equal(t, []Pinned{PinMet, PinMet}, []Pinned{pins[0].True, pins[0].False})
	assert.Equal(t, []Pinned{PinMet, PinImpossible}, []Pinned{pins[1].True, pins[1].False}, "wet is never dry")
	assert.Equal(t, []Pinned{PinImpossible, PinImpossible}, []Pinned{pins[2].True, pins[2].False})
}

func TestEdgesOutsideTheRange(t *testing.T) {
	m := measured(t, "laid_up < 60 and laid_up >= 1")
	pins := m.Pins()
	assert.Equal(t, []Pinned{PinOpen, PinOpen, PinNone}, []Pinned{pins[0].Below, pins[0].At, pins[0].Above})
	assert.Equal(t, []Pinned{PinOpen, PinOpen, PinOpen}, []Pinned{pins[1].Below, pins[1].At, pins[1].Above})
	m = measured(t, "laid_up < 5 or laid_up < 6")
	pins = m.Pins()
	assert.Equal(t, PinImpossible, pins[0].Below, "the second atom has decided already")
	assert.Equal(t, PinImpossible, pins[0].True)
	assert.Equal(t, PinOpen, pins[0].Above, "at 6 either alone would make it true")
}

func TestSpecimenThatDisagreesDoesNotCount(t *testing.T) {
	c := vocabularyCompiler()
	id := one(t, c, "damp")
	p := c.Program()
	v := p.NewView()
	v.Set(1, yes)
	m := p.Measure(id)
	assert.False(t, m.Add(v, advisor.False))
	assert.Equal(t, PinOpen, m.Pins()[0].True)
	assert.True(t, m.Add(v, advisor.True))
	assert.Equal(t, PinMet, m.Pins()[0].True)
}

// The planes say what setting one atom by hand says, on any condition and any
// number of specimens.
func TestPinsAgainstHand(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tree := drawTree(rt, 4)
		c := NewCompiler(formulaQuestions(), nil)
		id := one(t, c, tree.text())
		p := c.Program()
		m := p.Measure(id)
		v := p.NewView()
		atoms := p.Atoms(id)
		met := map[string][2]bool{}
		for range rapid.IntRange(0, 80).Draw(rt, "specimens") {
			var a [3]advisor.Truth
			for i := range a {
				a[i] = rapid.SampledFrom([]advisor.Truth{u, y, n}).Draw(rt, "truth")
				v.Set(i, answerOf(a[i]))
			}
			require.Equal(rt, tree.truth(a), v.Truth(id))
			m.Add(v, v.Truth(id))
			for i, name := range []string{"p", "q", "r"} {
				on, off := a, a
				on[i], off[i] = y, n
				x, z := tree.truth(on), tree.truth(off)
				if decides := x.Known() && z.Known() && x != z; decides {
					was := met[name]
					met[name] = [2]bool{was[0] || a[i] == y, was[1] || a[i] == n}
				}
			}
		}
		for i, pin := range m.Pins() {
			name := formulaQuestions()[atoms[i].Questions[0]].ID
			want := met[name]
			if strings.HasPrefix(pin.Atom.Text, "not ") {
				want[0], want[1] = want[1], want[0]
			}
			require.Equal(rt, want, [2]bool{pin.True == PinMet, pin.False == PinMet}, "%s in %s", name, tree.text())
		}
	})
}

// tree is a condition over p, q and r, worked out by hand in Kleene logic.
type tree struct {
	name string
	op   string
	a, b *tree
}

func drawTree(t *rapid.T, depth int) *tree {
	if depth == 0 || rapid.IntRange(0, 3).Draw(t, "leaf") == 0 {
		return &tree{name: rapid.SampledFrom([]string{"p", "q", "r"}).Draw(t, "name")}
	}
	op := rapid.SampledFrom([]string{"and", "or", "not"}).Draw(t, "op")
	return &tree{op: op, a: drawTree(t, depth-1), b: drawTree(t, depth-1)}
}

func (x *tree) text() string {
	switch x.op {
	case "":
		return x.name
	case "not":
		return "not (" + x.a.text() + ")"
	}
	return "(" + x.a.text() + ") " + x.op + " (" + x.b.text() + ")"
}

func (x *tree) truth(a [3]advisor.Truth) advisor.Truth {
	switch x.op {
	case "":
		return a[x.name[0]-'p']
	case "not":
		return x.a.truth(a).Not()
	case "and":
		return x.a.truth(a).And(x.b.truth(a))
	}
	return x.a.truth(a).Or(x.b.truth(a))
}
