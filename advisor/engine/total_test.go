package engine_test

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
	"longstand/advisor/engine"
	"longstand/advisor/reckon"
)

// fine is how many minor units make one of a worked figure, so that rounding
// to whole units does not show.
const fine = 1e6

// lineOf is a line with the mean and deviation of a figure. Three figures at
// equal distance d have the variance .6 d^2.
func lineOf(kind string, chance float64, f reckon.Figure) advisor.Line {
	d := f.Deviation / math.Sqrt(0.6)
	at := func(x float64) int64 { return int64(math.Round(x * fine)) }
	return advisor.Line{Kind: kind, Chance: chance, Low: at(f.Mean - d), Usual: at(f.Mean), High: at(f.Mean + d), Mean: at(f.Mean)}
}

// pert is the figure of a job by the older rule (l + 4u + h)/6, (h - l)/6.
func pert(low, usual, high float64) reckon.Figure {
	return reckon.Figure{Mean: (low + 4*usual + high) / 6, Deviation: (high - low) / 6}
}

// TestThreeJobsAddUp: three firm jobs of 830 in all stray by 119.117 if each
// varies by itself and by 190 if they vary together (worked figures).
func TestThreeJobsAddUp(t *testing.T) {
	total := advisor.Total{Lines: []advisor.Line{lineOf("firm", 1, pert(100, 150, 320)), lineOf("firm", 1, pert(300, 450, 900)),
		lineOf("firm", 1, pert(80, 120, 400))}}
	engine.SumUp(&total)
	assert.InDelta(t, 830, float64(total.Firm)/fine, 1e-5)
	assert.Equal(t, total.Firm, total.Likely)
	assert.Zero(t, total.Maybe)
	assert.InDelta(t, 119.117, total.Spread.Independent/fine, 0.0005)
	assert.InDelta(t, 190, total.Spread.Dependent/fine, 1e-4)
	assert.InDelta(t, 982.65, float64(total.Independent.High)/fine, 0.01)
	assert.InDelta(t, 1073.49, float64(total.Dependent.High)/fine, 0.01)
	assert.InDelta(t, 830-152.65, float64(total.Independent.Low)/fine, 0.01)
	assert.InDelta(t, 830-243.49, float64(total.Dependent.Low)/fine, 0.01)
	for i, mean := range []float64{170, 500, 160} {
		assert.InDelta(t, mean, float64(total.Lines[i].Expected)/fine, 1e-5)
	}
}

// TestAMaybeJobCountsByItsChance: needed 3 times in 10, (300, 450, 900) has the
// mean 150 and the variance 55,500; it takes nothing off what is firm.
func TestAMaybeJobCountsByItsChance(t *testing.T) {
	total := advisor.Total{Lines: []advisor.Line{lineOf("maybe", 0.3, pert(300, 450, 900))}}
	engine.SumUp(&total)
	assert.Zero(t, total.Firm)
	assert.InDelta(t, 150, float64(total.Maybe)/fine, 1e-5)
	assert.InDelta(t, 55500, sq(total.Lines[0].Deviation/fine), 0.01)
	assert.Zero(t, total.Independent.Low)

	total.Lines = append(total.Lines, lineOf("firm", 1, reckon.Figure{Mean: 200}))
	engine.SumUp(&total)
	assert.InDelta(t, 200, float64(total.Independent.Low)/fine, 1e-5, "never under what is firm")
	assert.InDelta(t, 350, float64(total.Likely)/fine, 1e-5)
}

func sq(x float64) float64 { return x * x }

// apart works the total out again from its lines by the functions of reckon.
func apart(t require.TestingT, lines []advisor.Line, kinds string) (by, together reckon.Figure) {
	var figures []reckon.Figure
	for _, l := range lines {
		if !strings.Contains(kinds, l.Kind) {
			continue
		}
		f, err := reckon.ThreeFigures(float64(l.Low), float64(l.Usual), float64(l.High))
		require.NoError(t, err)
		if l.Sum != nil && l.Sum.Saved > 0 && l.Low == 1 { // a low held at 1: what is saved comes off the mean in full
			f.Mean = float64(l.Mean)
		}
		f, err = reckon.Maybe(l.Chance, f)
		require.NoError(t, err)
		figures = append(figures, f)
	}
	return reckon.Independent(figures...), reckon.Dependent(figures...)
}

// agrees holds a total to the independent computation, to one minor unit a line.
func agrees(t require.TestingT, total *advisor.Total) {
	slack := float64(len(total.Lines) + 1)
	firmBy, firmTogether := apart(t, total.Lines, "firm look")
	allBy, allTogether := apart(t, total.Lines, "firm look maybe risk")
	assert.InDelta(t, firmBy.Mean, total.Firm, slack)
	assert.InDelta(t, allBy.Mean, total.Likely, slack)
	assert.Equal(t, total.Likely, total.Firm+total.Maybe)
	for _, r := range []struct {
		firm, all reckon.Figure
		got       advisor.Range
	}{{firmBy, allBy, total.Independent}, {firmTogether, allTogether, total.Dependent}} {
		floor, _ := r.firm.OneInTen()
		low, high := r.all.OneInTen()
		assert.InDelta(t, max(floor, low), r.got.Low, 2*slack)
		assert.InDelta(t, high, r.got.High, 2*slack)
	}
}

// TestTotalsAgreeWithReckon works every total of the repository's cars out again.
func TestTotalsAgreeWithReckon(t *testing.T) {
	e := builtin(t, nil)
	files, err := filepath.Glob(facts + "*.toml")
	require.NoError(t, err)
	for _, f := range files {
		total := advise(t, e, strings.TrimSuffix(filepath.Base(f), ".toml")).Total
		agrees(t, &total)
	}
}

// TestLikelyIsEveryCostByItsChance: what the lines add up to is what the calls
// say, each operation's own cost (its risks in it) by its chance.
func TestLikelyIsEveryCostByItsChance(t *testing.T) {
	e := builtin(t, nil)
	for _, car := range []string{"02_wet_outdoors", "19_one_bubble", "25_single_circuit", "39_any_waking"} {
		a := advise(t, e, car)
		want := float64(a.Total.Looking)
		for i := range a.Operations {
			switch o := &a.Operations[i]; {
			case o.Call == advisor.Do || o.Call == advisor.DoOpen:
				want += float64(o.Cost - o.Saved)
			case o.Call == advisor.LookFirst && o.MaybeChance > 0:
				want += o.MaybeChance * float64(o.Cost)
			case o.Call == advisor.LookFirst:
				want += *o.Chance * float64(o.Cost)
			}
		}
		assert.InDelta(t, want, a.Total.Likely, float64(len(a.Total.Lines)), car)
	}
}

func TestAnyTotalAgreesWithReckon(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		var total advisor.Total
		for range rapid.IntRange(0, 30).Draw(r, "lines") {
			low := rapid.Int64Range(0, 1e6).Draw(r, "low")
			usual := low + rapid.Int64Range(0, 1e6).Draw(r, "more")
			high := usual + rapid.Int64Range(0, 1e6).Draw(r, "most")
			l := advisor.Line{Kind: rapid.SampledFrom([]string{"firm", "look", "maybe", "risk"}).Draw(r, "kind"), Chance: 1, Low: low, Usual: usual, High: high}
			if l.Kind == "maybe" || l.Kind == "risk" {
				l.Chance = rapid.Float64Range(0, 1).Draw(r, "chance")
			}
			l.Mean = int64(math.Floor(0.3*float64(low) + 0.4*float64(usual) + 0.3*float64(high) + 0.5))
			total.Lines = append(total.Lines, l)
		}
		engine.SumUp(&total)
		agrees(r, &total)
	})
}

// TestEverySumComesFromTheBook works each line out again from the book's own
// three figures: hours x factor x rate + parts, the two varying together.
func TestEverySumComesFromTheBook(t *testing.T) {
	e := builtin(t, nil)
	ops := map[string]*advisor.Operation{}
	for i := range e.Book().Operations {
		ops[e.Book().Operations[i].ID] = &e.Book().Operations[i]
	}
	rate, n := float64(e.Book().Settings.Rate), 0
	for _, car := range []string{"04_engine_out_anyway", "07_head_left_on", "25_single_circuit"} {
		a := advise(t, e, car)
		for _, l := range a.Total.Lines {
			op := ops[l.Operation]
			if l.Sum == nil || len(op.Variants) > 0 {
				continue
			}
			factor := a.HoursFactor
			if op.NoFactor {
				factor = 1
			}
			at := func(h, p float64) float64 { return h*factor*rate + p*100 }
			f, err := reckon.ThreeFigures(at(op.Hours.Low, op.Parts.Low), at(op.Hours.Usual, op.Parts.Usual), at(op.Hours.High, op.Parts.High))
			require.NoError(t, err)
			assert.InDelta(t, max(1, f.Mean-float64(l.Sum.Saved)), l.Mean, 1, "%s: %s", car, l.Operation)
			assert.InDelta(t, f.Mean, l.Sum.Labour.Mean+l.Sum.Parts.Mean, 1, "%s: %s", car, l.Operation)
			assert.InDelta(t, max(1, at(op.Hours.Usual, op.Parts.Usual)-float64(l.Sum.Saved)), l.Usual, 1, "%s: %s", car, l.Operation)
			n++
		}
	}
	assert.Greater(t, n, 30)
}
