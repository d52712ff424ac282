package condition

import (
	"math/bits"
	"slices"

	"pgregory.net/rapid"

	"longstand/advisor"
)

// drawValues draws what is known of each question of the formulas.
func drawValues(t *rapid.T, exact bool) []advisor.Value {
	told := func() bool { return exact || rapid.IntRange(0, 2).Draw(t, "told") > 0 }
	values := make([]advisor.Value, 10)
	for i := range 3 {
		if told() {
			values[i] = advisor.YesNo(rapid.Bool().Draw(t, "yes"))
		}
	}
	for i := 3; i < 5 && told(); i++ {
		set := uint64(rapid.IntRange(1, 7).Draw(t, "options"))
		if exact {
			set = 1 << rapid.IntRange(0, 2).Draw(t, "option")
		}
		values[i] = advisor.OneOf(set)
	}
	for i := 5; i < 8; i++ {
		if told() {
			lo := rapid.IntRange(0, 5).Draw(t, "lo")
			hi := lo
			if !exact {
				hi = rapid.IntRange(lo, 5).Draw(t, "hi")
			}
			values[i] = advisor.NumberRange(float64(lo), float64(hi))
		}
	}
	if told() {
		yes := uint64(rapid.IntRange(0, 3).Draw(t, "flags"))
		no := 3 &^ yes
		if !exact {
			no &= uint64(rapid.IntRange(0, 3).Draw(t, "no"))
		}
		values[8] = advisor.Value{State: advisor.Told, Yes: yes, No: no}
	}
	if told() {
		values[9] = advisor.Value{State: advisor.Told, Readings: drawReadings(t)}
	}
	return values
}

func drawReadings(t *rapid.T) []float64 {
	var out []float64
	for range rapid.IntRange(1, 4).Draw(t, "readings") {
		out = append(out, float64(rapid.IntRange(0, 5).Draw(t, "reading")))
	}
	return out
}

// completions calls visit with every world that the values leave possible, for
// the questions that matter; of the others one stands for all. Unknown readings
// are tried as a few lists.
func completions(values []advisor.Value, reads []string, visit func(*world)) {
	choices := make([][]int, 10)
	for q := range choices {
		choices[q] = possible(q, values[q])
		if !slices.Contains(reads, formulaQuestions()[q].ID) {
			choices[q] = choices[q][:1]
		}
	}
	lists := [][]float64{{0}, {5}, {0, 5}, {3, 3, 3}, {2, 1, 4}, {5, 5, 5, 5, 5, 5}, {1, 1, 1, 0}}
	at := make([]int, 10)
	for {
		w := world{readings: values[9].Readings}
		for q, i := range at {
			x := choices[q][i]
			switch {
			case q < 3:
				w.yes[q] = x == 1
			case q < 5:
				w.choice[q-3] = x
			case q < 8:
				w.number[q-5] = x
			case q == 8:
				w.flags = x
			case len(w.readings) == 0:
				w.readings = lists[x]
			}
		}
		visit(&w)
		q := 0
		for ; q < 10; q++ {
			if at[q]++; at[q] < len(choices[q]) {
				break
			}
			at[q] = 0
		}
		if q == 10 {
			return
		}
	}
}

// possible lists the exact answers that a value leaves open.
func possible(q int, v advisor.Value) (out []int) {
	told := v.State == advisor.Told
	switch {
	case q < 5:
		set := uint64(7)
		if q < 3 {
			set = 3
		}
		if told {
			set = v.Options
		}
		for ; set != 0; set &= set - 1 {
			out = append(out, bits.TrailingZeros64(set))
		}
	case q < 8:
		lo, hi := 0, 5
		if told {
			lo, hi = int(v.Low), int(v.High)
		}
		for x := lo; x <= hi; x++ {
			out = append(out, x)
		}
	case q == 8:
		for x := range 4 {
			if uint64(x)&v.Yes == v.Yes && uint64(x)&v.No == 0 {
				out = append(out, x)
			}
		}
	case told:
		out = []int{0}
	default:
		out = []int{0, 1, 2, 3, 4, 5, 6}
	}
	return out
}
