package engine

import (
	"slices"

	"longstand/advisor"
	"longstand/advisor/belief"
	"longstand/advisor/scope"
	"longstand/advisor/worth"
)

// situation is everything worked out about a case before it is told.
type situation struct {
	*reading
	c       *advisor.Case
	care    string
	why     string // why this care
	price   scope.Price
	fitted  []advisor.Truth
	off     []bool
	ways    [][]bool // by route: which ways can be taken, made on first use
	doubts  []doubt
	forces  *forces
	bills   []bill
	factor  float64
	figures *figures
	combo   []int // the ways taken now
	later   []int // the ways by which what is left would be cured
	net     *network
	solver  *scope.Solver
	member  []bool // by node of the network: the best scope
	value   int64  // of the best scope, in the price's scale
	margins []scope.Margin
	doors   doors // what looks open
	notes   []string
	signs   []worth.Settled   // undecided signs, made on first use
	unseen  []unseen          // dangers, made on first use
	shows   []*showing        // by look: what it can show, made on first use
	tried   []belief.Evidence // room for what a sign would make of a suspect
	trial   trial
	nets    []*network // by combination of ways, drawn on first use
}

// weigh works out the scope of a case.
func (e *Engine) weigh(c *advisor.Case) *situation { return e.read(c, false).weigh(c) }

// weigh works out the scope of a case as this reading has it.
func (r *reading) weigh(c *advisor.Case) *situation {
	s := r.begin(c)
	s.factor = s.hoursFactor(asNow)
	s.figures = s.figuresAt(asNow)
	s.choose()
	return s
}

// begin works out what a scope is chosen by: the price, what the car has, how
// likely each suspect is, and what is in or out whatever its price.
func (r *reading) begin(c *advisor.Case) *situation {
	s := &situation{reading: r, c: c, solver: scope.NewSolver(len(r.e.ops)*2, len(r.e.ops)*8)}
	s.care, s.why = s.careOf()
	s.price = r.e.price(s.care)
	s.fit()
	s.doubts = s.chances(s.fitted)
	s.forces = s.forcing(c, s.doubts, s.off)
	return s
}

// careOf says how dear a job put off is reckoned in this case, and why.
func (s *situation) careOf() (care, why string) {
	if s.c.Care != "" {
		return s.c.Care, "the case says so"
	}
	for _, w := range s.e.book.Settings.CareWhen {
		if s.all(w.When.ID) == advisor.True {
			return w.Care, w.Because
		}
	}
	return "normal", "nothing says otherwise"
}

// fit tells which operations the car has. Not known counts as fitted.
func (s *situation) fit() {
	s.required, s.ways, s.saved = nil, nil, nil // they hang on what is fitted and known
	s.fitted, s.off = make([]advisor.Truth, len(s.e.ops)), make([]bool, len(s.e.ops))
	for i := range s.e.ops {
		s.fitted[i] = s.all(s.e.ops[i].Fitted.ID)
		s.off[i] = s.fitted[i] == advisor.False
	}
}

// figuresAt gathers chances, losses and costs at one end of what is possible.
func (s *situation) figuresAt(at edge) *figures {
	f := &figures{chance: make([]float64, len(s.doubts)), left: make([]int64, len(s.doubts)),
		cost: make([]int64, len(s.e.ops)), off: s.off}
	factor := s.hoursFactor(at)
	bills := make([]bill, len(s.e.ops))
	for i := range s.e.ops {
		bills[i] = s.bill(i, factor, at)
		f.cost[i] = bills[i].cost
	}
	if at == asNow {
		s.bills = bills
	}
	for k := range s.doubts {
		if s.doubts[k].here != advisor.False {
			f.chance[k] = s.doubts[k].chance
			f.left[k] = s.loss(&s.e.suspects[k], at)
		}
	}
	return f
}

// choose solves once for each possible choice of ways and keeps the best: first
// one by which what is forced in needs nothing that is put out, then by value. What
// is left is reckoned to be cured later by the ways that make that cheapest,
// whichever way is taken now, so that the choices can be compared.
func (s *situation) choose() {
	if s.nets == nil {
		s.drawAll()
	}
	s.net, s.notes, s.trial.net = nil, nil, nil
	// The cheapest ways come first, so that they stand where all are worth as much.
	for i, net := range s.nets {
		if slices.Equal(s.e.combos[i], s.later) {
			s.try(s.e.combos[i], net)
		}
	}
	for i, net := range s.nets {
		if net != nil && !slices.Equal(s.e.combos[i], s.later) {
			s.try(s.e.combos[i], net)
		}
	}
}

// drawAll draws the network of every choice of ways that can be taken.
func (s *situation) drawAll() {
	later, net := s.cheapestLater()
	s.later, s.nets = later, make([]*network, len(s.e.combos))
	for i, combo := range s.e.combos {
		switch {
		case slices.Equal(combo, later):
			s.nets[i] = net
		case s.passable(combo):
			s.nets[i] = s.draw(s.figures, combo, later)
		}
	}
}

// try solves for one choice of ways and keeps it if it is the best so far.
func (s *situation) try(combo []int, net *network) {
	notes := s.settle(s.forces, net, s.off)
	s.doors.force(s, net, combo)
	c := s.solver.Best(&net.problem, s.price)
	if clashes := len(notes) - len(s.notes); s.net == nil || clashes < 0 || clashes == 0 && c.Value > s.value {
		s.net, s.combo, s.value, s.notes = net, combo, c.Value, notes
		s.member = append(s.member[:0], c.Member...)
	}
}

// weighMargins works out what each operation is worth having in the scope, but
// of those that the car has not or that are done.
func (s *situation) weighMargins() {
	aside := make([]bool, len(s.e.ops))
	for o := range aside {
		aside[o] = s.off[o] || s.done[o]
	}
	s.margins = make([]scope.Margin, len(s.net.problem.Benefit))
	s.solver.Margins(&s.net.problem, s.price, s.margins, aside)
}
