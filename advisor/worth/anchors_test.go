package worth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"longstand/advisor/scope"
)

var one = scope.Price{Num: 1, Den: 1}

// scale keeps benefits fine enough that rounding them to whole units is lost in
// the tests' tolerance.
const scale = 10_000

// shop is a network with losses: the benefit of a node is its suspect's chance
// times its loss.
type shop struct {
	net    scope.Network
	node   []int // by suspect
	loss   []int64
	forced []string // opened to look
}

func (s shop) value(t testing.TB, chance []float64, changes []Change) float64 {
	p, err := s.net.Problem()
	require.NoError(t, err)
	o := Outcome{Changes: changes}
	for i := range p.Cost {
		p.Benefit[i], p.Cost[i] = p.Benefit[i]*scale, p.Cost[i]*scale
	}
	for k, node := range s.node {
		p.Benefit[node] = scope.Benefit(o.chance(chance, k), s.loss[k]*scale)
	}
	p.In = make([]bool, len(s.net))
	for _, name := range s.forced {
		p.In[s.net.Find(name)] = true
	}
	return float64(scope.NewSolver(0, 0).Best(p, one).Value) / scale
}

// worthOf is the mean value after a look less the value now (without its access).
func (s shop) worthOf(t testing.TB, chance []float64, faces ...Face) float64 {
	now := s
	now.forced = nil
	after := Mean(Outcomes(chance, faces, Limit), func(c []Change) float64 { return s.value(t, chance, c) })
	return after - now.value(t, chance, nil)
}

func test(id string, suspect int, hit, falseAlarm float64) Move {
	return Move{ID: id, Suspect: suspect, Ways: []Way{{hit, falseAlarm}, {1 - hit, 1 - falseAlarm}}}
}

func alone(m Move) Face { return Face{ID: m.ID, Moves: []Move{m}} }

// Repair at 400 or defer at 2000, chance .3.
func TestRepairOrDefer(t *testing.T) {
	s := shop{net: scope.Network{{Name: "repair", Cost: 400}}, node: []int{0}, loss: []int64{2000}}
	now := []float64{0.3}
	for _, c := range []struct{ hit, falseAlarm, worth float64 }{
		{0.9, 0.1, 204}, {0.8, 0.5, 44}, {0.6, 0.3, 4}, {1, 0, 280},
	} {
		got := s.worthOf(t, now, alone(test("t", 0, c.hit, c.falseAlarm)))
		assert.InDelta(t, c.worth, got, 1e-3, "%v", c)
	}
	out := Outcomes(now, []Face{alone(test("t", 0, 0.9, 0.1))}, Limit)
	require.Len(t, out, 2)
	assert.InDelta(t, 0.34, out[0].Chance, 1e-15, "true comes first")
	assert.InDelta(t, 27.0/34, out[0].Changes[0].Chance, 1e-15)
	assert.InDelta(t, 1.0/22, out[1].Changes[0].Chance, 1e-15)
}

// Two tests of which each alone changes no decision and which
// together are worth 6; so a bundle is an inspection of its own.
func TestTwoTestsAreWorthMoreAsABundle(t *testing.T) {
	s := shop{net: scope.Network{{Name: "repair", Cost: 400}}, node: []int{0}, loss: []int64{1000}}
	now := []float64{0.1}
	first, second := alone(test("a", 0, 0.8, 0.3)), alone(test("b", 0, 0.8, 0.3))
	assert.InDelta(t, 0, s.worthOf(t, now, first), 1e-3)
	assert.InDelta(t, 0, s.worthOf(t, now, second), 1e-3)
	assert.InDelta(t, 6, s.worthOf(t, now, first, second), 1e-3)
}

// eight is a ladder of eight operations, worked out by hand.
func eight(forced ...string) shop {
	net := scope.Network{
		{Name: "engine_out", Cost: 900},
		{Name: "gearbox_off", Cost: 200, Needs: []string{"engine_out"}},
		{Name: "clutch", Cost: 450, Needs: []string{"gearbox_off"}},
		{Name: "rear_seal", Cost: 110, Benefit: 420, Needs: []string{"gearbox_off"}},
		{Name: "flywheel_skim", Cost: 120, Benefit: 40, Needs: []string{"gearbox_off"}},
		{Name: "sump_clean", Cost: 150, Benefit: 240, Needs: []string{"engine_out"}},
		{Name: "mounts", Cost: 180, Benefit: 90, Needs: []string{"engine_out"}},
		{Name: "fuel_tank", Cost: 300, Benefit: 500},
	}
	return shop{net: net, node: []int{2}, loss: []int64{2000}, forced: forced}
}

// A look at the clutch is worth more than
// the clutch alone, since its answer opens or shuts the whole block.
func TestThroughTheClosure(t *testing.T) {
	now := []float64{0.45}
	look, sure := alone(test("look", 0, 0.9, 0.2)), alone(test("look", 0, 1, 0))
	s := eight()
	assert.InDelta(t, 200, s.value(t, now, nil), 1e-9)
	assert.InDelta(t, 1050, s.value(t, now, []Change{{0, 1}}), 1e-9)
	assert.InDelta(t, 200, s.value(t, now, []Change{{0, 0}}), 1e-9)
	assert.InDelta(t, 382.5, s.worthOf(t, now, sure), 1e-3)
	assert.InDelta(t, 217.75, s.worthOf(t, now, look), 1e-3)

	out := Outcomes(now, []Face{look}, Limit)
	assert.InDelta(t, 0.515, out[0].Chance, 1e-15)
	assert.InDelta(t, 64150.0/103, s.value(t, now, out[0].Changes), 1e-3)
	assert.InDelta(t, 200, s.value(t, now, out[1].Changes), 1e-3)

	// If the engine must first come out to look, that is paid in every outcome.
	assert.InDelta(t, -121.75, eight("engine_out").worthOf(t, now, look), 1e-3)
}

// Shachter's umbrella (utilities read, the forecast's table from memory): a sign
// with three levels.
func TestUmbrella(t *testing.T) {
	rain := []float64{0.3}
	best := func(changes []Change) float64 {
		o := Outcome{Changes: changes}
		p := o.chance(rain, 0)
		return max(20*(1-p)+70*p, 100*(1-p))
	}
	forecast := alone(Move{ID: "forecast", Ways: []Way{{0.6, 0.1}, {0.25, 0.2}, {0.15, 0.7}}})
	out := Outcomes(rain, []Face{forecast}, Limit)
	require.Len(t, out, 3)
	for i, want := range []struct{ chance, rain float64 }{{0.25, 18.0 / 25}, {0.215, 15.0 / 43}, {0.535, 9.0 / 107}} {
		assert.InDelta(t, want.chance, out[i].Chance, 1e-15)
		assert.InDelta(t, want.rain, out[i].Changes[0].Chance, 1e-15)
	}
	assert.InDelta(t, 70, best(nil), 1e-12)
	assert.InDelta(t, 77, Mean(out, best), 1e-12)
	sure := alone(test("sure", 0, 1, 0))
	assert.InDelta(t, 91, Mean(Outcomes(rain, []Face{sure}, Limit), best), 1e-12)
}

func TestBetween(t *testing.T) {
	ways, ok := Between(0.3, 27.0/34, 1.0/22)
	require.True(t, ok)
	assert.InDelta(t, 0.9, ways[0].With, 1e-14)
	assert.InDelta(t, 0.1, ways[0].Without, 1e-14)
	for _, c := range [][3]float64{{0.3, 0.3, 0.3}, {0.3, 0.5, 0.4}, {0.3, 0.3, 0.1}, {0, 0.5, 0}, {0, 0.5, -0.5}, {1, 1, 0.2}, {1, 1.5, 0.2}, {0.2, 0.8, 0.2}, {0.3, 0.1, 0.2}} {
		_, ok := Between(c[0], c[1], c[2])
		assert.False(t, ok, "%v", c)
	}
	ways, ok = Between(0.3, 1, 0) // decisive either way
	require.True(t, ok)
	assert.Equal(t, []Way{{1, 0}, {0, 1}}, ways)
	ways, ok = Between(0.3, 0.1, 0.6) // a sign that speaks against
	require.True(t, ok)
	out := Outcomes([]float64{0.3}, []Face{alone(Move{Ways: ways})}, Limit)
	assert.InDelta(t, 0.1, out[0].Changes[0].Chance, 1e-14)
	assert.InDelta(t, 0.6, out[1].Changes[0].Chance, 1e-14)
}

// Two suspects on one face, true first.
func TestLayoutOfAFace(t *testing.T) {
	now := []float64{0.5, 0.5, 0.7}
	face := Face{ID: "f", Moves: []Move{test("f", 0, 0.6, 0.2), test("g", 1, 0.9, 0.5)}} // true with .4 and .7
	out := Outcomes(now, []Face{face}, Limit)
	require.Len(t, out, 3)
	for i, want := range [][3]float64{{0.4, 0.75, 9.0 / 14}, {0.3, 1.0 / 3, 9.0 / 14}, {0.3, 1.0 / 3, 1.0 / 6}} {
		assert.InDelta(t, want[0], out[i].Chance, 1e-15)
		assert.InDelta(t, want[1], out[i].chance(now, 0), 1e-15)
		assert.InDelta(t, want[2], out[i].chance(now, 1), 1e-15)
		assert.Equal(t, 0.7, out[i].chance(now, 2), "what is not on the face stays")
	}
}

// A family moves as one: the shares of rivals make room.
func TestAFamilyMovesAsOne(t *testing.T) {
	now := []float64{0.2, 0.3, 0.5}
	m := test("s", 0, 0.9, 0.1)
	m.Rivals = []int{1, 2}
	out := Outcomes(now, []Face{alone(m)}, Limit)
	require.Len(t, out, 2)
	for _, o := range out {
		assert.InDelta(t, 1, o.chance(now, 0)+o.chance(now, 1)+o.chance(now, 2), 1e-15)
		assert.InDelta(t, 0.6, o.chance(now, 1)/o.chance(now, 2), 1e-14, "rivals keep their proportion")
	}
	assert.InDelta(t, 0.18/0.26, out[0].chance(now, 0), 1e-15)
}

func TestFurtherFacesAreLeftOut(t *testing.T) {
	now := make([]float64, 9)
	var faces []Face
	for k := range now {
		now[k] = 0.5
		faces = append(faces, alone(test(string(rune('a'+k)), k, 0.8, 0.3)))
	}
	out := Outcomes(now, faces, Limit)
	assert.Len(t, out, 64, "six faces of two")
	assert.Equal(t, 0.5, out[0].chance(now, 6))
	assert.Len(t, Outcomes(now, faces, 7), 4)
	faces[1].Moves[0].Ways = []Way{{0.5, 0.1}, {0.3, 0.3}, {0.2, 0.6}}
	assert.Len(t, Outcomes(now, faces, 5), 2, "nor is a smaller face tried in its place")
	assert.Equal(t, []Outcome{{Chance: 1}}, Outcomes(now, nil, Limit))
}

func TestFaces(t *testing.T) {
	sign := func(id string, who int, strength float64, questions ...int) Settled {
		return Settled{Who: who, Questions: questions, Strength: strength, Move: Move{ID: id, Suspect: who}}
	}
	ids := func(f Face) (out []string) {
		for _, m := range f.Moves {
			out = append(out, m.ID)
		}
		return out
	}
	faces := Faces([]Settled{
		sign("a", 0, 2, 1), sign("b", 0, 5, 1), // one suspect, one question: the stronger
		sign("c", 1, 3, 1, 2),                  // shares question 1
		sign("d", 2, 3, 2),                     // and through c question 2
		sign("e", 0, 3, 7),                     // a face of its own
		sign("h", 3, 4, 8), sign("g", 3, 4, 8), // as strong: the lower id
	})
	byID := map[string][]string{}
	for _, f := range faces {
		byID[f.ID] = ids(f)
	}
	require.Len(t, faces, 3)
	assert.ElementsMatch(t, []string{"b", "c", "d"}, byID["b"])
	assert.Equal(t, []string{"e"}, byID["e"])
	assert.Equal(t, []string{"g"}, byID["g"])
}
