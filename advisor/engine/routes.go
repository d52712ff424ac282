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

// passable tells whether every way of a combination can be taken: not known to
// be impossible, and through operations that the car has.
func (s *situation) passable(combo []int) bool {
	for r, w := range combo {
		route := &s.e.routes[r]
		if s.all(route.Ways[w].When.ID) == advisor.False && s.possibleWays(r) > 0 {
			return false
		}
		for _, o := range route.through[w] {
			if s.off[o] && s.possibleWays(r) > 0 {
				return false
			}
		}
	}
	return true
}

// possibleWays counts the ways of a route that can be taken.
func (s *situation) possibleWays(r int) (n int) {
	route := &s.e.routes[r]
	for w := range route.Ways {
		ok := s.all(route.Ways[w].When.ID) != advisor.False
		for _, o := range route.through[w] {
			ok = ok && !s.off[o]
		}
		if ok {
			n++
		}
	}
	return n
}

// cheapestLater is the combination of ways by which what is left costs least later.
func (s *situation) cheapestLater() []int {
	var best []int
	var least int64
	for _, combo := range s.e.combos {
		if !s.passable(combo) {
			continue
		}
		if net := s.draw(s.figures, combo, combo); best == nil || net.baseline < least {
			best, least = combo, net.baseline
		}
	}
	return best
}

// routeAdvice says which way was picked where more than one could be.
func (s *situation) routeAdvice() []advisor.RouteAdvice {
	var out []advisor.RouteAdvice
	for r, w := range s.combo {
		if s.possibleWays(r) < 2 {
			continue
		}
		way := &s.e.routes[r].Ways[w]
		used := false
		for _, o := range s.e.routes[r].through[w] {
			used = used || s.member[o]
		}
		if used {
			out = append(out, advisor.RouteAdvice{Route: s.e.routes[r].ID, Way: way.ID, Name: way.Name,
				Why: "cheapest for all that is wanted there, now and later"})
		}
	}
	return out
}
