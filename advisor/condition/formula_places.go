package condition

// A number stands at one of three places against a constant. A comparison is a
// set of places, as a choice's atom is a set of options: true when all that is
// possible lies within, false when none does.
const (
	placeBelow = 1 << iota
	placeAt
	placeAbove
)

// places is the set that a comparison accepts.
func (a *atom) places() uint64 {
	switch a.kind {
	case atomLess:
		return placeBelow
	case atomAtMost:
		return placeBelow | placeAt
	}
	return placeAt
}

// placesOf is where an interval can stand against a constant.
func placesOf(v interval, c float64) uint64 {
	return uint64(bit(v.lo < c))*placeBelow | uint64(bit(v.lo <= c && c <= v.hi))*placeAt | uint64(bit(v.hi > c))*placeAbove
}

// evidence is what one case says of one leaf's fact: the set that is possible
// (options of a choice; bit 0 no and bit 1 yes of everything else that is yes
// or no), or the interval of a number.
type evidence struct {
	set    uint64
	number interval
}

// evidence reads a leaf's fact off a view.
func (v *View) evidence(l *leaf) evidence {
	switch l.kind {
	case atomSet:
		return evidence{set: v.options[l.of]}
	case atomLess, atomAtMost, atomEqual:
		return evidence{number: v.figures[l.of]}
	}
	truth := uint8(0)
	if l.slot == unread {
		truth = v.atom(&l.atom)
	} else {
		truth = v.slots[l.slot]
	}
	return evidence{set: [...]uint64{3, 2, 1}[truth]}
}

// test is what a leaf, or a changed copy of one, asks of its evidence: whether
// the possible set, or the possible places against c, lie within accepts.
type test struct {
	accepts uint64
	number  bool
	c       float64
}

func (a *atom) test() test {
	switch a.kind {
	case atomSet:
		return test{accepts: a.mask}
	case atomLess, atomAtMost, atomEqual:
		return test{accepts: a.places(), number: true, c: a.c}
	}
	return test{accepts: 2}
}

// of says whether evidence passes for sure, or fails for sure.
func (t test) of(e evidence) (yes, no bool) {
	set := e.set
	if t.number {
		set = placesOf(e.number, t.c)
	}
	return set&^t.accepts == 0, set&t.accepts == 0
}

// tests are the leaves' own.
func (f *formula) tests() []test {
	out := make([]test, len(f.leaves))
	for i := range f.leaves {
		out[i] = f.leaves[i].test()
	}
	return out
}
