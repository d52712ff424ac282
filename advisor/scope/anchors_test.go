package scope

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// eight is an example worked out by hand.
var eight = Network{
	{Name: "engine_out", Cost: 900},
	{Name: "gearbox_off", Cost: 200, Needs: []string{"engine_out"}},
	{Name: "clutch", Cost: 450, Benefit: 900, Needs: []string{"gearbox_off"}},
	{Name: "rear_seal", Cost: 110, Benefit: 420, Needs: []string{"gearbox_off"}},
	{Name: "flywheel_skim", Cost: 120, Benefit: 40, Needs: []string{"gearbox_off"}},
	{Name: "sump_clean", Cost: 150, Benefit: 240, Needs: []string{"engine_out"}},
	{Name: "mounts", Cost: 180, Benefit: 90, Needs: []string{"engine_out"}},
	{Name: "fuel_tank", Cost: 300, Benefit: 500},
}

var theFive = []string{"engine_out", "gearbox_off", "clutch", "rear_seal", "sump_clean"}

var one = Price{Num: 1, Den: 1}

func problemOf(t testing.TB, n Network) *Problem {
	p, err := n.Problem()
	require.NoError(t, err)
	return p
}

func with(names []string, more ...string) []string {
	return append(append([]string{}, names...), more...)
}

func TestEightOperationsByPrice(t *testing.T) {
	p := problemOf(t, eight)
	s := NewSolver(len(eight), len(p.Arcs))
	for _, c := range []struct {
		price                 Price
		value                 int64 // in the scale of the price
		positives, minimumCut int64
		scope                 []string
	}{
		{Price{Num: 1, Den: 2}, 0, 100, 100, nil},
		{one, 200, 1050, 850, []string{"fuel_tank"}},
		{Price{Num: 5, Den: 4}, 465 * 4, 1565, 1100, with(theFive, "fuel_tank")},
		{Price{Num: 5, Den: 2}, 3085 * 2, 4185, 1100, with(theFive, "mounts", "fuel_tank")},
		{Price{Num: 4, Den: 1}, 6350, 7450, 1100, with(theFive, "flywheel_skim", "mounts", "fuel_tank")},
	} {
		best := s.Best(p, c.price)
		assert.Equal(t, c.value, best.Value, "value at %v", c.price)
		assert.ElementsMatch(t, c.scope, eight.Names(best.Member), "scope at %v", c.price)
		var positives int64
		for i := range eight {
			positives += max(0, c.price.Num*p.Benefit[i]-c.price.Den*p.Cost[i])
		}
		assert.Equal(t, c.positives*c.price.Den, positives, "positives at %v", c.price)
		assert.Equal(t, c.minimumCut*c.price.Den, positives-best.Value, "minimum cut at %v", c.price)
	}
}

// Which questions are live: only those on the clutch and the sump.
func TestLiveQuestions(t *testing.T) {
	low, high := problemOf(t, eight), problemOf(t, eight)
	for name, r := range map[string][2]int64{"clutch": {300, 1400}, "sump_clean": {100, 240}, "fuel_tank": {500, 700}, "flywheel_skim": {40, 60}, "mounts": {90, 100}} {
		low.Benefit[eight.Find(name)], high.Benefit[eight.Find(name)] = r[0], r[1]
	}
	surely, possibly := TwoCuts(NewSolver(8, 6), low, one, high, one)
	assert.Equal(t, []string{"fuel_tank"}, eight.Names(surely))
	assert.Equal(t, with(theFive, "fuel_tank"), eight.Names(possibly))
}

func TestProjectSelection(t *testing.T) {
	n := Network{
		{Name: "P1", Benefit: 100, Needs: []string{"M1", "M2"}}, {Name: "P2", Benefit: 200, Needs: []string{"M2"}},
		{Name: "P3", Benefit: 150, Needs: []string{"M3"}}, {Name: "M1", Cost: 200}, {Name: "M2", Cost: 100}, {Name: "M3", Cost: 50},
	}
	best := NewSolver(6, 4).Best(problemOf(t, n), one)
	assert.Equal(t, int64(200), best.Value)
	assert.Equal(t, []string{"P2", "P3", "M2", "M3"}, n.Names(best.Member))
}

func TestTie(t *testing.T) {
	n := Network{{Name: "x", Benefit: 5, Needs: []string{"y"}}, {Name: "y", Cost: 5}}
	p, s := problemOf(t, n), NewSolver(0, 0)
	best := s.Best(p, one)
	assert.Empty(t, n.Names(best.Member))
	assert.Zero(t, best.Value)
	assert.Equal(t, []string{"x", "y"}, n.Names(s.Maximal(p, one).Member))
}

func TestOverlap(t *testing.T) {
	assert.Equal(t, int64(99), Overlap(1100, []float64{0.3, 0.3}))
	assert.Equal(t, int64(0), Overlap(1100, []float64{0.3}))
	assert.Equal(t, int64(0), Overlap(1100, nil))
	assert.Equal(t, int64(2700), Overlap(900, []float64{1, 1, 1, 1}), "four sure reasons open it once")

	// Two items behind one door, p .3, own loss 200, reopening 1100.
	n := Network{{Name: "door", Cost: 1}, {Name: "a", Cost: 1, Benefit: 390, Needs: []string{"door"}}, {Name: "b", Cost: 1, Benefit: 390, Needs: []string{"door"}}}
	p := problemOf(t, n)
	assert.Equal(t, int64(780), p.Benefit[1]+p.Benefit[2])
	p.Benefit[0] = -Overlap(1100, []float64{0.3, 0.3})
	assert.Equal(t, int64(681-3), NewSolver(3, 2).Best(p, one).Value)
}

// In wins over Out, so that the members always are a closure.
func TestInWinsAClash(t *testing.T) {
	p := problemOf(t, eight)
	p.In, p.Out = make([]bool, 8), make([]bool, 8)
	p.In[eight.Find("clutch")], p.Out[eight.Find("engine_out")] = true, true
	best := NewSolver(8, 6).Best(p, one)
	assert.True(t, best.Member[eight.Find("engine_out")])
}
