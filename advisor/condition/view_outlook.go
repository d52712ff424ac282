package condition

import (
	"slices"

	"longstand/advisor"
)

// Outlook is what a View can still come to say when some questions may yet be
// answered and all others stay as they are. Kleene logic is monotone: a truth
// that is known stays; one that is not known may become true, or false, or
// neither, where it hangs on what will not be asked. As everywhere, atoms are
// taken to be free of one another, so it may promise too much, never too little.
type Outlook struct {
	v     *View
	may   []bool
	turns []uint8  // by slot: the truths that it is or can become, as bits
	marks []uint32 // by slot and wanted truth, for walks
	epoch uint32
}

// Outlook works out what can become of every condition of the view. may marks,
// by index, the questions that can still be answered. It stands until the view
// changes.
func (v *View) Outlook(may []bool) *Outlook {
	p := v.p
	o := &Outlook{v: v, may: may, turns: make([]uint8, len(v.slots)), marks: make([]uint32, 2*len(v.slots))}
	for i := range p.atoms {
		t := v.slots[2*i]
		if t == uint8(advisor.Unknown) && slices.ContainsFunc(p.reads.of(i), func(q int32) bool { return may[q] }) {
			t = both
		}
		o.turns[2*i], o.turns[2*i+1] = t, opposite(t)
	}
	for i := range p.nodes {
		o.turns[2*len(p.atoms)+i] = o.join(&p.nodes[i])
	}
	return o
}

// both is a truth that can go either way.
const both = uint8(advisor.True) | uint8(advisor.False)

// join tells what a node can become: true when enough of its kids can, false
// likewise.
func (o *Outlook) join(n *joint) uint8 {
	var yes, no uint16
	for _, k := range o.v.p.kids[n.from:n.to] {
		yes += uint16(o.turns[k] & 1)
		no += uint16(o.turns[k] >> 1)
	}
	if n.negated {
		yes, no = no, yes
	}
	return bit(yes >= n.needTrue) | bit(no >= n.needNot)<<1
}

// Can tells whether a condition that is not known may yet become true (or false).
func (o *Outlook) Can(id advisor.CondID, t advisor.Truth) bool {
	slot := o.v.p.conds[id]
	return o.v.slots[slot] == uint8(advisor.Unknown) && o.turns[slot]&uint8(t) != 0
}

// Waits appends to buf the questions whose answers can yet make a condition
// true (or false), in order; none when it is known, or cannot become so.
func (o *Outlook) Waits(id advisor.CondID, t advisor.Truth, buf []int) []int {
	o.epoch++
	from := len(buf)
	buf = o.waits(o.v.p.conds[id], uint8(t), buf)
	slices.Sort(buf[from:])
	return append(buf[:from], slices.Compact(buf[from:])...)
}

func (o *Outlook) waits(slot int32, want uint8, buf []int) []int {
	p := o.v.p
	mark := &o.marks[2*slot+int32(want>>1)]
	if o.v.slots[slot] != uint8(advisor.Unknown) || o.turns[slot]&want == 0 || *mark == o.epoch {
		return buf
	}
	*mark = o.epoch
	s := int(p.source(slot))
	if n := s - len(p.atoms); n >= 0 {
		if p.nodes[n].negated {
			want = opposite(want)
		}
		for _, k := range p.kids[p.nodes[n].from:p.nodes[n].to] {
			buf = o.waits(k, want, buf)
		}
		return buf
	}
	for _, q := range p.reads.of(s) {
		if o.may[q] {
			buf = append(buf, int(q))
		}
	}
	return buf
}
