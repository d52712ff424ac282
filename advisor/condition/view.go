package condition

import (
	"math/bits"

	"longstand/advisor"
)

// View is one case seen through a Program: what is possible for every question,
// and the truth of every condition. It is for one goroutine. After NewView
// nothing it does allocates, but for what trade functions do and the first Missing.
type View struct {
	p        *Program
	slots    []uint8 // truths
	figures  []interval
	options  []uint64 // choice and yesno: what is still possible
	yes, no  []uint64 // choices
	readings [][]float64
	state    []advisor.State
	exact    []bool
	said     []advisor.Truth // what SetKnown said
	sayKnown []bool          // whether it did
	open     bool
	caseYear interval

	tallies []tally // by node
	args    []float64
	marks   []uint32 // for walks over nodes, by epoch; made for the first
	epoch   uint32
}

// NewView makes a view in which nothing was asked.
func (p *Program) NewView() *View {
	v := p.emptyView()
	v.Reset(0)
	return v
}

// ViewOf makes a view of one value for each question: what NewView, Reset,
// OpenKnown and Load do, evaluated once.
func (p *Program) ViewOf(values []advisor.Value, caseYear float64, open bool) *View {
	v := p.emptyView()
	v.caseYear, v.open = interval{caseYear, caseYear}, open
	v.Load(values)
	return v
}

// emptyView makes room for a view.
func (p *Program) emptyView() *View {
	n := len(p.facts)
	v := &View{p: p, slots: make([]uint8, 2*len(p.atoms)+len(p.nodes)), figures: make([]interval, len(p.numbers)),
		options: make([]uint64, n), yes: make([]uint64, n), no: make([]uint64, n), readings: make([][]float64, n),
		state: make([]advisor.State, n), exact: make([]bool, n), said: make([]advisor.Truth, n), sayKnown: make([]bool, n),
		tallies: make([]tally, len(p.nodes)), args: make([]float64, maxParams)}
	for i, num := range p.numbers {
		v.figures[i] = interval{num.c, num.c} // constants stay
	}
	for i := p.kindAt[atomDone]; i < p.kindAt[atomDone+1]; i++ {
		v.write(i, uint8(advisor.False))
	}
	return v
}

// Reset forgets everything: nothing asked, nothing done, known() as the answers
// say, ages reckoned to the given decimal year.
func (v *View) Reset(caseYear float64) {
	v.caseYear = interval{caseYear, caseYear}
	v.open = false
	clear(v.sayKnown)
	nothing := advisor.Value{}
	for q := range v.p.facts {
		v.take(q, &nothing)
	}
	for i := v.p.kindAt[atomDone]; i < v.p.kindAt[atomDone+1]; i++ {
		v.write(i, uint8(advisor.False))
	}
	v.evaluate()
}

// Load takes one value for each question, by index, and evaluates everything.
// What SetKnown and SetDone said stays. The view keeps the values' readings
// without copying them.
func (v *View) Load(values []advisor.Value) {
	for q := range values {
		v.take(q, &values[q])
	}
	v.evaluate()
}

// take stores what is possible for a question.
func (v *View) take(q int, val *advisor.Value) {
	f := &v.p.facts[q]
	told := val.State == advisor.Told
	v.state[q] = val.State
	switch f.kind {
	case advisor.YesNoKind, advisor.Choice:
		set := f.all
		if told && val.Options&f.all != 0 {
			set = val.Options & f.all
		}
		v.options[q] = set
		v.exact[q] = bits.OnesCount64(set) == 1
	case advisor.Choices:
		v.yes[q], v.no[q] = 0, 0
		if told {
			v.yes[q], v.no[q] = val.Yes&^val.No, val.No&^val.Yes
		}
		v.exact[q] = told && (v.yes[q]|v.no[q])&f.all == f.all
	case advisor.NumberKind, advisor.Year, advisor.Code:
		v.takeNumber(q, val, told)
	case advisor.ReadingsKind:
		v.readings[q] = nil
		if told {
			v.readings[q] = val.Readings
		}
		v.exact[q] = len(v.readings[q]) > 0
	default:
		v.exact[q] = told
	}
}

// codeSlack is how far apart the bounds of a decoded code may lie for it still
// to be known: a tyre's code names a week.
const codeSlack = 1.01 / 52

func (v *View) takeNumber(q int, val *advisor.Value, told bool) {
	f := &v.p.facts[q]
	w := f.wide
	if told {
		w = f.wide.within(val.Low, val.High)
	}
	if f.number >= 0 {
		v.figures[f.number] = w
	}
	v.exact[q] = w.lo == w.hi || f.kind == advisor.Code && w.hi-w.lo <= codeSlack
}

// Truth is what a condition says now.
func (v *View) Truth(id advisor.CondID) advisor.Truth { return advisor.Truth(v.slots[v.p.conds[id]]) }

// DerivedTruth is what a boolean derived value says now.
func (v *View) DerivedTruth(i int) advisor.Truth { return advisor.Truth(v.slots[v.p.derived[i].slot]) }

// Number gives the bounds of a numeric derived value, equal when it is exact.
func (v *View) Number(i int) (lo, hi float64) {
	if !v.p.derived[i].isNumber {
		return advisor.Anything()
	}
	f := v.figures[v.p.derived[i].number]
	return f.lo, f.hi
}

// Exact tells whether a question has exactly one value in this view.
func (v *View) Exact(q int) bool { return v.exact[q] }
