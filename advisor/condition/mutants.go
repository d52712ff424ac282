package condition

import (
	"fmt"
	"math/bits"
	"slices"
)

// Mutant is a small edit of a condition, as a slip of the pen makes it. A
// specimen on which it differs kills it; one that differs in no case at all is
// the same condition and does not count.
type Mutant struct {
	Change string // in words
	Killed bool
	Same   bool
	// Example is a case that would kill a survivor, as a specimen says it; empty
	// when there are too many cases to look at.
	Example []string
}

// edit is a mutant before it is judged: other nodes, another root, and what
// stands at value -1.
type edit struct {
	change string
	nodes  []branch
	root   kid
	extra  extra
}

// extra is another test of a leaf's fact, another value, or a fixed truth.
type extra struct {
	leaf  int // -1: a value or fixed
	test  test
	value kid // -2: fixed
	fixed bool
}

// Mutants judges every small edit of the condition by the specimens added:
// comparisons that include or leave out what lies below, at or above, moved
// thresholds, other options, atoms negated, dropped or exchanged, and and or.
func (m *Measure) Mutants() []Mutant {
	var out []Mutant
	for _, e := range m.edits() {
		mutant := Mutant{Change: e.change}
		mutant.Killed = m.kills(&e)
		if !mutant.Killed {
			mutant.Same, mutant.Example = m.same(&e)
		}
		out = append(out, mutant)
	}
	return out
}

// edits lists the mutants. The inside of derived values is left alone: they
// have specimens of their own.
func (m *Measure) edits() []edit {
	var out []edit
	for i, pin := range m.pins {
		name := m.atoms[i].Text
		put := func(x extra, format string, args ...any) {
			nodes, root := m.instead(pin.at, kid{at: -1})
			out = append(out, edit{name + ": " + fmt.Sprintf(format, args...), nodes, root, x})
		}
		if pin.at < len(m.f.leaves) {
			m.otherTests(pin, m.atoms[i], put)
		}
		put(extra{leaf: -1, value: kid{at: pin.at, not: true}}, "the other way round")
		put(extra{leaf: -1, value: kid{at: -2}, fixed: true}, "always %v", !pin.not)
		put(extra{leaf: -1, value: kid{at: -2}}, "always %v", pin.not)
		for j, other := range m.pins {
			if j != i {
				put(extra{leaf: -1, value: kid{other.at, other.not != pin.not}}, "%s in its place", m.atoms[j].Text)
			}
		}
	}
	for _, n := range m.ownNodes() {
		out = append(out, m.nodeEdits(n)...)
	}
	return out
}

// otherTests are the edits of one comparison or choice.
func (m *Measure) otherTests(pin kid, atom AtomInfo, put func(extra, string, ...any)) {
	l := &m.f.leaves[pin.at]
	own := l.test()
	try := func(t test, format string, args ...any) { put(extra{leaf: pin.at, test: t}, format, args...) }
	switch {
	case own.number:
		for i, place := range []string{"below the threshold", "at the threshold", "above the threshold"} {
			try(test{own.accepts ^ 1<<i, true, own.c}, "otherwise %s", place)
		}
		if !atom.Number {
			return
		}
		for _, k := range []float64{-3, -1, 1, 3} {
			try(test{own.accepts, true, own.c + k*atom.Step}, "%s in place of %s", plainNumber(own.c+k*atom.Step), plainNumber(own.c))
		}
	case l.kind == atomSet && len(m.p.facts[l.of].source.Options) > 0:
		q := m.p.facts[l.of].source
		for i := range q.Options {
			mask := own.accepts ^ 1<<i
			if bits.OnesCount64(own.accepts) == 1 {
				mask = 1 << i
			}
			if mask != 0 && mask != own.accepts {
				try(test{accepts: mask}, "%q changed", q.Options[i].ID)
			}
		}
	}
}

// instead copies the condition's own nodes with one value exchanged.
func (m *Measure) instead(value int, with kid) ([]branch, kid) {
	swap := func(k kid) kid {
		if k.at == value {
			return kid{with.at, k.not != with.not}
		}
		return k
	}
	nodes := slices.Clone(m.f.nodes)
	for _, n := range m.ownNodes() {
		kids := slices.Clone(nodes[n].kids)
		for i := range kids {
			kids[i] = swap(kids[i])
		}
		nodes[n].kids = kids
	}
	return nodes, swap(m.f.roots[0])
}

// ownNodes lists the nodes that are not inside a derived value.
func (m *Measure) ownNodes() []int {
	var out []int
	var walk func(kid)
	walk = func(k kid) {
		n := k.at - len(m.f.leaves)
		if n < 0 || m.f.nodes[n].link || slices.Contains(out, n) {
			return
		}
		out = append(out, n)
		for _, kid := range m.f.nodes[n].kids {
			walk(kid)
		}
	}
	walk(m.f.roots[0])
	slices.Sort(out)
	return out
}

// nodeEdits exchanges and with or, and negates the whole group.
func (m *Measure) nodeEdits(n int) []edit {
	group := "the group at " + m.p.slotWords(m.f.nodes[n].kids, m)
	other := slices.Clone(m.f.nodes)
	other[n].or = !other[n].or
	nodes, root := m.instead(len(m.f.leaves)+n, kid{at: len(m.f.leaves) + n, not: true})
	nothing := extra{leaf: -1, value: kid{at: -2}}
	return []edit{{group + ": and exchanged with or", other, m.f.roots[0], nothing},
		{group + ": the other way round", nodes, root, nothing}}
}

// slotWords names a group by its first atom.
func (p *Program) slotWords(kids []kid, m *Measure) string {
	for _, k := range kids {
		if i := slices.IndexFunc(m.pins, func(pin kid) bool { return pin.at == k.at }); i >= 0 {
			return m.atoms[i].Text
		}
	}
	return "its start"
}
