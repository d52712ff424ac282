package belief

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"longstand/advisor"
	"pgregory.net/rapid"
)

func share01() *rapid.Generator[float64] { return rapid.Float64Range(0.005, 0.995) }

func drawTruth(t *rapid.T) advisor.Truth {
	return rapid.SampledFrom([]advisor.Truth{advisor.Unknown, advisor.True, advisor.False}).Draw(t, "truth")
}

func drawEvidence(t *rapid.T, most int) []Evidence {
	ev := make([]Evidence, rapid.IntRange(0, most).Draw(t, "signs"))
	for i := range ev {
		ev[i] = Evidence{
			Sign: i, A: share01().Draw(t, "a"), B: share01().Draw(t, "b"), Truth: drawTruth(t),
			How:   advisor.Channel(rapid.IntRange(0, 4).Draw(t, "how")),
			Group: rapid.SampledFrom([]string{"", "", "x", "y"}).Draw(t, "group"),
		}
		if rapid.IntRange(0, 6).Draw(t, "decisive") == 0 {
			ev[i].Decisive = true
			switch rapid.IntRange(0, 1).Draw(t, "which") {
			case 0:
				ev[i].A = 0
			case 1:
				ev[i].B = 0
			}
		}
	}
	return ev
}

// The order of evidence does not matter, and the chance is a chance.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base, ev := share01().Draw(t, "base"), drawEvidence(t, 6)
		p, lines, conflict := Update(base, ev, usual)
		assert.True(t, p >= 0 && p <= 1)
		counted := map[int]bool{}
		for _, l := range lines {
			counted[l.Sign] = l.Counted
		}
		other := rapid.Permutation(ev).Draw(t, "order")
		q, lines, again := Update(base, other, usual)
		assert.InDelta(t, p, q, 1e-12)
		assert.Equal(t, conflict, again)
		for _, l := range lines {
			assert.Equal(t, counted[l.Sign], l.Counted, "sign %d", l.Sign)
		}
	})
}

// 1 <= ratio of a report <= min(ratio of the event, h/f), for a sign that supports.
func TestReportIsBounded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := share01().Draw(t, "b")
		a := rapid.Float64Range(b, 0.999).Draw(t, "a")
		f := share01().Draw(t, "false alarm")
		h := rapid.Float64Range(f, 0.999).Draw(t, "hit")
		trust := advisor.Trust{Hit: h, FalseAlarm: f}
		yes, no := Report(a, b, advisor.True, trust), Report(a, b, advisor.False, trust)
		const hair = 1e-9
		assert.GreaterOrEqual(t, yes, 1-hair)
		assert.LessOrEqual(t, yes, min(a/b, h/f)+hair)
		assert.LessOrEqual(t, no, 1+hair)
		assert.GreaterOrEqual(t, no, (1-a)/(1-b)-hair)
	})
}

// Of each group exactly one known sign counts, and none is stronger.
func TestOneOfEachGroupCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ev := drawEvidence(t, 8)
		_, lines, conflict := Update(0.2, ev, usual)
		if conflict {
			return
		}
		count, known, best, top := map[string]int{}, map[string]bool{}, map[string]float64{}, map[string]float64{}
		for i, l := range lines {
			if !ev[i].Truth.Known() {
				assert.False(t, l.Counted)
				assert.Equal(t, 1.0, l.Ratio)
				continue
			}
			g := ev[i].Group
			known[g] = true
			top[g] = max(top[g], strength(l.Ratio))
			if l.Counted {
				count[g]++
				best[g] = strength(l.Ratio)
			} else {
				assert.NotEmpty(t, g)
			}
		}
		for g := range known {
			if g != "" {
				assert.Equal(t, 1, count[g], g)
				assert.Equal(t, top[g], best[g], g)
			}
		}
	})
}

// A duplicate inside a group changes nothing.
func TestDuplicateInAGroupChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ev := drawEvidence(t, 6)
		p, _, conflict := Update(0.2, ev, usual)
		for _, e := range ev {
			if e.Group != "" {
				e.Sign = 99
				ev = append(ev, e)
				break
			}
		}
		q, _, again := Update(0.2, ev, usual)
		assert.Equal(t, p, q)
		assert.Equal(t, conflict, again)
	})
}

func TestNothingIsNaN(t *testing.T) {
	for _, base := range []float64{0, 1e-300, 0.5, 1} {
		for _, a := range []float64{0, 0.5, 1} {
			for _, b := range []float64{0, 0.5, 1} {
				for _, truth := range []advisor.Truth{advisor.Unknown, advisor.True, advisor.False} {
					ev := []Evidence{seen(1, a, b, truth), seen(2, 0.2, 0.9, advisor.True)}
					p, lines, _ := Update(base, ev, usual)
					low, high := Bounds(base, ev, usual)
					for _, x := range []float64{p, low, high, lines[0].Ratio} {
						require.False(t, math.IsNaN(x), "base %v a %v b %v %v", base, a, b, truth)
					}
				}
			}
		}
	}
}

func TestRatioAllocatesNothing(t *testing.T) {
	ev := []Evidence{seen(1, 0.8, 0.2, advisor.True), seen(2, 0.6, 0.3, advisor.False), grouped("g", 3, seen(3, 0.6, 0.3, advisor.True))}
	lines := make([]Line, len(ev))
	assert.Zero(t, testing.AllocsPerRun(50, func() { Ratio(lines, ev, &usual) }))
}

func BenchmarkRatio(b *testing.B) {
	ev := make([]Evidence, 8)
	for i := range ev {
		ev[i] = grouped([]string{"", "g", "h"}[i%3], advisor.Channel(i%4), seen(i, 0.7, 0.2, advisor.True))
	}
	lines := make([]Line, len(ev))
	b.ReportAllocs()
	for b.Loop() {
		Ratio(lines, ev, &usual)
	}
}
