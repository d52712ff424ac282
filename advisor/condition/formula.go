package condition

import (
	"slices"

	"longstand/advisor"
)

// formula is some conditions cut out of the tables, derived values opened up,
// to be worked out for 64 cases at a time: in the planes t and f, bit s of a
// word says that something is surely true (surely false) in case s. Values are
// its leaves first, then its nodes.
type formula struct {
	leaves []leaf
	nodes  []branch
	roots  []kid
	t, f   []uint64  // of the present block
	extra  [2]uint64 // planes of the value at -1: what a mutant puts in place of an atom
}

// leaf is one atom; slot is its positive slot in a View, or unread.
type leaf struct {
	atom
	slot int32
}

// kid is a value, perhaps negated.
type kid struct {
	at  int
	not bool
}

// branch joins kids; a link to a derived value has one.
type branch struct {
	or   bool
	link bool // to a derived value
	kids []kid
	slot int32
}

// cut takes conditions out of the tables, one root each.
func (p *Program) cut(ids ...advisor.CondID) *formula { return p.cutOut(false, ids) }

// cutWide adds leaves that nothing reads: the other options of choices
// questions, by which a mutant may replace the ones that are read.
func (p *Program) cutWide(id advisor.CondID) *formula { return p.cutOut(true, []advisor.CondID{id}) }

func (p *Program) cutOut(wide bool, ids []advisor.CondID) *formula {
	f := &formula{}
	for _, id := range ids {
		for _, s := range p.sourcesUnder(p.conds[id]) {
			if s < int32(len(p.atoms)) && f.leafAt(2*s) < 0 {
				f.leaves = append(f.leaves, leaf{p.atoms[s], 2 * s})
			}
		}
	}
	if wide {
		f.widen(p)
	}
	at := map[int32]kid{}
	for i := range f.leaves {
		at[f.leaves[i].slot] = kid{at: i}
		at[f.leaves[i].slot+1] = kid{at: i, not: true}
	}
	for _, id := range ids {
		f.roots = append(f.roots, f.open(p, p.conds[id], at))
	}
	f.t, f.f = make([]uint64, len(f.leaves)+len(f.nodes)), make([]uint64, len(f.leaves)+len(f.nodes))
	return f
}

// widen adds the other options of choices questions.
func (f *formula) widen(p *Program) {
	for i := range f.leaves {
		l := f.leaves[i]
		if l.kind != atomFlag {
			continue
		}
		for all := p.facts[l.of].all; all != 0; all &= all - 1 {
			other := atom{kind: atomFlag, of: l.of, mask: all & -all}
			if !slices.ContainsFunc(f.leaves, func(l leaf) bool { return l.atom == other }) {
				f.leaves = append(f.leaves, leaf{other, unread})
			}
		}
	}
}

// unread is the slot of a leaf that only mutants read; its negation is free too.
const unread = -2

// sourcesUnder lists atoms and nodes under a slot, each once, in order of first use.
func (p *Program) sourcesUnder(slot int32) []int32 {
	var out []int32
	seen := map[int32]bool{}
	var walk func(int32)
	walk = func(slot int32) {
		s := p.source(slot)
		if seen[s] {
			return
		}
		seen[s] = true
		out = append(out, s)
		if n := s - int32(len(p.atoms)); n >= 0 {
			for _, k := range p.kids[p.nodes[n].from:p.nodes[n].to] {
				walk(k)
			}
		}
	}
	walk(slot)
	return out
}

// leafAt finds the leaf of a positive slot, -1 when there is none.
func (f *formula) leafAt(slot int32) int {
	for i := range f.leaves {
		if f.leaves[i].slot == slot {
			return i
		}
	}
	return -1
}

// open copies what stands at a slot; what was copied before is shared.
func (f *formula) open(p *Program, slot int32, at map[int32]kid) kid {
	if k, ok := at[slot]; ok {
		return k
	}
	n := p.nodes[p.source(slot)-int32(len(p.atoms))]
	b := branch{or: n.or(), link: n.derived >= 0, slot: slot}
	for _, s := range p.kids[n.from:n.to] {
		k := f.open(p, s, at)
		k.not = k.not != n.negated
		b.kids = append(b.kids, k)
	}
	f.nodes = append(f.nodes, b)
	k := kid{at: len(f.leaves) + len(f.nodes) - 1}
	at[slot] = k
	return k
}

// force is a value held at one truth in every case; nothing is held at -2.
type force struct {
	at    int
	truth bool
}

var free = force{at: -2}

// run works out the nodes over the leaves' planes.
func (f *formula) run(hold force) {
	var keepT, keepF uint64
	if hold.at >= 0 && hold.at < len(f.leaves) {
		keepT, keepF = f.t[hold.at], f.f[hold.at]
		f.hold(hold)
	}
	for i := range f.nodes {
		n := &f.nodes[i]
		at := len(f.leaves) + i
		if at == hold.at {
			f.hold(hold)
			continue
		}
		t, no := f.kid(n.kids[0])
		for _, k := range n.kids[1:] {
			kt, kf := f.kid(k)
			if n.or {
				t, no = t|kt, no&kf
			} else {
				t, no = t&kt, no|kf
			}
		}
		f.t[at], f.f[at] = t, no
	}
	if hold.at >= 0 && hold.at < len(f.leaves) {
		f.t[hold.at], f.f[hold.at] = keepT, keepF
	}
}

func (f *formula) hold(h force) {
	f.t[h.at], f.f[h.at] = 0, ^uint64(0)
	if h.truth {
		f.t[h.at], f.f[h.at] = ^uint64(0), 0
	}
}

// kid gives the planes of a value as its reader sees it.
func (f *formula) kid(k kid) (t, no uint64) {
	if k.at < 0 {
		t, no = f.extra[0], f.extra[1]
	} else {
		t, no = f.t[k.at], f.f[k.at]
	}
	if k.not {
		return no, t
	}
	return t, no
}

// deciding gives the cases in which a value alone decides a root: the root is
// settled both ways, and differently, when the value is held true and false.
func (f *formula) deciding(value int, root kid) uint64 {
	t1, f1 := f.held(force{value, true}, root)
	t2, f2 := f.held(force{value, false}, root)
	return t1&f2 | f1&t2
}

// held is a root's planes while a value is held.
func (f *formula) held(h force, root kid) (t, no uint64) {
	f.run(h)
	if root.at == h.at {
		if h.truth != root.not {
			return ^uint64(0), 0
		}
		return 0, ^uint64(0)
	}
	return f.kid(root)
}
