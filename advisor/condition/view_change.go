package condition

import "longstand/advisor"

// Set changes the answer to one question and works out again only what reads
// it, stopping where a truth stays as it was.
func (v *View) Set(q int, val advisor.Value) {
	v.take(q, &val)
	p := v.p
	for _, n := range p.numbersOf.of(q) {
		v.figures[n] = v.figure(&p.numbers[n])
	}
	for _, a := range p.atomsOf.of(q) {
		v.put(a, v.atom(&p.atoms[a]))
	}
	if a := p.knownOf[q]; a >= 0 {
		v.put(a, uint8(v.knownNow(q)))
	}
}

// SetKnown says what known(q) is, whatever the answer in this view, until the
// next Reset or FreeKnown: in a stage of evaluation that leaves answers out, a
// question can be known all the same.
func (v *View) SetKnown(q int, t advisor.Truth) {
	v.sayKnown[q], v.said[q] = true, t
	v.renewKnown(q)
}

// FreeKnown takes SetKnown back: known(q) follows the answer again.
func (v *View) FreeKnown(q int) {
	v.sayKnown[q] = false
	v.renewKnown(q)
}

func (v *View) renewKnown(q int) {
	if a := v.p.knownOf[q]; a >= 0 {
		v.put(a, uint8(v.knownNow(q)))
	}
}

// SetDone says whether an operation is done.
func (v *View) SetDone(op int, t advisor.Truth) {
	if a := v.p.doneOf[op]; a >= 0 {
		v.put(a, uint8(t))
	}
}

// OpenKnown is for the two cuts: while open, known(q) of a question not asked
// is itself not known, for it may still be asked.
func (v *View) OpenKnown(open bool) {
	v.open = open
	p := v.p
	for a := p.kindAt[atomKnown]; a < p.kindAt[atomKnown+1]; a++ {
		v.put(a, uint8(v.knownNow(int(p.atoms[a].of))))
	}
}

// put changes an atom, and what counts it.
func (v *View) put(a int32, t uint8) {
	old := v.slots[2*a]
	if old == t {
		return
	}
	v.write(a, t)
	v.spread(int(a), old, t)
}

// spread tells those that count an atom or node of its change, and goes on from
// each node whose truth that changes.
func (v *View) spread(source int, old, now uint8) {
	p := v.p
	nodes := v.slots[2*len(p.atoms):]
	change := [2]tally{tallied(now) - tallied(old), tallied(opposite(now)) - tallied(opposite(old))}
	for _, e := range p.edges.of(source) {
		i := e >> 1
		v.tallies[i] += change[e&1]
		was, is := nodes[i], p.nodes[i].truth(v.tallies[i])
		if was != is {
			nodes[i] = is
			v.spread(len(p.atoms)+int(i), was, is)
		}
	}
}

// opposite is the negation of a truth.
func opposite(t uint8) uint8 { return t>>1 | t<<1&2 }
