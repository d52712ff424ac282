package belief

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"longstand/advisor"
	"pgregory.net/rapid"
)

// complete settles (or leaves) every open sign at random, by any channel.
func complete(t *rapid.T, ev []Evidence) []Evidence {
	done := append([]Evidence{}, ev...)
	for i := range done {
		e := &done[i]
		if !e.open() || rapid.IntRange(0, 4).Draw(t, "leave") == 0 {
			continue
		}
		e.How = advisor.Channel(rapid.IntRange(0, 4).Draw(t, "channel"))
		if len(e.Open) == 0 {
			e.Truth = drawTruth(t)
			continue
		}
		e.A, e.B, e.Truth = 0, 0, advisor.True // some of the levels still possible
		first := rapid.IntRange(0, len(e.Open)-1).Draw(t, "from")
		for _, l := range e.Open[first : first+rapid.IntRange(1, len(e.Open)-first).Draw(t, "many")] {
			e.A, e.B = e.A+l.A, e.B+l.B
		}
		e.Open = nil
	}
	return done
}

// Bounds hold for every completion.
func TestBoundsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base, ev := share01().Draw(t, "base"), drawEvidence(t, 6)
		for i := range ev {
			if rapid.IntRange(0, 3).Draw(t, "levels") == 0 && !ev[i].Decisive {
				levels, truths := drawLevels(t)
				ev[i].A, ev[i].B, ev[i].Truth, ev[i].Open = Levels(levels, truths, nil)
			}
		}
		low, high := Bounds(base, ev, usual)
		for range 8 {
			p, _, _ := Update(base, complete(t, ev), usual)
			assert.True(t, low <= p && p <= high, "%v is not within %v and %v", p, low, high)
		}
	})
}

func drawLevels(t *rapid.T) ([]Level, []advisor.Truth) {
	n := rapid.IntRange(2, 4).Draw(t, "n")
	levels, truths := make([]Level, n), make([]advisor.Truth, n)
	for i := range levels {
		levels[i] = Level{A: share01().Draw(t, "a") / float64(n), B: share01().Draw(t, "b") / float64(n)}
		truths[i] = rapid.SampledFrom([]advisor.Truth{advisor.Unknown, advisor.False}).Draw(t, "level")
	}
	return levels, truths
}

// Bounds are reached: with plain signs some completion by sight comes to them.
func TestBoundsAreReached(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ev := drawEvidence(t, 5)
		low, high := Bounds(0.2, ev, usual)
		least, most := 1.0, 0.0
		var try func(i int)
		try = func(i int) {
			if i == len(ev) {
				p, _, _ := Update(0.2, ev, usual)
				least, most = min(least, p), max(most, p)
				return
			}
			if ev[i].Truth.Known() {
				try(i + 1)
				return
			}
			was := ev[i]
			for _, how := range []advisor.Channel{advisor.Seen, advisor.Paper, advisor.Owner, advisor.Secondhand} {
				for _, truth := range []advisor.Truth{advisor.Unknown, advisor.True, advisor.False} {
					ev[i].Truth, ev[i].How = truth, how
					try(i + 1)
				}
			}
			ev[i] = was
		}
		open := 0
		settled := false // a decisive sign that has spoken loosens the bounds
		for _, e := range ev {
			if !e.Truth.Known() {
				open++
			}
			settled = settled || e.Truth.Known() && e.Decisive
		}
		if open > 2 || settled {
			return
		}
		try(0)
		assert.InDelta(t, least, low, 1e-9)
		assert.InDelta(t, most, high, 1e-9)
	})
}

func TestBoundsOfAGroup(t *testing.T) {
	known := grouped("g", advisor.Seen, seen(1, 0.8, 0.2, advisor.True)) // 4
	weak := grouped("g", advisor.Nohow, seen(2, 0.6, 0.3, advisor.Unknown))
	strong := grouped("g", advisor.Nohow, seen(3, 0.9, 0.1, advisor.Unknown)) // 9 or 1/9
	low, high := Bounds(0.5, []Evidence{known, weak}, usual)
	assert.Equal(t, [2]float64{0.8, 0.8}, [2]float64{low, high}, "a weaker echo can change nothing")
	low, high = Bounds(0.5, []Evidence{known, weak, strong}, usual)
	assert.InDelta(t, 0.1, low, 1e-9)
	assert.InDelta(t, 0.9, high, 1e-9)
}

// Bounds treat ties and settled signs as Update does.
func TestBoundsOfSettledSigns(t *testing.T) {
	yes, no := seen(1, 0.5, 0, advisor.True), seen(2, 0, 0.5, advisor.True)
	mild := seen(3, 0.8, 0.2, advisor.True)
	open := seen(4, 0.6, 0.3, advisor.Unknown) // 2 or 4/7
	group := func(ev ...Evidence) []Evidence {
		for i := range ev {
			ev[i].Group = "g"
		}
		return ev
	}
	denied := seen(5, 0.2, 0.8, advisor.True) // 1/4: as strong as mild
	denied.How = advisor.Measured
	tie := seen(6, 0.2, 0.8, advisor.Unknown)
	for _, c := range []struct {
		name      string
		ev        []Evidence
		low, high float64 // odds from even
	}{
		{"shown for good", []Evidence{yes, mild, open}, math.Inf(1), math.Inf(1)},
		{"ruled out for good", []Evidence{no, mild, open}, 0, 0},
		{"contradicted: the rest counts", append(group(yes, no, mild), open), 4 * 4.0 / 7, 8},
		{"shown, but it may be contradicted", []Evidence{yes, mild, seen(7, 0, 0.5, advisor.Unknown)}, 0, math.Inf(1)},
		{"ruled out, but it may be contradicted", []Evidence{no, mild, seen(7, 0.5, 0, advisor.Unknown)}, 0, math.Inf(1)},
		{"as strong: the better known stands", append(group(denied, mild), open), 4 * 4.0 / 7, 8},
		{"as strong: it may take the place", group(mild, tie), 0.25, 4},
	} {
		low, high := Bounds(0.5, c.ev, usual)
		assert.InDelta(t, Chance(0.5, c.low), low, 1e-9, c.name)
		assert.InDelta(t, Chance(0.5, c.high), high, 1e-9, c.name)
	}
	many := make([]Evidence, 40)
	for i := range many {
		many[i] = seen(i, 0.5, 0.4, advisor.True)
	}
	p, _, _ := Update(0.1, many, usual)
	low, high := Bounds(0.1, many, usual)
	assert.Equal(t, [2]float64{p, p}, [2]float64{low, high})
}

func BenchmarkBounds(b *testing.B) {
	ev := make([]Evidence, 8)
	for i := range ev {
		ev[i] = grouped([]string{"", "g", "h"}[i%3], advisor.Channel(i%4), seen(i, 0.7, 0.2, advisor.Truth(i%3)))
	}
	b.ReportAllocs()
	for b.Loop() {
		Bounds(0.2, ev, usual)
	}
}
