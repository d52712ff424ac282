package condition

import (
	"slices"

	"longstand/advisor"
)

// Missing appends to buf the questions that a condition still waits for: those
// not known exactly that are read by what is undecided in it, in order. A
// condition that is known waits for nothing.
func (v *View) Missing(id advisor.CondID, buf []int) []int {
	if v.marks == nil {
		v.marks = make([]uint32, len(v.p.facts)+len(v.p.atoms)+len(v.p.nodes))
	}
	v.epoch++
	if v.epoch == 0 {
		clear(v.marks)
		v.epoch = 1
	}
	from := len(buf)
	buf = v.missing(v.p.conds[id], buf)
	slices.Sort(buf[from:])
	return buf
}

// seen marks something as visited in this walk, and says whether it was.
func (v *View) seen(i int) bool {
	was := v.marks[i] == v.epoch
	v.marks[i] = v.epoch
	return was
}

func (v *View) missing(slot int32, buf []int) []int {
	p := v.p
	s := int(p.source(slot))
	if v.slots[slot] != uint8(advisor.Unknown) || v.seen(len(p.facts)+s) {
		return buf
	}
	if n := s - len(p.atoms); n >= 0 {
		for _, k := range p.kids[p.nodes[n].from:p.nodes[n].to] {
			buf = v.missing(k, buf)
		}
		return buf
	}
	a := &p.atoms[s]
	for _, q := range p.reads.of(s) {
		settled := v.exact[q] || a.kind == atomFlag && (v.yes[q]|v.no[q])&a.mask != 0
		if !settled && !v.seen(int(q)) {
			buf = append(buf, int(q))
		}
	}
	return buf
}
