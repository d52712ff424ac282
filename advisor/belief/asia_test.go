package belief

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"longstand/advisor"
)

// The chest clinic of Lauritzen and Spiegelhalter 1988, whose chances are
// published: an independent check that a sign's two chances, taken from a joint
// distribution, give that distribution's own posteriors. The tables of xray and
// dysp are from memory, confirmed by the published run for xray = yes.
const (
	asia = iota
	tub
	smoke
	lung
	bronc
	xray
	dysp
	nodes
)

type event map[int]bool

func pick(yes bool, p float64) float64 {
	if yes {
		return p
	}
	return 1 - p
}

func clinic(is func(node int) bool) float64 {
	by := func(node int, yes, no float64) float64 {
		if is(node) {
			return yes
		}
		return no
	}
	either := is(tub) || is(lung)
	breath := map[[2]bool]float64{{true, true}: 0.9, {true, false}: 0.7, {false, true}: 0.8, {false, false}: 0.1}
	p := pick(is(asia), 0.01) * pick(is(tub), by(asia, 0.05, 0.01)) * pick(is(smoke), 0.5)
	p *= pick(is(lung), by(smoke, 0.1, 0.01)) * pick(is(bronc), by(smoke, 0.6, 0.3))
	shadow := 0.05
	if either {
		shadow = 0.98
	}
	return p * pick(is(xray), shadow) * pick(is(dysp), breath[[2]bool{either, is(bronc)}])
}

// mass is the joint chance of an event.
func mass(e event) (sum float64) {
	for bits := range 1 << nodes {
		is := func(node int) bool { return bits>>node&1 == 1 }
		match := true
		for node, want := range e {
			match = match && is(node) == want
		}
		if match {
			sum += clinic(is)
		}
	}
	return sum
}

func and(e event, node int, yes bool) event {
	more := event{node: yes}
	for n, y := range e {
		more[n] = y
	}
	return more
}

// posterior learns the findings one after another through Update.
func posterior(suspect int, findings ...int) float64 {
	known := event{}
	p := mass(event{suspect: true})
	for _, f := range findings {
		with, without := and(known, suspect, true), and(known, suspect, false)
		e := seen(f, mass(and(with, f, true))/mass(with), mass(and(without, f, true))/mass(without), advisor.True)
		p, _, _ = Update(p, []Evidence{e}, usual)
		known = and(known, f, true)
	}
	return p
}

// The chances that were published, and those that follow from the tables.
func TestChestClinic(t *testing.T) {
	for _, c := range []struct {
		suspect  int
		findings []int
		want     float64
		tol      float64
	}{
		{tub, nil, 0.0104, 1e-6}, {lung, nil, 0.055, 1e-6}, {bronc, nil, 0.45, 1e-6}, {xray, nil, 0.11029, 5e-6}, {dysp, nil, 0.435971, 5e-7},
		{asia, []int{xray}, 0.0131555, 5e-7}, {tub, []int{xray}, 0.0924109, 5e-7}, {smoke, []int{xray}, 0.687754, 5e-7},
		{lung, []int{xray}, 0.488711, 5e-7}, {bronc, []int{xray}, 0.506326, 5e-7}, {dysp, []int{xray}, 0.640766, 5e-7},
		{tub, []int{xray, asia}, 0.337716, 5e-7}, {lung, []int{xray, asia}, 0.371487, 5e-7},
		{tub, []int{xray, asia, lung}, 0.05, 1e-12}, // explaining away
		{lung, []int{dysp}, 0.102759, 5e-7}, {bronc, []int{dysp}, 0.833967, 5e-7}, {tub, []int{dysp}, 0.018845, 5e-7},
	} {
		assert.InDelta(t, c.want, posterior(c.suspect, c.findings...), c.tol, "%d after %v", c.suspect, c.findings)
	}
}
