package condition

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"longstand/advisor"
)

// world is one exact answer to each question of the formulas below.
type world struct {
	yes      [3]bool // p q r
	choice   [2]int  // c d, of three options
	number   [3]int  // x y z, 0 to 5
	flags    int     // f, two options
	readings []float64
	done     bool
}

var wordsOf = []string{"a", "b", "k"}

func formulaQuestions() []advisor.Question {
	var out []advisor.Question
	for _, id := range []string{"p", "q", "r"} {
		out = append(out, advisor.Question{ID: id, Kind: advisor.YesNoKind})
	}
	for _, id := range []string{"c", "d"} {
		out = append(out, advisor.Question{ID: id, Kind: advisor.Choice, Options: options(wordsOf...)})
	}
	for _, id := range []string{"x", "y", "z"} {
		out = append(out, advisor.Question{ID: id, Kind: advisor.NumberKind, Low: 0, High: 5, Step: 1})
	}
	out = append(out, advisor.Question{ID: "f", Kind: advisor.Choices, Options: options("m", "n")})
	return append(out, advisor.Question{ID: "l", Kind: advisor.ReadingsKind, Low: 0, High: 5})
}

// drawn is a random condition: its text, its meaning written by hand, and
// what it reads.
type drawn struct {
	text  string
	holds func(*world) bool
	reads []string
}

// formulas draws conditions of some depth; once: no question occurs twice.
type formulas struct {
	t    *rapid.T
	once bool
	used []string
}

func (g *formulas) pick(names ...string) string {
	if g.once {
		names = slices.DeleteFunc(slices.Clone(names), func(n string) bool { return slices.Contains(g.used, n) })
		if len(names) == 0 {
			return ""
		}
	}
	n := rapid.SampledFrom(names).Draw(g.t, "name")
	g.used = append(g.used, n)
	return n
}

func (g *formulas) draw(depth int) drawn {
	if depth == 0 || rapid.IntRange(0, 3).Draw(g.t, "leaf") == 0 {
		return g.leaf()
	}
	a := g.draw(depth - 1)
	switch rapid.IntRange(0, 2).Draw(g.t, "op") {
	case 0:
		return drawn{"not (" + a.text + ")", func(w *world) bool { return !a.holds(w) }, a.reads}
	case 1:
		b := g.draw(depth - 1)
		return drawn{"(" + a.text + ") and (" + b.text + ")", func(w *world) bool { return a.holds(w) && b.holds(w) }, append(a.reads, b.reads...)}
	}
	b := g.draw(depth - 1)
	return drawn{"(" + a.text + ") or (" + b.text + ")", func(w *world) bool { return a.holds(w) || b.holds(w) }, append(a.reads, b.reads...)}
}

func (g *formulas) leaf() drawn {
	name := g.pick("p", "q", "r", "c", "d", "x", "y", "z", "f", "l")
	switch {
	case name == "":
		return drawn{"done(op)", func(w *world) bool { return w.done }, nil}
	case strings.Contains("pqr", name):
		i := int(name[0] - 'p')
		return drawn{name, func(w *world) bool { return w.yes[i] }, []string{name}}
	case strings.Contains("cd", name):
		return g.choice(name)
	case name == "f":
		i := rapid.IntRange(0, 1).Draw(g.t, "flag")
		return drawn{fmt.Sprintf("%q in f", []string{"m", "n"}[i]), func(w *world) bool { return w.flags>>i&1 == 1 }, []string{name}}
	case name == "l":
		return g.readings()
	}
	return g.comparison(name)
}

func (g *formulas) choice(name string) drawn {
	i := int(name[0] - 'c')
	k := rapid.IntRange(0, 2).Draw(g.t, "option")
	if rapid.Bool().Draw(g.t, "in") {
		j := (k + 1) % 3
		return drawn{fmt.Sprintf("%s not in [%q, %q]", name, wordsOf[k], wordsOf[j]),
			func(w *world) bool { return w.choice[i] != k && w.choice[i] != j }, []string{name}}
	}
	return drawn{fmt.Sprintf("%s == %q", name, wordsOf[k]), func(w *world) bool { return w.choice[i] == k }, []string{name}}
}

func (g *formulas) readings() drawn {
	k := float64(rapid.IntRange(0, 5).Draw(g.t, "k"))
	texts := []string{"min(l) < %v", "max(l) >= %v", "mean(l) > %v", "spread(l) > %v", "count(l, # > 2) > %v", "any(l, # < %v)", "all(l, # >= %v)", "any(l, # == %v)", "all(l, # != %v)"}
	i := rapid.IntRange(0, len(texts)-1).Draw(g.t, "reading")
	return drawn{fmt.Sprintf(texts[i], k), func(w *world) bool { return readingHolds(i, w.readings, k) }, []string{"l"}}
}

func readingHolds(i int, l []float64, k float64) bool {
	sum, over := 0.0, 0.0
	for _, x := range l {
		sum += x
		if x > 2 {
			over++
		}
	}
	least, greatest := slices.Min(l), slices.Max(l)
	return []bool{least < k, greatest >= k, sum/float64(len(l)) > k, greatest-least > k, over > k,
		least < k, least >= k, slices.Contains(l, k), !slices.Contains(l, k)}[i]
}

func (g *formulas) comparison(name string) drawn {
	i := int(name[0] - 'x')
	k := rapid.IntRange(0, 5).Draw(g.t, "k")
	other := g.pick("x", "y", "z")
	kind := rapid.IntRange(0, 6).Draw(g.t, "comparison")
	if kind > 3 && other == "" {
		kind = 0
	}
	if kind <= 3 && other != "" {
		g.used = g.used[:len(g.used)-1]
	}
	switch kind {
	case 0:
		return drawn{fmt.Sprintf("%s > %d", name, k), func(w *world) bool { return w.number[i] > k }, []string{name}}
	case 1:
		return drawn{fmt.Sprintf("%s == %d", name, k), func(w *world) bool { return w.number[i] == k }, []string{name}}
	case 2:
		return drawn{fmt.Sprintf("%d <= %s", k, name), func(w *world) bool { return k <= w.number[i] }, []string{name}}
	case 3:
		return drawn{fmt.Sprintf("2 * %s - 1 <= %d", name, k), func(w *world) bool { return 2*w.number[i]-1 <= k }, []string{name}}
	}
	j := int(other[0] - 'x')
	reads := []string{name, other}
	switch kind {
	case 4:
		return drawn{fmt.Sprintf("%s < %s", name, other), func(w *world) bool { return w.number[i] < w.number[j] }, reads}
	case 5:
		return drawn{fmt.Sprintf("%s * %s > %d", name, other, k), func(w *world) bool { return w.number[i]*w.number[j] > k }, reads}
	}
	return drawn{fmt.Sprintf("%s / (%s + 1) >= %d", name, other, k),
		func(w *world) bool { return float64(w.number[i])/float64(w.number[j]+1) >= float64(k) }, reads}
}
