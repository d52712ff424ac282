package condition

import (
	"fmt"
	"math"
	"math/bits"
	"slices"
)

// edit is a mutant before it is judged: other nodes, another root, and what
// stands at value -1.
type edit struct {
	change string // what would be otherwise, in words
	nodes  []branch
	root   kid
	put    put
}

// put is what an edit puts in the place of an atom: another test of a leaf's
// fact, another value, a fixed truth, or the atom with its doubt resolved.
type put struct {
	kind putKind
	at   kid  // the leaf tested, the value read
	test test // of a leaf
}

type putKind uint8

const (
	putNothing putKind = iota
	putTest
	putValue
	putTrue
	putFalse
	doubtTrue  // at, not known read as true
	doubtFalse // at, not known read as false
)

// edits lists the mutants, each once. The inside of derived values is left
// alone: they have specimens of their own.
func (m *Measure) edits() []edit {
	if m.mutants != nil {
		return m.mutants
	}
	for i, pin := range m.pins {
		name := "`" + m.atoms[i].Text + "`"
		nodes, root := m.instead(pin.at, kid{at: -1})
		put := func(x put, format string, args ...any) {
			m.mutants = append(m.mutants, edit{name + " were " + fmt.Sprintf(format, args...), nodes, root, x})
		}
		if pin.at < len(m.f.leaves) {
			m.otherTests(pin, put)
		}
		m.otherValues(i, put)
	}
	for _, n := range m.ownNodes() {
		m.mutants = append(m.mutants, m.nodeEdits(n)...)
	}
	return m.mutants
}

// otherValues are the edits of an atom of any kind: the other way round, stuck,
// another atom of the same condition in its place, its doubt resolved. What is
// put stands under the atom's own negation.
func (m *Measure) otherValues(i int, add func(put, string, ...any)) {
	pin := m.pins[i]
	add(put{kind: putValue, at: kid{pin.at, true}}, "the other way round")
	stuck := [2]putKind{putFalse, putTrue}
	add(put{kind: stuck[bit(!pin.not)]}, "always true")
	add(put{kind: stuck[bit(pin.not)]}, "always false")
	for j, other := range m.pins {
		if j != i {
			add(put{kind: putValue, at: kid{other.at, other.not != pin.not}}, "`%s`", m.atoms[j].Text)
		}
	}
	if m.doubtful(pin) {
		doubt := [2]putKind{doubtFalse, doubtTrue}
		add(put{kind: doubt[bit(!pin.not)], at: kid{at: pin.at}}, "taken as so while it is not known")
		add(put{kind: doubt[bit(pin.not)], at: kid{at: pin.at}}, "taken as not so while it is not known")
	}
}

// doubtful tells whether a value can be not known: known() and done() cannot.
func (m *Measure) doubtful(value kid) bool {
	return slices.ContainsFunc(m.under(value.at), func(leaf int) bool {
		k := m.f.leaves[leaf].kind
		return k != atomKnown && k != atomDone && k != atomConst
	})
}

// under lists the leaves under a value.
func (m *Measure) under(value int) (out []int) {
	if value < len(m.f.leaves) {
		return []int{value}
	}
	for _, k := range m.f.nodes[value-len(m.f.leaves)].kids {
		for _, l := range m.under(k.at) {
			if !slices.Contains(out, l) {
				out = append(out, l)
			}
		}
	}
	return out
}

// otherTests are the edits of one comparison or choice: what lies below, at or
// above the threshold decided otherwise, the threshold moved, other options.
func (m *Measure) otherTests(pin kid, add func(put, string, ...any)) {
	l := &m.f.leaves[pin.at]
	own := l.test()
	switch {
	case own.number:
		try := func(places uint64, c float64) {
			add(put{kind: putTest, at: pin, test: test{places, true, c}}, "%s", m.p.placesText(l, places, c, pin.not))
		}
		for i := range 3 {
			try(own.accepts^1<<i, own.c)
		}
		step := m.p.stepIn(l.of)
		for _, k := range []float64{-3, -1, 1, 3} {
			if step > 0 {
				try(own.accepts, math.Round((own.c+k*step)*1e9)/1e9) // steps of 0.1 do not add up exactly
			}
		}
	case l.kind == atomSet && len(m.p.facts[l.of].source.Options) > 0:
		for all := m.p.facts[l.of].all; all != 0; all &= all - 1 {
			mask := own.accepts ^ all&-all
			if bits.OnesCount64(own.accepts) == 1 {
				mask = all & -all
			}
			if mask != 0 && mask != own.accepts {
				text := m.p.setText(&atom{kind: atomSet, of: l.of, mask: mask}, pin.not)
				add(put{kind: putTest, at: pin, test: test{accepts: mask}}, "`%s`", text)
			}
		}
	case l.kind == atomFlag:
		for i := range m.f.leaves {
			if o := &m.f.leaves[i]; o.kind == atomFlag && o.of == l.of && o.slot == unread {
				add(put{kind: putTest, at: kid{at: i}, test: o.test()}, "`%s`", m.p.atomText(&o.atom, pin.not))
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
	own := &m.f.nodes[n]
	other := slices.Clone(m.f.nodes)
	other[n].or = !other[n].or
	nodes, root := m.instead(len(m.f.leaves)+n, kid{at: len(m.f.leaves) + n, not: true})
	text := "`" + m.groupText(own, own.or) + "`"
	return []edit{
		{text + " were `" + m.groupText(own, !own.or) + "`", other, m.f.roots[0], put{}},
		{text + " were the other way round", nodes, root, put{}},
	}
}
