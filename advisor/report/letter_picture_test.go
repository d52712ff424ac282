package report_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// TestPicturesKeepInTheBox checks that bars are as long as their numbers and
// that no label leaves its picture.
func TestPicturesKeepInTheBox(t *testing.T) {
	for name, file := range letterCases {
		t.Run(name, func(t *testing.T) {
			all := elements(t, letterOf(t, file, "html"))
			bars := pictures(t, all)
			stairsMatch(t, shelf().Advise(readCase(t, file)).Ladder, bars[0])
			weighed(t, all, bars[1])
		})
	}
}

// pictures checks the labels of every picture and gives the sizes of its bars,
// width and height of each.
func pictures(t *testing.T, all []*element) [][]float64 {
	var bars [][]float64
	var box []float64
	var labels [][3]float64 // left, right, height
	for _, e := range all {
		switch e.name {
		case "svg":
			box = sides(e.attrs["viewBox"])
			bars, labels = append(bars, nil), nil
		case "text":
			x, wide := num(e.attrs["x"]), float64(7*len([]rune(e.text)))
			x -= map[string]float64{"start": 0, "middle": wide / 2, "end": wide}[e.attrs["text-anchor"]]
			assert.GreaterOrEqual(t, x, -0.5, e.text)
			assert.LessOrEqual(t, x+wide, box[2]+0.5, e.text)
			assert.Positive(t, num(e.attrs["y"]), e.text)
			for _, o := range labels {
				apart := x >= o[1] || x+wide <= o[0] || math.Abs(o[2]-num(e.attrs["y"])) >= 12
				assert.True(t, apart, "%q lies over another label", e.text)
			}
			labels = append(labels, [3]float64{x, x + wide, num(e.attrs["y"])})
			assert.LessOrEqual(t, num(e.attrs["y"]), box[3], e.text)
		case "rect":
			x, y, w, h := num(e.attrs["x"]), num(e.attrs["y"]), num(e.attrs["width"]), num(e.attrs["height"])
			assert.True(t, x >= 0 && y >= 0 && w >= 0 && h >= 0 && x+w <= box[2] && y+h <= box[3], "a bar leaves the box")
			bars[len(bars)-1] = append(bars[len(bars)-1], w, h)
		}
	}
	return bars
}

// TestPicturesAtTheirEnds draws no money at all, one step, a great many, and
// signs that decide alone or are named at length.
func TestPicturesAtTheirEnds(t *testing.T) {
	for _, steps := range []int{1, 2, 90} {
		for near, cost := range []int64{0, 9_999_999} {
			a := shelf().Advise(readCase(t, "practice/P05.toml"))
			a.Ladder.Here, a.Ladder.Steps = max(0, steps-1-near), make([]advisor.Step, steps)
			for i := range a.Ladder.Steps {
				a.Ladder.Steps[i].Cost = cost * int64(i)
			}
			for k := range a.Suspects {
				for i := range a.Suspects[k].Ledger {
					n := &a.Suspects[k].Ledger[i]
					n.Decibans, n.Name = math.Inf(1-2*(i%2)), strings.Repeat("a long name ", 20)
				}
			}
			page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: "html"})
			require.NoError(t, err)
			assert.NotContains(t, page, "NaN")
			bars := pictures(t, elements(t, page))
			assert.Len(t, bars[0], 2*steps)
		}
	}
}

func stairsMatch(t *testing.T, l advisor.Ladder, sizes []float64) {
	require.Len(t, sizes, 2*len(l.Steps))
	most := 0.0
	for _, s := range l.Steps {
		most = math.Max(most, float64(s.Cost))
	}
	tallest := slices.Max(sizes)
	for i, s := range l.Steps {
		assert.InDelta(t, float64(s.Cost)/most, sizes[2*i+1]/tallest, 0.01, "step %d", i)
	}
}

// weighed compares the bars of the evidence with the weights in its table.
func weighed(t *testing.T, all []*element, sizes []float64) {
	var weights []float64
	for _, e := range named(all, "td") {
		if regexp.MustCompile(`^[+-]\d+\.\d$`).MatchString(e.text) {
			weights = append(weights, math.Abs(num(e.text)))
		}
	}
	require.Len(t, sizes, 2*len(weights))
	for i, w := range weights {
		assert.InDelta(t, w/weights[0], sizes[2*i]/sizes[0], 0.05, "sign %d", i)
	}
}

func sides(s string) []float64 {
	var out []float64
	for _, f := range strings.Fields(s) {
		out = append(out, num(f))
	}
	return out
}

func num(s string) float64 {
	x, _ := strconv.ParseFloat(s, 64)
	return x
}
