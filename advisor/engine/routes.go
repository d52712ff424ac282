package engine

import (
	"slices"

	"longstand/advisor"
)

type route struct {
	*advisor.Route
	through [][]int
}

// maxCombos bounds the ways that are tried for the routes of a book.
const maxCombos = 64

func (e *Engine) indexRoutes() {
	e.combos = [][]int{nil}
	for i := range e.book.Routes {
		r := route{Route: &e.book.Routes[i]}
		var next [][]int
		for w := range r.Ways {
			r.through = append(r.through, e.operationsOf(r.Ways[w].Through))
			for _, c := range e.combos {
				next = append(next, append(append([]int(nil), c...), w))
			}
		}
		if len(next) > 0 && len(next) <= maxCombos {
			e.combos = next
		}
		e.routes = append(e.routes, r)
	}
}

func (e *Engine) routesOf(ids []string) []int {
	var out []int
	for r := range e.routes {
		if slices.Contains(ids, e.routes[r].ID) {
			out = append(out, r)
		}
	}
	return out
}

// opens lists the operations by which a look gets at its place, through the
// ways taken.
func (e *Engine) opens(l *inspection, combo []int) []int {
	if len(l.routes) == 0 {
		return l.access
	}
	out := append([]int(nil), l.access...)
	for _, r := range l.routes {
		out = append(out, e.routes[r].through[combo[r]]...)
	}
	return out
}

// mayOpen lists the operations by which a look may get at its place, through
// any way.
func (e *Engine) mayOpen(l *inspection) []int {
	out := append([]int(nil), l.access...)
	for _, r := range l.routes {
		for _, through := range e.routes[r].through {
			out = append(out, through...)
		}
	}
	return out
}

// byAnyWay lists what a need may lead to: an operation, or the steps of every way.
func (e *Engine) byAnyWay(n need) []int {
	if n.route < 0 {
		return []int{n.op}
	}
	return slices.Concat(e.routes[n.route].through...)
}

// passable tells whether every way of a combination can be taken.
func (s *situation) passable(combo []int) bool {
	for r, w := range combo {
		if !s.openWays(r)[w] {
			return false
		}
	}
	return true
}

// openWays tells which ways of a route can be taken: not known to be impossible,
// through operations that the car has and, where such a one is left, with tools
// that the shop has. A route without any is taken by whichever way.
func (s *situation) openWays(r int) []bool {
	if s.ways == nil {
		s.ways = make([][]bool, len(s.e.routes))
	}
	if s.ways[r] == nil {
		s.ways[r] = s.widest(r)
	}
	return s.ways[r]
}

func (s *situation) widest(r int) []bool {
	ways := s.e.routes[r].Ways
	for _, tooled := range []bool{true, false} {
		open, some := make([]bool, len(ways)), false
		for w := range ways {
			open[w] = s.exists(r, w) && !(tooled && len(s.e.lacks(ways[w].Tools)) > 0)
			some = some || open[w]
		}
		if some {
			return open
		}
	}
	return slices.Repeat([]bool{true}, len(ways))
}

// exists tells whether a way may be there on this car, whatever the shop has.
func (s *situation) exists(r, w int) bool {
	route := &s.e.routes[r]
	return s.all(route.Ways[w].When.ID) != advisor.False &&
		!slices.ContainsFunc(route.through[w], func(o int) bool { return s.off[o] })
}

// cheapestLater is the combination of ways by which what is left costs least
// later, with the network of going the same ways now.
func (s *situation) cheapestLater() (best []int, net *network) {
	for _, combo := range s.e.combos {
		if !s.passable(combo) {
			continue
		}
		if n := s.draw(s.figures, combo, combo); net == nil || n.baseline < net.baseline {
			best, net = combo, n
		}
	}
	return best, net
}

// routeAdvice says which way was picked to each place that the scope, or an
// advised look, needs: an operation that the way goes through may be wanted for
// another reason.
func (s *situation) routeAdvice(a *advisor.Advice) []advisor.RouteAdvice {
	var out []advisor.RouteAdvice
	wanted := s.wantedRoutes(a)
	for r, w := range s.combo {
		if !wanted[r] {
			continue
		}
		route := &s.e.routes[r]
		way := &route.Ways[w]
		out = append(out, advisor.RouteAdvice{Route: route.ID, Way: way.ID, Name: way.Name, Place: route.Name,
			Why: s.whyThisWay(r), Lacks: s.e.lacks(way.Tools)})
	}
	return out
}

// wantedRoutes marks the routes that are gone now.
func (s *situation) wantedRoutes(a *advisor.Advice) []bool {
	wanted := make([]bool, len(s.e.routes))
	want := func(needs []need) {
		for _, n := range needs {
			if n.route >= 0 && s.all(n.when) != advisor.False {
				wanted[n.route] = true
			}
		}
	}
	for o := range s.e.ops {
		if op, call := &s.e.ops[o], a.Operations[o].Call; call == advisor.Do || call == advisor.DoOpen {
			want(op.needs)
			for v, t := range s.variantTruths(o) {
				if t != advisor.False {
					want(op.variants[v])
				}
			}
		}
	}
	for i := range a.Inspections {
		if look := &a.Inspections[i]; look.Advised {
			for _, r := range s.e.looks[s.e.look[look.ID]].routes {
				wanted[r] = true
			}
		}
	}
	return wanted
}

// whyThisWay says what decided: the car, the shop's tools, or the money.
func (s *situation) whyThisWay(r int) string {
	open, exist := 0, 0
	for w, ok := range s.openWays(r) {
		if ok {
			open++
		}
		if s.exists(r, w) {
			exist++
		}
	}
	switch {
	case open > 1:
		return "cheapest for all that is wanted there, now and later"
	case exist > 1:
		return "the shop lacks the tools for any other way"
	}
	return "the only way on this car"
}
