package condition

import "slices"

// index builds the ways from a question to what rests on it, and back.
func (p *Program) index() {
	under := p.numberQuestions()
	numbersOf := make([][]int32, len(p.facts))
	for i, qs := range under {
		if p.numbers[i].op == numFact {
			continue
		}
		for _, q := range qs {
			numbersOf[q] = append(numbersOf[q], int32(i))
		}
	}
	p.numbersOf = flatten(numbersOf)
	p.indexAtoms(under)
	p.indexEdges()
	p.indexConditions()
}

// numberQuestions gives, for each number, the questions it rests on.
func (p *Program) numberQuestions() [][]int32 {
	under := make([][]int32, len(p.numbers))
	for i, n := range p.numbers {
		var qs []int32
		switch n.op {
		case numFact, numMin, numMax, numMean, numSpread, numCount:
			qs = []int32{n.a}
		case numAdd, numSub, numMul, numDiv:
			qs = append(append(qs, under[n.a]...), under[n.b]...)
		case numNeg:
			qs = under[n.a]
		case numCall:
			for _, a := range n.args {
				qs = append(qs, under[a]...)
			}
		}
		under[i] = distinct(qs)
	}
	return under
}

// distinct sorts a copy of a list and drops repeats.
func distinct(items []int32) []int32 {
	out := slices.Clone(items)
	slices.Sort(out)
	return slices.Compact(out)
}

func (p *Program) indexAtoms(under [][]int32) {
	reads := make([][]int32, len(p.atoms))
	atomsOf := make([][]int32, len(p.facts))
	p.knownOf, p.doneOf = filled(len(p.facts), -1), filled(len(p.operations), -1)
	for i, a := range p.atoms {
		switch a.kind {
		case atomSet, atomFlag:
			reads[i] = []int32{a.of}
		case atomLess, atomAtMost, atomEqual:
			reads[i] = under[a.of]
		case atomKnown:
			reads[i] = []int32{a.of}
			p.knownOf[a.of] = int32(i)
			continue
		case atomDone:
			p.doneOf[a.of] = int32(i)
		}
		for _, q := range reads[i] {
			atomsOf[q] = append(atomsOf[q], int32(i))
		}
	}
	p.reads, p.atomsOf = flatten(reads), flatten(atomsOf)
}

func filled(n int, with int32) []int32 {
	out := make([]int32, n)
	for i := range out {
		out[i] = with
	}
	return out
}

// source is the atom or node behind a slot: atoms first, then nodes.
func (p *Program) source(slot int32) int32 {
	if atoms := int32(len(p.atoms)); slot >= 2*atoms {
		return slot - atoms
	}
	return slot / 2
}

func (p *Program) indexEdges() {
	edges := make([][]int32, len(p.atoms)+len(p.nodes))
	for i, n := range p.nodes {
		for _, k := range p.kids[n.from:n.to] {
			s := p.source(k)
			other := n.negated
			if s < int32(len(p.atoms)) {
				other = other != (k&1 == 1)
			}
			edges[s] = append(edges[s], int32(2*i)+int32(bit(other)))
		}
	}
	p.edges = flatten(edges)
}

func (p *Program) indexConditions() {
	atoms := int32(len(p.atoms))
	within := make([][]int32, len(p.nodes)) // node -> atoms
	atomsIn := func(slot int32) []int32 {
		if s := p.source(slot); s >= atoms {
			return within[s-atoms]
		} else {
			return []int32{s}
		}
	}
	for i, n := range p.nodes {
		var all []int32
		for _, k := range p.kids[n.from:n.to] {
			all = append(all, atomsIn(k)...)
		}
		within[i] = distinct(all)
	}
	readsOf, doneBy := make([][]int32, len(p.conds)), make([][]int32, len(p.conds))
	condsOf := make([][]int32, len(p.facts))
	for i, slot := range p.conds {
		for _, a := range atomsIn(slot) {
			readsOf[i] = append(readsOf[i], p.reads.of(int(a))...)
			if p.atoms[a].kind == atomDone {
				doneBy[i] = append(doneBy[i], p.atoms[a].of)
			}
		}
		readsOf[i], doneBy[i] = distinct(readsOf[i]), distinct(doneBy[i])
		for _, q := range readsOf[i] {
			condsOf[q] = append(condsOf[q], int32(i))
		}
	}
	p.readsOf, p.doneBy, p.condsOf = flatten(readsOf), flatten(doneBy), flatten(condsOf)
}
