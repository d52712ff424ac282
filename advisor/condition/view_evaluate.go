package condition

import "longstand/advisor"

// evaluate works out every number, atom and node from the facts.
func (v *View) evaluate() {
	p := v.p
	for i := range p.numbers {
		if op := p.numbers[i].op; op != numConst && op != numFact {
			v.figures[i] = v.figure(&p.numbers[i])
		}
	}
	v.sets(p.atoms[p.kindAt[atomSet]:p.kindAt[atomSet+1]], v.group(atomSet))
	v.flags(p.atoms[p.kindAt[atomFlag]:p.kindAt[atomFlag+1]], v.group(atomFlag))
	v.less(p.atoms[p.kindAt[atomLess]:p.kindAt[atomLess+1]], v.group(atomLess))
	v.atMost(p.atoms[p.kindAt[atomAtMost]:p.kindAt[atomAtMost+1]], v.group(atomAtMost))
	for i := p.kindAt[atomEqual]; i < p.kindAt[atomKnown+1]; i++ {
		v.write(i, v.atom(&p.atoms[i]))
	}
	v.write(p.kindAt[atomConst], uint8(advisor.True))
	v.join()
}

// group gives the slots of one kind of atoms.
func (v *View) group(k atomKind) []uint8 {
	return v.slots[2*v.p.kindAt[k] : 2*v.p.kindAt[k+1]]
}

// The four loops below are one for each common kind of atom: t is "surely
// true", f "surely false"; the second slot is the negation.

func (v *View) sets(atoms []atom, out []uint8) {
	options := v.options
	for i := range atoms {
		a := &atoms[i]
		possible := options[a.of]
		t, f := bit(possible&^a.mask == 0), bit(possible&a.mask == 0)
		out[2*i], out[2*i+1] = t|f<<1, f|t<<1
	}
}

func (v *View) flags(atoms []atom, out []uint8) {
	for i := range atoms {
		a := &atoms[i]
		t, f := bit(v.yes[a.of]&a.mask != 0), bit(v.no[a.of]&a.mask != 0)
		out[2*i], out[2*i+1] = t|f<<1, f|t<<1
	}
}

func (v *View) less(atoms []atom, out []uint8) {
	figures := v.figures
	for i := range atoms {
		a := &atoms[i]
		n := &figures[a.of]
		t, f := bit(n.hi < a.c), bit(n.lo >= a.c)
		out[2*i], out[2*i+1] = t|f<<1, f|t<<1
	}
}

func (v *View) atMost(atoms []atom, out []uint8) {
	figures := v.figures
	for i := range atoms {
		a := &atoms[i]
		n := &figures[a.of]
		t, f := bit(n.hi <= a.c), bit(n.lo > a.c)
		out[2*i], out[2*i+1] = t|f<<1, f|t<<1
	}
}

// write puts an atom's truth into its two slots.
func (v *View) write(i int32, t uint8) {
	v.slots[2*i], v.slots[2*i+1] = t, opposite(t)
}

// atom works out one atom that rests on answers.
func (v *View) atom(a *atom) uint8 {
	switch a.kind {
	case atomSet:
		possible := v.options[a.of]
		return bit(possible&^a.mask == 0) | bit(possible&a.mask == 0)<<1
	case atomFlag:
		return bit(v.yes[a.of]&a.mask != 0) | bit(v.no[a.of]&a.mask != 0)<<1
	case atomLess:
		return uint8(decide(v.figures[a.of], less, a.c))
	case atomAtMost:
		return uint8(decide(v.figures[a.of], atMost, a.c))
	case atomEqual:
		return uint8(decide(v.figures[a.of], equal, a.c))
	case atomKnown:
		return uint8(v.knownNow(int(a.of)))
	}
	return uint8(advisor.Unknown)
}

// join counts every node's kids and works it out.
func (v *View) join() {
	p, slots, tallies := v.p, v.slots, v.tallies
	out := slots[2*len(p.atoms):]
	for i := range p.nodes {
		n := &p.nodes[i]
		t := tally(0)
		for _, k := range p.kids[n.from:n.to] {
			t += tallied(slots[k])
		}
		if n.negated {
			t = t.swapped()
		}
		tallies[i] = t
		out[i] = n.truth(t)
	}
}

// knownNow is what known(q) says: as SetKnown said, else from the answer.
func (v *View) knownNow(q int) advisor.Truth {
	switch {
	case v.sayKnown[q]:
		return v.said[q]
	case v.exact[q]:
		return advisor.True
	case v.open && v.state[q] == advisor.NotAsked:
		return advisor.Unknown
	}
	return advisor.False
}
