package engine

import "slices"

// region marks the nodes of the network whose place in the scope can hang
// together with that of an operation: those joined to it by requirements,
// either way, through nodes that are not decided by force. A minimum cut falls
// apart into such regions, so nothing outside one can move a call within it.
func (s *situation) region(o int) []bool {
	n := len(s.net.problem.Benefit)
	decided := s.decided(n)
	near := make([][]int32, n)
	for _, a := range s.net.problem.Arcs {
		if !decided[a[0]] && !decided[a[1]] {
			near[a[0]], near[a[1]] = append(near[a[0]], a[1]), append(near[a[1]], a[0])
		}
	}
	in := make([]bool, n)
	var todo []int32
	add := func(i int32) {
		if !in[i] && !decided[i] {
			in[i] = true
			todo = append(todo, i)
		}
	}
	add(int32(o))
	for len(todo) > 0 {
		i := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for _, j := range near[i] {
			add(j)
		}
	}
	return in
}

// decided marks the nodes that are in or out by force: what is forced in with
// all that it requires, what is forced out with all that requires it.
func (s *situation) decided(n int) []bool {
	p := &s.net.problem
	in, out := slices.Clone(p.In), slices.Clone(p.Out)
	for more := true; more; {
		more = false
		for _, a := range p.Arcs {
			if in[a[0]] && !in[a[1]] {
				in[a[1]], more = true, true
			}
			if out[a[1]] && !out[a[0]] {
				out[a[0]], more = true, true
			}
		}
	}
	for i := range n {
		in[i] = in[i] || out[i]
	}
	return in
}
