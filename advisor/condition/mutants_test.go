package condition

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
)

// judged counts the mutants by fate, and lists those alive.
func judged(m *Measure) (fates [4]int, alive []string) {
	for _, mutant := range m.Mutants() {
		fates[mutant.Fate]++
		if mutant.Fate == Alive {
			alive = append(alive, mutant.Change)
		}
	}
	return fates, alive
}

// Specimens at the threshold and on both sides of it, and one for each other
// atom, kill every edit; one that fires and one that does not leave many alive.
func TestMutants(t *testing.T) {
	source := "damp and laid_up >= 10"
	weak := measured(t, source, answers{"damp": yes, "laid_up": num(20)}, answers{"damp": no, "laid_up": num(2)})
	fates, alive := judged(weak)
	assert.Equal(t, [4]int{Alive: 5, Killed: 16}, fates, alive)
	sharp := measured(t, source, answers{"damp": yes, "laid_up": num(10)}, answers{"damp": yes, "laid_up": num(9)},
		answers{"damp": yes, "laid_up": num(11)}, answers{"damp": no, "laid_up": num(11)})
	fates, alive = judged(sharp)
	assert.Equal(t, [4]int{Killed: 21}, fates, alive)
}

// A comparison is a set of places below, at and above its threshold: specimens
// at all three kill the seven other ones, whatever the comparison, and the moved
// thresholds as well.
func TestComparisonIsPinnedByThree(t *testing.T) {
	for _, source := range []string{"laid_up < 10", "laid_up <= 10", "laid_up == 10", "laid_up != 10", "laid_up >= 10", "laid_up > 10"} {
		m := measured(t, source, answers{"laid_up": num(9)}, answers{"laid_up": num(10)}, answers{"laid_up": num(11)})
		fates, alive := judged(m)
		assert.Equal(t, [4]int{Killed: 3 + 4 + 3 + 2}, fates, "%s: %v", source, alive)
		own := m.f.leaves[0].test()
		for places := range uint64(8) {
			if places != own.accepts {
				e := edit{put: put{kind: putTest, at: kid{at: 0}, test: test{places, true, 10}}}
				e.nodes, e.root = m.instead(0, kid{at: -1})
				assert.Equal(t, Killed, m.fate(&e), "%s: places %b", source, places)
			}
		}
	}
}

// Each kind of edit, in words.
func TestMutantsInWords(t *testing.T) {
	m := measured(t, "damp and not (laid_up > 10)")
	var changes []string
	for _, mutant := range m.Mutants() {
		changes = append(changes, mutant.Change)
	}
	assert.Equal(t, []string{
		"`damp` were the other way round", "`damp` were always true", "`damp` were always false", "`damp` were `laid_up <= 10`",
		"`damp` were taken as so while it is not known", "`damp` were taken as not so while it is not known",
		"`laid_up <= 10` were `laid_up == 10`", "`laid_up <= 10` were `laid_up < 10`", "`laid_up <= 10` were always true",
		"`laid_up <= 10` were `laid_up <= 7`", "`laid_up <= 10` were `laid_up <= 9`", "`laid_up <= 10` were `laid_up <= 11`", "`laid_up <= 10` were `laid_up <= 13`",
		"`laid_up <= 10` were the other way round", "`laid_up <= 10` were always true", "`laid_up <= 10` were always false", "`laid_up <= 10` were `damp`",
		"`laid_up <= 10` were taken as so while it is not known", "`laid_up <= 10` were taken as not so while it is not known",
		"`damp and laid_up <= 10` were `damp or laid_up <= 10`", "`damp and laid_up <= 10` were the other way round",
	}, changes)
}

// An option becomes every other option, in a list each option is put in or left
// out, and a listed find becomes every other find. The inside of a derived value
// is not edited, the value itself is.
func TestMutantsOfChoices(t *testing.T) {
	changes := func(source string) (out []string) {
		for _, mutant := range measured(t, source).Mutants() {
			if change := mutant.Change; strings.HasSuffix(change, "`") {
				out = append(out, change)
			}
		}
		return out
	}
	assert.Equal(t, []string{"`climate == \"dry\"` were `climate == \"damp\"`", "`climate == \"dry\"` were `climate == \"salt\"`"}, changes("climate == \"dry\""))
	assert.Equal(t, []string{
		"`climate in [\"damp\", \"salt\"]` were `climate in [\"dry\", \"damp\", \"salt\"]`", "`climate in [\"damp\", \"salt\"]` were `climate == \"salt\"`",
		"`climate in [\"damp\", \"salt\"]` were `climate == \"damp\"`", "`climate in [\"damp\", \"salt\"]` were `not wet`", "`not wet` were `climate in [\"damp\", \"salt\"]`",
		"`climate in [\"damp\", \"salt\"] or not wet` were `climate in [\"damp\", \"salt\"] and not wet`",
	}, changes("climate in [\"damp\", \"salt\"] or not wet"))
	for _, change := range changes("\"mud\" in finds") {
		assert.True(t, strings.HasPrefix(change, "`\"mud\" in finds` were `\""), change)
	}
	assert.NotEmpty(t, changes("\"mud\" in finds"))
}

// Another find in its place is noticed by a specimen that lists just this one.
func TestOtherFindIsNoticed(t *testing.T) {
	finds := func(yes uint64) advisor.Value {
		return advisor.Value{State: advisor.Told, Yes: yes, No: 1<<len(measured(t, "damp").p.facts) - 1&^yes}
	}
	_, alive := judged(measured(t, "\"mud\" in finds", answers{"finds": finds(7)}, answers{"finds": finds(0)}))
	assert.NotEmpty(t, alive, "all are listed")
	_, alive = judged(measured(t, "\"mud\" in finds", answers{"finds": finds(1)}, answers{"finds": finds(0)}))
	assert.Empty(t, alive)
}

// Not known taken for yes or no is noticed by what follows from a specimen with
// one answer in doubt; where one number is read twice, by a range.
func TestDoubtNeedsNoAuthor(t *testing.T) {
	m := measured(t, "3 <= laid_up <= 10", answers{"laid_up": num(2)}, answers{"laid_up": num(3)}, answers{"laid_up": num(4)},
		answers{"laid_up": num(9)}, answers{"laid_up": num(10)}, answers{"laid_up": num(11)})
	fates, alive := judged(m)
	assert.Zero(t, fates[Alive]+fates[Undecided], alive)
	assert.NotEmpty(t, m.derived())
	for _, row := range m.derived() {
		assert.Less(t, row[0].number.lo, row[0].number.hi)
	}
	fates, _ = judged(measured(t, "done(head_off)", answers{}))
	assert.Equal(t, 1, fates[Alive], "not done shows one side: negated and always true are noticed, always false is not")
}

// An edit that changes nothing in any case does not count against anybody; what
// rests on reckoned numbers is left undecided.
func TestFates(t *testing.T) {
	m := measured(t, "laid_up <= 60 / 2 and laid_up < 31", answers{"laid_up": num(30)}, answers{"laid_up": num(31)}, answers{"laid_up": num(29)})
	fates, alive := judged(m)
	assert.Positive(t, fates[Same])
	assert.Zero(t, fates[Alive], alive)
	m = measured(t, "age > 10 and made > 1990", answers{"made": num(2000)}, answers{"made": num(2020)})
	fates, _ = judged(m)
	assert.Positive(t, fates[Undecided])
	assert.Zero(t, fates[Alive])
}

// The condition's own tables are as before after all edits were tried.
func TestMutantsLeaveNoTrace(t *testing.T) {
	m := measured(t, "damp and (laid_up >= 10 or turns)", answers{"damp": yes, "laid_up": num(10), "turns": no}, answers{"damp": yes, "laid_up": num(9), "turns": no})
	before := m.Pins()
	first := m.Mutants()
	require.Equal(t, before, m.Pins())
	require.Equal(t, first, m.Mutants())
}

// Whether an edit is the same condition agrees with trying every case by hand:
// the edited tree in Kleene logic over all truths of p, q and r.
func TestSameAgainstEveryCase(t *testing.T) {
	same := 0
	rapid.Check(t, func(rt *rapid.T) {
		tree := drawTree(rt, 3)
		c := NewCompiler(formulaQuestions(), nil)
		m := c.measureOf(one(t, c, tree.text()))
		edits := m.edits()
		for i := range edits {
			e := &edits[i]
			if e.put.kind >= doubtTrue {
				continue
			}
			differs := false
			for n := range 8 {
				row := make([]evidence, len(m.f.leaves))
				for l := range row {
					row[l] = evidence{set: 1 << (n >> m.f.leaves[l].of & 1)}
				}
				differs = differs || m.kills(rows{row}, e) >= 0
			}
			require.Equal(rt, differs, m.fate(e) == Alive, "%s: %s", tree.text(), e.change)
			same += bit2(!differs)
		}
	})
	assert.Positive(t, same)
}

// Masking MC/DC by holding an atom both ways is the exact derivative: on
// conditions that read each atom once it equals the products of the siblings on
// the way down.
func TestDecidingAgainstTheDownPass(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		names := rapid.Permutation([]string{"p", "q", "r"}).Draw(rt, "names")
		ops := []string{rapid.SampledFrom([]string{"and", "or"}).Draw(rt, "op"), rapid.SampledFrom([]string{"and", "or"}).Draw(rt, "op")}
		not := rapid.SampledFrom([]string{"", "not "}).Draw(rt, "not")
		source := names[0] + " " + ops[0] + " " + not + "(" + names[1] + " " + ops[1] + " " + names[2] + ")"
		c := NewCompiler(formulaQuestions(), nil)
		m := c.measureOf(one(t, c, source))
		for range 27 {
			var a [3]advisor.Truth
			row := make([]evidence, len(m.f.leaves))
			for i := range row {
				truth := rapid.SampledFrom([]advisor.Truth{u, y, n}).Draw(rt, "truth")
				a[m.f.leaves[i].of] = truth
				row[i] = evidence{set: [...]uint64{3, 2, 1}[truth]}
			}
			m.load(rows{row}, 0)
			truth := func(name string) advisor.Truth { return a[name[0]-'p'] }
			lets := func(op string, t advisor.Truth) bool { return t == map[string]advisor.Truth{"and": y, "or": n}[op] }
			inner := truth(names[1]).And(truth(names[2]))
			if ops[1] == "or" {
				inner = truth(names[1]).Or(truth(names[2]))
			}
			if not != "" {
				inner = inner.Not()
			}
			want := map[string]bool{
				names[0]: lets(ops[0], inner),
				names[1]: lets(ops[0], truth(names[0])) && lets(ops[1], truth(names[2])),
				names[2]: lets(ops[0], truth(names[0])) && lets(ops[1], truth(names[1])),
			}
			for i := range m.pins {
				name := formulaQuestions()[m.atoms[i].Questions[0]].ID
				require.Equal(rt, want[name], m.f.deciding(m.pins[i].at, m.f.roots[0])&1 == 1, "%s in %s at %v", name, source, a)
			}
		}
	})
}

func (c *Compiler) measureOf(id advisor.CondID) *Measure { return c.Program().Measure(id) }

func bit2(b bool) int { return int(bit(b)) }

// The same over choices, finds, numbers and readings: every world is tried.
func TestFatesAgainstWorlds(t *testing.T) {
	fates := [4]int{}
	rapid.Check(t, func(rt *rapid.T) {
		g := formulas{t: rt}
		a := g.draw(2)
		c := NewCompiler(formulaQuestions(), []string{"op"})
		id, _ := c.Condition(placed(a.text))
		p := c.Program()
		m := p.Measure(id)
		v := p.NewView()
		var worlds rows
		completions(make([]advisor.Value, 10), a.reads, func(w *world) {
			v.Load(w.values())
			for _, done := range []advisor.Truth{y, n} {
				v.SetDone(0, done)
				worlds = append(worlds, m.row(v))
			}
		})
		edits := m.edits()
		for i := range edits {
			e := &edits[i]
			if e.put.kind >= doubtTrue {
				continue
			}
			fate := m.fate(e)
			fates[fate]++
			switch differs := m.kills(worlds, e) >= 0; fate {
			case Same:
				require.False(rt, differs, "%s: %s", a.text, e.change)
			case Alive:
				require.True(rt, differs, "%s: %s", a.text, e.change)
			}
		}
	})
	assert.Positive(t, fates[Same])
	assert.Positive(t, fates[Alive])
}

// values are a world's answers, by question.
func (w *world) values() []advisor.Value {
	var out []advisor.Value
	for _, x := range w.yes {
		out = append(out, advisor.YesNo(x))
	}
	for _, x := range w.choice {
		out = append(out, advisor.OneOf(1<<x))
	}
	for _, x := range w.number {
		out = append(out, advisor.Number(float64(x)))
	}
	out = append(out, advisor.Value{State: advisor.Told, Yes: uint64(w.flags), No: 3 &^ uint64(w.flags)})
	return append(out, advisor.Value{State: advisor.Told, Readings: w.readings})
}
