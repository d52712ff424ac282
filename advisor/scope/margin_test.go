package scope

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestMargins(t *testing.T) {
	p := problemOf(t, eight)
	s := NewSolver(len(eight), len(p.Arcs))
	for _, c := range []struct {
		price Price
		by    map[string]float64
	}{
		{one, map[string]float64{"engine_out": -250, "gearbox_off": -250, "clutch": -250, "rear_seal": -250,
			"sump_clean": -250, "flywheel_skim": -330, "mounts": -340, "fuel_tank": 200}},
		{Price{Num: 5, Den: 4}, map[string]float64{"engine_out": 140, "gearbox_off": 140, "clutch": 140, "rear_seal": 140,
			"sump_clean": 140, "flywheel_skim": -70, "mounts": -67.5, "fuel_tank": 325}},
	} {
		all := make([]Margin, len(eight))
		s.Margins(p, c.price, all, nil)
		for name, want := range c.by {
			i := eight.Find(name)
			in, out := s.Margin(p, c.price, i)
			assert.InDelta(t, want, float64(in-out)/float64(c.price.Den), 0, "%s at %v", name, c.price)
			assert.Equal(t, Margin{in, out}, all[i], "%s at %v, all at once", name, c.price)
		}
	}
}

func TestMarginOfWhatIsForced(t *testing.T) {
	p := problemOf(t, eight)
	p.In, p.Out = make([]bool, 8), make([]bool, 8)
	p.In[eight.Find("clutch")] = true
	p.Out[eight.Find("fuel_tank")] = true
	s := NewSolver(len(eight), len(p.Arcs))
	all := make([]Margin, len(eight))
	s.Margins(p, one, all, nil)

	_, ok := all[eight.Find("engine_out")].By()
	assert.False(t, ok, "the clutch is forced in and needs the engine out")
	by, ok := all[eight.Find("clutch")].By()
	assert.True(t, ok)
	assert.Equal(t, int64(-250), by, "its own forcing is lifted")
	by, _ = all[eight.Find("fuel_tank")].By()
	assert.Equal(t, int64(200), by)

	p.Out[eight.Find("engine_out")] = true
	p.In[eight.Find("clutch")] = false
	s.Margins(p, one, all, nil)
	assert.Equal(t, int64(Impossible), all[eight.Find("rear_seal")].In)
}

// Break-even and the single answer that would flip the call.
func TestBreakEven(t *testing.T) {
	p := problemOf(t, eight)
	s := NewSolver(len(eight), len(p.Arcs))
	clutch := eight.Find("clutch")
	in, out := s.Margin(p, one, clutch)
	assert.Equal(t, 0.575, BreakEven(900, in-out, one, 2000))
	for _, c := range []struct {
		p     float64
		value int64
		in    bool
	}{
		{0.45, 200, false}, {0.575, 200, false}, {0.576, 202, true},
		{27.0 / 49, 200, false}, {18.0 / 29, 291, true},
	} {
		p.Benefit[clutch] = Benefit(c.p, 2000)
		best := s.Best(p, one)
		assert.Equal(t, c.in, best.Member[clutch], "clutch at %v", c.p)
		assert.Equal(t, c.value, best.Value, "value at %v", c.p)
	}
}

func TestMoney(t *testing.T) {
	for value, want := range map[int64]int64{10: 3, 9: 2, -10: -3, -9: -2, 0: 0} {
		assert.Equal(t, want, Money(value, Price{Num: 1, Den: 4}), "%d quarters", value)
	}
}
