package condition

import "encoding/binary"

// tables grows while conditions are compiled.
type tables struct {
	atoms   []atom
	atomAt  map[atom]int32
	numbers []number
	numAt   map[number]int32
	nodes   []node
	nodeAt  map[string]int32
}

func newTables() *tables {
	t := &tables{atomAt: map[atom]int32{}, numAt: map[number]int32{}, nodeAt: map[string]int32{}}
	t.literal(atom{kind: atomConst, of: 0}, false)
	t.literal(atom{kind: atomConst, of: 1}, false)
	return t
}

func (t *tables) literal(a atom, negated bool) ref {
	i, ok := t.atomAt[a]
	if !ok {
		i = int32(len(t.atoms))
		t.atoms = append(t.atoms, a)
		t.atomAt[a] = i
	}
	r := ref(2 * i)
	if negated {
		r++
	}
	return r
}

func (t *tables) number(n number) int32 {
	i, ok := t.numAt[n]
	if !ok {
		i = int32(len(t.numbers))
		t.numbers = append(t.numbers, n)
		t.numAt[n] = i
	}
	return i
}

func pack(args []int32) string {
	var b []byte
	for _, a := range args {
		b = binary.AppendUvarint(b, uint64(a))
	}
	return string(b)
}

func unpack(s string) []int32 {
	var args []int32
	for b := []byte(s); len(b) > 0; {
		a, n := binary.Uvarint(b)
		args = append(args, int32(a))
		b = b[n:]
	}
	return args
}

// join makes the and (or the or) of some parts: nested ones of the same sort
// are drawn in, repeats are dropped.
func (t *tables) join(or bool, parts []ref) ref {
	var kids []ref
	seen := map[ref]bool{}
	add := func(r ref) {
		if !seen[r] {
			seen[r] = true
			kids = append(kids, r)
		}
	}
	for _, p := range parts {
		if p.isNode() && t.nodes[p.node()].or == or && t.nodes[p.node()].derived < 0 {
			for _, k := range t.nodes[p.node()].kids {
				add(k)
			}
			continue
		}
		add(p)
	}
	if len(kids) == 1 {
		return kids[0]
	}
	return t.node(node{or: or, derived: -1, kids: kids})
}

func (t *tables) node(n node) ref {
	key := []byte{0, 0}
	if n.or {
		key[0] = 1
	}
	if n.negated {
		key[1] = 1
	}
	key = binary.AppendVarint(key, int64(n.derived))
	for _, k := range n.kids {
		key = binary.AppendVarint(key, int64(k))
	}
	i, ok := t.nodeAt[string(key)]
	if !ok {
		i = int32(len(t.nodes))
		t.nodes = append(t.nodes, n)
		t.nodeAt[string(key)] = i
	}
	return ^ref(i)
}
