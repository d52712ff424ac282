// Package engine is the workshop: a book and a case go in, one record of
// advice comes out. It is pure: no clock, no files, no random order, so equal
// inputs give equal advice to the byte.
//
// Its files, in the order in which a case goes through them:
//
//   - The book: engine.go, index*.go (every id resolved to an index), routes.go
//     (the ways to a place).
//   - The case: reading.go (what is known, by which channel), answers.go (those
//     that count), overtaken.go (those that work done since has undone).
//   - The scope: chance.go, cost.go, requirements.go, network.go and overlaps.go
//     (the choice that is put to the solver), force.go (what is in or out
//     whatever its price), situation.go (puts it all together and chooses).
//   - The looks: signs.go (what a sign can say), prospect.go (what a look can
//     show, and what that is worth), trial.go (the scope tried by what a look
//     changes alone), looks.go (every look), rank.go (in order), doors.go (what
//     looks open).
//   - The advice: call.go, call_looks.go, holds.go, total.go and spread.go
//     (money), ladder.go, tell_operation.go, tell_suspect.go, house.go (house
//     rules that took part), advise.go (the whole record).
//   - What can still matter: open.go, and ahead*.go: the rest of the walk-round
//     looked at by two cuts.
//   - What would change a call: why*.go, with call_alone.go and region.go, which
//     give one call without working out the rest.
//   - sets.go: sets of operations and questions.
package engine

import (
	"longstand/advisor"
	"longstand/advisor/condition"
	"longstand/advisor/scope"
)

// Engine is a book made ready to advise: every id resolved to an index once.
// It is immutable and may be shared.
type Engine struct {
	book      *advisor.Book
	program   *condition.Program
	question  map[string]int
	operation map[string]int
	suspect   map[string]int
	look      map[string]int
	ops       []operation
	suspects  []suspect
	looks     []inspection
	doors     [][][]door // by combination now and later
	standing  [][]int    // by standing rule: its operations
	reads     [][]int    // by condition: the questions that it reads
	routes    []route
	combos    [][]int // every choice of a way per route
	house     []houseItem
	houseAt   map[[2]string]int // its places, by kind and id
}

// New makes a checked book ready. The program must be the one that was
// compiled with it.
func New(book *advisor.Book, program *condition.Program) *Engine {
	e := &Engine{book: book, program: program,
		question: map[string]int{}, operation: map[string]int{}, suspect: map[string]int{}, look: map[string]int{}}
	for i := range book.Questions {
		e.question[book.Questions[i].ID] = i
	}
	for i := range book.Operations {
		e.operation[book.Operations[i].ID] = i
	}
	for i := range book.Suspects {
		e.suspect[book.Suspects[i].ID] = i
	}
	for i := range book.Inspections {
		e.look[book.Inspections[i].ID] = i
	}
	for id := range program.Conditions() {
		e.reads = append(e.reads, program.Reads(advisor.CondID(id)))
	}
	e.indexRoutes()
	e.indexOperations()
	e.indexDoors()
	e.indexSuspects()
	e.indexLooks()
	e.house, e.houseAt = houseItems(book), map[[2]string]int{}
	for i := range e.house {
		e.houseAt[[2]string{e.house[i].kind, e.house[i].id}] = i
	}
	e.indexLookSigns()
	return e
}

// Book gives the book that the engine advises by.
func (e *Engine) Book() *advisor.Book { return e.book }

// Program gives the compiled conditions of the book.
func (e *Engine) Program() *condition.Program { return e.program }

// price gives the exact price of a care, 1 when the shop has none of that name.
func (e *Engine) price(care string) scope.Price {
	if p, ok := e.book.Settings.Care[care]; ok {
		return p
	}
	return scope.Price{Num: 1, Den: 1}
}
