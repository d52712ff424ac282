package belief

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"longstand/advisor"
)

// usual is the shop's trust in its channels as the book comes.
var usual = [5]advisor.Trust{{Hit: 1}, {Hit: 1}, {Hit: 0.95, FalseAlarm: 0.05}, {Hit: 0.9, FalseAlarm: 0.2}, {Hit: 0.7, FalseAlarm: 0.3}}

func seen(sign int, a, b float64, t advisor.Truth) Evidence {
	return Evidence{Sign: sign, A: a, B: b, Truth: t}
}

func grouped(group string, how advisor.Channel, e Evidence) Evidence {
	e.Group, e.How = group, how
	return e
}

func chanceOf(base float64, ev ...Evidence) float64 {
	p, _, _ := Update(base, ev, usual)
	return p
}

// Published examples of the rule of Bayes, the source of each beside it.
func TestPublishedBayes(t *testing.T) {
	for _, c := range []struct {
		source     string
		base, a, b float64
		want, tol  float64
	}{
		{"Gigerenzer and Hoffrage 1995 (memory)", 0.01, 0.8, 0.096, 25.0 / 322, 1e-15},
		{"web tutorial, printed 7.8 %", 0.01, 0.80, 0.096, 0.0776, 5e-5},
		{"Gigerenzer through a newspaper, printed about 9 %", 0.008, 0.90, 0.07, 0.0072 / 0.07664, 1e-15},
		{"quiz taken from a paper, about 1 in 10", 0.01, 0.90, 0.09, 0.0917, 5e-5},
		{"Eddy 1982 (memory), printed 7.7 %", 0.01, 0.79, 0.096, 0.0767, 5e-5},
	} {
		assert.InDelta(t, c.want, chanceOf(c.base, seen(0, c.a, c.b, advisor.True)), c.tol, c.source)
	}
}

func TestThreeSignsInEveryOrder(t *testing.T) {
	s := []Evidence{seen(1, 0.8, 0.2, advisor.True), seen(2, 0.6, 0.3, advisor.True), seen(3, 0.9, 0.4, advisor.False)}
	assert.InDelta(t, 12.0/19, chanceOf(0.3, s[0]), 1e-15)
	assert.InDelta(t, 24.0/31, chanceOf(0.3, s[:2]...), 1e-15)
	for _, o := range [][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		assert.InDelta(t, 4.0/11, chanceOf(0.3, s[o[0]], s[o[1]], s[o[2]]), 1e-15, "%v", o)
	}
	assert.InDelta(t, 12.0/19, chanceOf(0.3, s[0], seen(4, 0.9, 0.1, advisor.Unknown)), 1e-15)
}

func TestDecisive(t *testing.T) {
	decisive := func(a, b float64) Evidence {
		e := seen(9, a, b, advisor.True)
		e.Decisive = true
		return e
	}
	assert.Equal(t, 1.0, chanceOf(0.3, decisive(0.5, 0)))
	assert.Equal(t, 0.0, chanceOf(0.3, decisive(0, 0.5)))
	assert.Equal(t, 1.0, chanceOf(0.3, decisive(0.5, 0), seen(10, 0.01, 0.99, advisor.True)))
	assert.InDelta(t, 1500.0/1507, chanceOf(0.3, seen(0, 0.5, 0.001, advisor.True)), 1e-15)

	ratio, clash := Ratio(make([]Line, 2), []Evidence{decisive(0.5, 0), seen(1, 0.8, 0.2, advisor.True)}, &usual)
	assert.True(t, math.IsInf(ratio, 1) && !clash)

	p, lines, conflict := Update(0.3, []Evidence{decisive(0, 0)}, usual)
	assert.True(t, conflict)
	assert.Equal(t, 0.3, p)
	assert.Equal(t, []Line{{Sign: 9, Ratio: 1}}, lines)

	ev := []Evidence{decisive(0.5, 0), seen(1, 0.8, 0.2, advisor.True), decisive(0, 0.5)}
	p, lines, conflict = Update(0.3, ev, usual)
	assert.True(t, conflict)
	assert.InDelta(t, 12.0/19, p, 1e-15, "the chance without them")
	assert.Equal(t, []bool{false, true, false}, []bool{lines[0].Counted, lines[1].Counted, lines[2].Counted})
	assert.True(t, math.IsInf(lines[0].Ratio, 1))

	for i := range ev {
		ev[i].Group = "echo"
	}
	_, _, conflict = Update(0.3, ev, usual)
	assert.True(t, conflict, "a group does not hide a contradiction")

	ev[0].How = advisor.Secondhand
	p, _, conflict = Update(0.3, ev, usual)
	assert.False(t, conflict, "hearsay is never decisive")
	assert.Equal(t, 0.0, p)
}

// A deciban is a tenth of a power of ten of the odds.
func TestDecibans(t *testing.T) {
	for ratio, want := range map[float64]float64{2: 3.01, 3: 4.77, 4: 6.02, 5: 6.99, 8: 9.03, 10: 10, 20: 13.01, 100: 20, 25.0 / 3: 9.2082} {
		assert.InDelta(t, want, Decibans(ratio), 0.005)
	}
	assert.Equal(t, 99.0, Decibans(math.Inf(1)))
	assert.Equal(t, -99.0, Decibans(0))
}

// Three copies of one report count once.
func TestEchoesCountOnce(t *testing.T) {
	copies := []Evidence{seen(1, 0.8, 0.2, advisor.True), seen(2, 0.8, 0.2, advisor.True), seen(3, 0.8, 0.2, advisor.True)}
	assert.InDelta(t, 64.0/73, chanceOf(0.1, copies...), 1e-15, "ungrouped")
	for i := range copies {
		copies[i].Group = "smell"
	}
	p, lines, _ := Update(0.1, copies, usual)
	assert.InDelta(t, 4.0/13, p, 1e-15)
	assert.Equal(t, []Line{{1, 4, true}, {2, 4, false}, {3, 4, false}}, lines)
}

func TestStrongestOfAGroup(t *testing.T) {
	for _, c := range []struct {
		name    string
		ev      []Evidence
		counted int
	}{
		{"strength goes before order", []Evidence{seen(1, 0.6, 0.3, advisor.True), seen(2, 0.8, 0.2, advisor.True)}, 2},
		{"a strong denial beats a weak yes", []Evidence{seen(1, 0.6, 0.3, advisor.True), seen(2, 0.9, 0.1, advisor.False)}, 2},
		{"after the channel", []Evidence{grouped("", advisor.Secondhand, seen(1, 0.9, 0.01, advisor.True)), seen(2, 0.8, 0.2, advisor.True)}, 2},
		{"as strong: the better known", []Evidence{grouped("", advisor.Measured, seen(1, 0.8, 0.2, advisor.True)), seen(2, 0.8, 0.2, advisor.True)}, 2},
		{"as strong and as well known: the lower id", []Evidence{seen(2, 0.8, 0.2, advisor.True), seen(1, 0.8, 0.2, advisor.True)}, 1},
		{"what is not known never counts", []Evidence{seen(1, 0.9, 0.01, advisor.Unknown), seen(2, 0.6, 0.3, advisor.True)}, 2},
	} {
		for i := range c.ev {
			c.ev[i].Group = "g"
		}
		_, lines, _ := Update(0.1, c.ev, usual)
		for _, l := range lines {
			assert.Equal(t, l.Sign == c.counted, l.Counted, "%s: sign %d", c.name, l.Sign)
		}
	}
}

// Hearsay of a sign weighs less than its sight, and its denial less still.
func TestHearsay(t *testing.T) {
	for _, c := range []struct {
		how    advisor.Channel
		told   float64
		denied float64
	}{
		{advisor.Seen, 8, 2.0 / 9}, {advisor.Measured, 8, 2.0 / 9}, {advisor.Paper, 11.0 / 2, 23.0 / 86},
		{advisor.Owner, 76.0 / 27, 24.0 / 73}, {advisor.Secondhand, 31.0 / 17, 19.0 / 33},
	} {
		assert.InDelta(t, c.told, Report(0.8, 0.1, advisor.True, usual[c.how]), 1e-14, c.how.String())
		assert.InDelta(t, c.denied, Report(0.8, 0.1, advisor.False, usual[c.how]), 1e-14, c.how.String())
		assert.Equal(t, 1.0, Report(0.8, 0.1, advisor.Unknown, usual[c.how]))
	}
	assert.InDelta(t, 13.0/6, Report(0.8, 0.1, advisor.True, advisor.Trust{Hit: 0.9, FalseAlarm: 0.3}), 1e-14)
	assert.InDelta(t, 11.0/32, Report(0.8, 0.1, advisor.False, advisor.Trust{Hit: 0.9, FalseAlarm: 0.3}), 1e-14)
	byNone := grouped("", advisor.Nohow, seen(1, 0.8, 0.1, advisor.True))
	assert.Equal(t, chanceOf(0.3, seen(1, 0.8, 0.1, advisor.True)), chanceOf(0.3, byNone), "what came by no channel counts as it is")
	rumour := advisor.Trust{Hit: 0.5, FalseAlarm: 0.5}
	assert.Equal(t, 1.0, Report(0.8, 0.1, advisor.True, rumour))
	assert.Equal(t, 1.0, Report(0.8, 0.1, advisor.False, rumour))
}

// What counts of ten can claim at most.
func TestSmoothedCounts(t *testing.T) {
	for _, c := range []struct{ with, without, yes, no float64 }{
		{8, 1, 5.667, 0.2632}, {9, 2, 3.8, 0.1765}, {6, 3, 1.857, 0.6}, {3, 0, 7, 0.7143}, {5, 5, 1, 1}, {10, 0, 21, 1.0 / 21},
	} {
		a := advisor.Count{N: int(c.with), Of: 10}.Chance()
		b := advisor.Count{N: int(c.without), Of: 10}.Chance()
		assert.InDelta(t, c.yes, Report(a, b, advisor.True, usual[0]), 5e-4)
		assert.InDelta(t, c.no, Report(a, b, advisor.False, usual[0]), 5e-5)
	}
}
