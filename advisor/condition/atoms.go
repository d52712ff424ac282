package condition

import (
	"math/bits"
	"slices"
	"strconv"
	"strings"

	"longstand/advisor"
)

// AtomInfo is one atom of a condition as a person reads it. A boolean derived
// value counts as one atom of the conditions that use it.
type AtomInfo struct {
	Text      string // as it stands, negation included: laid_up >= 10
	Questions []int  // that it reads, in order
	Operation int    // of done(), -1 otherwise
	Derived   int    // boolean derived value, -1 otherwise
	// A comparison of one numeric question with a constant has Number set: its
	// question, the constant and the question's step.
	Number         bool
	Constant, Step float64
}

// Atoms lists the atoms of a condition in order of first use.
func (p *Program) Atoms(id advisor.CondID) []AtomInfo {
	var out []AtomInfo
	for _, slot := range p.leaves(id) {
		out = append(out, p.info(slot))
	}
	return out
}

// leaves lists the slots of a condition's literals and links, each source once.
func (p *Program) leaves(id advisor.CondID) []int32 {
	var out []int32
	seen := map[int32]bool{}
	var walk func(slot int32)
	walk = func(slot int32) {
		s := p.source(slot)
		if seen[s] {
			return
		}
		seen[s] = true
		if n := s - int32(len(p.atoms)); n >= 0 && p.nodes[n].derived < 0 {
			for _, k := range p.kids[p.nodes[n].from:p.nodes[n].to] {
				walk(k)
			}
			return
		}
		out = append(out, slot)
	}
	walk(p.conds[id])
	return out
}

func (p *Program) info(slot int32) AtomInfo {
	s := p.source(slot)
	info := AtomInfo{Operation: -1, Derived: -1, Text: p.slotText(slot)}
	if n := s - int32(len(p.atoms)); n >= 0 {
		info.Derived = int(p.nodes[n].derived)
		info.Questions = p.Reads(p.derived[info.Derived].cond)
		return info
	}
	a := p.atoms[s]
	info.Questions = ints(p.reads.of(int(s)))
	switch a.kind {
	case atomDone:
		info.Operation = int(a.of)
	case atomLess, atomAtMost, atomEqual:
		if p.numbers[a.of].op == numFact {
			info.Number, info.Constant = true, a.c
			info.Step = stepOf(p.facts[p.numbers[a.of].a].source)
		}
	}
	return info
}

// stepOf is a question's resolution; 1 when it states none.
func stepOf(q *advisor.Question) float64 {
	if q.Step > 0 {
		return q.Step
	}
	return 1
}

// slotText writes a literal or a link as an author would.
func (p *Program) slotText(slot int32) string {
	s := p.source(slot)
	if n := s - int32(len(p.atoms)); n >= 0 {
		name := p.named[p.nodes[n].derived].id
		if p.nodes[n].negated {
			return "not " + name
		}
		return name
	}
	return p.atomText(&p.atoms[s], slot&1 == 1)
}

func (p *Program) atomText(a *atom, negated bool) string {
	not := ""
	if negated {
		not = "not "
	}
	switch a.kind {
	case atomSet:
		return p.setText(a, negated)
	case atomFlag:
		return strconv.Quote(p.facts[a.of].source.Options[bits.TrailingZeros64(a.mask)].ID) + " " + not + "in " + p.facts[a.of].id
	case atomKnown:
		return not + "known(" + p.facts[a.of].id + ")"
	case atomDone:
		return not + "done(" + p.operations[a.of] + ")"
	case atomLess, atomAtMost, atomEqual:
		rel := map[atomKind][2]relation{atomLess: {less, atLeast}, atomAtMost: {atMost, more}, atomEqual: {equal, unequal}}[a.kind]
		return p.compareText(a.of, rel[bit(negated)], a.c)
	}
	return not + "(always)"
}

// compareText writes the comparison of a number with a constant.
func (p *Program) compareText(number int32, rel relation, c float64) string {
	if n := p.numbers[number]; n.op == numSub && c == 0 {
		return p.numberText(n.a, 0) + " " + relationText[rel] + " " + p.numberText(n.b, 0)
	}
	return p.numberText(number, 0) + " " + relationText[rel] + " " + plainNumber(c)
}

func (p *Program) setText(a *atom, negated bool) string {
	f := &p.facts[a.of]
	if f.kind == advisor.YesNoKind {
		if negated {
			return "not " + f.id
		}
		return f.id
	}
	var words []string
	for i := range f.source.Options {
		if a.mask>>i&1 == 1 {
			words = append(words, strconv.Quote(f.source.Options[i].ID))
		}
	}
	switch {
	case len(words) == 1 && negated:
		return f.id + " != " + words[0]
	case len(words) == 1:
		return f.id + " == " + words[0]
	case negated:
		return f.id + " not in [" + strings.Join(words, ", ") + "]"
	}
	return f.id + " in [" + strings.Join(words, ", ") + "]"
}

// numberText writes a number; a derived value goes by its name. Brackets are
// put where the operation around it (its rank) binds closer.
func (p *Program) numberText(n int32, rank int) string {
	f := &p.numbers[n]
	if i := slices.IndexFunc(p.derived, func(r result) bool { return r.isNumber && r.number == n }); i >= 0 && f.op != numFact {
		return p.named[i].id
	}
	sign, own := "", 3
	switch f.op {
	case numConst:
		return plainNumber(f.c)
	case numFact:
		return p.facts[f.a].id
	case numCaseYear:
		return "case_year"
	case numNeg:
		return "-" + p.numberText(f.a, 3)
	case numAdd:
		sign, own = " + ", 1
	case numSub:
		sign, own = " - ", 1
	case numMul:
		sign, own = " * ", 2
	case numDiv:
		sign, own = " / ", 2
	default:
		return p.callText(f)
	}
	text := p.numberText(f.a, own) + sign + p.numberText(f.b, own+1)
	if own < rank {
		return "(" + text + ")"
	}
	return text
}

func (p *Program) callText(f *figure) string {
	if f.op == numCall {
		var args []string
		for _, a := range f.args {
			args = append(args, p.numberText(a, 0))
		}
		return p.trade[f.a].name + "(" + strings.Join(args, ", ") + ")"
	}
	name := map[numberOp]string{numMin: "min", numMax: "max", numMean: "mean", numSpread: "spread", numCount: "count"}[f.op]
	test := ""
	if f.op == numCount && f.rel != always {
		test = ", # " + relationText[f.rel] + " " + plainNumber(f.c)
	}
	return name + "(" + p.facts[f.a].id + test + ")"
}
