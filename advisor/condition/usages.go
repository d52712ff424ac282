package condition

import (
	"fmt"
	"strings"

	"longstand/advisor/reckon"
)

// Usage is one thing that can be written in a condition, for docs: an operator
// or a function.
type Usage struct {
	Name   string   // as it stands in a condition
	Write  string   // how it is written
	Says   string   // what it means
	Takes  []string // of a trade function: each figure with its range and unit
	Gives  string   // of a trade function: the range and unit of its result
	Source string   // of a trade function
}

// Operators lists the operators of the language, those that bind loosest first.
func Operators() []Usage {
	return []Usage{
		{Name: "or", Write: "one or other", Says: "true when one of the two is"},
		{Name: "and", Write: "one and other", Says: "true when both are"},
		{Name: "not", Write: "not (one)", Says: "true when it is false; put brackets round what follows"},
		{Name: "==", Write: `question == "option"`, Says: "it is that option, or that number"},
		{Name: "!=", Write: `question != "option"`, Says: "it is another option, or another number"},
		{Name: "<", Write: "question < 3", Says: "it is less"},
		{Name: "<=", Write: "question <= 3", Says: "it is less, or the same"},
		{Name: ">", Write: "question > 3", Says: "it is more"},
		{Name: ">=", Write: "question >= 3", Says: "it is more, or the same"},
		{Name: "in", Write: `question in ["a", "b"]`, Says: `it is one of these; of a question with several answers, "a" in question`},
		{Name: "not in", Write: `question not in ["a", "b"]`, Says: "it is none of these"},
		{Name: "+", Write: "one + other", Says: "the sum of two numbers"},
		{Name: "-", Write: "one - other", Says: "what is left of a number, or its negative"},
		{Name: "*", Write: "one * other", Says: "the product of two numbers"},
		{Name: "/", Write: "one / other", Says: "one number by another; not known where the other may be 0"},
	}
}

// own are the functions of the language itself.
var own = []Usage{
	{Name: "known", Write: "known(question)", Says: "somebody answered it, and with one value"},
	{Name: "done", Write: "done(operation)", Says: "the case says that this work is done"},
	{Name: "min", Write: "min(readings)", Says: "the least of the readings"},
	{Name: "max", Write: "max(readings)", Says: "the greatest"},
	{Name: "mean", Write: "mean(readings)", Says: "their mean"},
	{Name: "spread", Write: "spread(readings)", Says: "the greatest less the least"},
	{Name: "count", Write: "count(readings, # > number)", Says: "how many pass the test; without a test, how many there are"},
	{Name: "any", Write: "any(readings, # < number)", Says: "at least one passes the test"},
	{Name: "all", Write: "all(readings, # < number)", Says: "each of them passes the test"},
}

// Functions lists every function that a condition may call: first those of the
// language itself, then the trade's.
func Functions() []Usage {
	out := append([]Usage(nil), own...)
	for _, f := range reckon.Functions {
		u := Usage{Name: f.Name, Says: f.Doc, Source: f.Source, Gives: ranged(f.Low, f.High, f.Unit)}
		var names []string
		for _, p := range f.Params {
			names = append(names, p.Name)
			if p.Codes != nil {
				u.Takes = append(u.Takes, p.Name+", one of "+strings.Trim(fmt.Sprint(p.Codes), "[]"))
				continue
			}
			u.Takes = append(u.Takes, p.Name+", "+ranged(p.Low, p.High, p.Unit))
		}
		u.Write = f.Name + "(" + strings.Join(names, ", ") + ")"
		out = append(out, u)
	}
	return out
}

func ranged(low, high float64, unit string) string {
	return strings.TrimSpace(fmt.Sprintf("%v to %v %s", low, high, unit))
}
