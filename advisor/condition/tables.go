package condition

// atomKind is what an atom asks of a fact.
type atomKind uint8

const (
	atomConst  atomKind = iota // of 0: true; of 1: never known (stands for a fault)
	atomSet                    // the option of question of is one of mask
	atomFlag                   // option mask (one bit) of a choices question is listed
	atomLess                   // number of < c
	atomAtMost                 // number of <= c
	atomEqual                  // number of == c
	atomKnown                  // question of has exactly one value
	atomDone                   // operation of is done
	atomKinds
)

// atom is one undivided piece of a condition. Equal atoms are one atom in the
// whole book, so the struct is its own key.
type atom struct {
	kind atomKind
	of   int32
	mask uint64
	c    float64
}

// ref names a literal or a node: a literal is twice its atom, plus one when
// negated; a node is the complement of its index.
type ref int32

const (
	refTrue  ref = 0
	refFalse ref = 1
	refFault ref = 2
)

func (r ref) isNode() bool { return r < 0 }
func (r ref) node() int32  { return int32(^r) }
func (r ref) atom() int32  { return int32(r >> 1) }

// node joins literals and nodes. A link (derived >= 0) has one kid, the root of
// a boolean derived value, which it may negate: other conditions see the
// derived value as one atom.
type node struct {
	or      bool
	negated bool
	derived int32
	kids    []ref
}

// numberOp is how a number comes about.
type numberOp uint8

const (
	numConst numberOp = iota
	numFact
	numCaseYear
	numAdd
	numSub
	numMul
	numDiv
	numNeg
	numMin
	numMax
	numMean
	numSpread
	numCount
	numCall
)

// relation is a comparison with a constant.
type relation uint8

const (
	always relation = iota // count without a test
	less
	atMost
	equal
	unequal
	atLeast
	more
)

var relations = map[string]relation{"<": less, "<=": atMost, "==": equal, "!=": unequal, ">=": atLeast, ">": more}

var relationText = [...]string{"", "<", "<=", "==", "!=", ">=", ">"}

// mirrored is the relation with its sides exchanged.
func (r relation) mirrored() relation {
	switch r {
	case less:
		return more
	case atMost:
		return atLeast
	case atLeast:
		return atMost
	case more:
		return less
	}
	return r
}

// number is one numeric expression. Equal ones are one in the whole book; args
// packs the numbers that a call takes, so the struct is its own key.
type number struct {
	op   numberOp
	a, b int32
	c    float64
	args string
}
