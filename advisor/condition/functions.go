package condition

import "longstand/advisor/reckon"

// function is a trade function as conditions may call it.
type function struct {
	name      string
	params    []param
	low, high float64 // every result lies between them
	call      func(args []float64) (float64, error)
}

// param is one argument of a function: the values it takes, and which way the
// result moves with it between break points (1 rising, -1 falling, 0 neither).
type param struct {
	name      string
	low, high float64
	direction int8
	breaks    []float64
}

// trade are the functions that every book may call.
var trade = tradeFunctions()

func tradeFunctions() []function {
	var out []function
	for _, f := range reckon.Functions {
		g := function{name: f.Name, low: f.Low, high: f.High, call: f.Call}
		for _, p := range f.Params {
			g.params = append(g.params, param{p.Name, p.Low, p.High, int8(p.Direction), p.Breaks})
		}
		out = append(out, g)
	}
	return out
}
