package condition

import (
	"strings"

	"github.com/expr-lang/expr/ast"
)

// foreignWords are words that expr reserves and conditions do without.
var foreignWords = map[string]string{
	"let":        "make it a derived value of the book",
	"if":         "write a and b, or give the rule a list of cases",
	"else":       "write a and b, or give the rule a list of cases",
	"matches":    "name the options: x in [\"a\", \"b\"]",
	"contains":   "for a question with several answers write \"option\" in question",
	"startsWith": "name the options: x in [\"a\", \"b\"]",
	"endsWith":   "name the options: x in [\"a\", \"b\"]",
	"nil":        "whether an answer is known is asked with known(question)",
	"true":       "leave it out: a bare name means yes, no condition at all means always",
	"false":      "write not before a name",
}

// straightQuotes helps whoever wrote in a program that bends quotes.
const straightQuotes = "these are printers' quotes; put words into straight ones"

// foreignSigns are signs of the larger language, by how they begin.
var foreignSigns = []struct{ sign, help string }{
	{"??", "what is not known stays not known; ask with known(question)"},
	{"?.", "there is nothing to reach into: a name stands alone"},
	{"?", "write a and b, or give the rule a list of cases"},
	{"&", "write and"},
	{"||", "write or"},
	{"|", "write or; functions are called as f(x)"},
	{"!", "write not before a name, != between two things"},
	{"=", "compare with =="},
	{";", "one condition is one expression"},
	{"..", "write low <= x <= high"},
	{".", "there is nothing to reach into: a name stands alone"},
	{"{", "tests of readings are written any(readings, # < number)"},
	{"}", "tests of readings are written any(readings, # < number)"},
	{"//", "the reason of a rule belongs into because = \"...\""},
	{"/*", "the reason of a rule belongs into because = \"...\""},
	{"**", "there are + - * / and the functions of the book"},
	{"^", "there are + - * / and the functions of the book"},
	{"%", "there are + - * / and the functions of the book"},
	{"`", "put words into double quotes"},
	{"#", "# stands for one reading: any(readings, # < number)"},
	{":", ""},
	{"\u201c", straightQuotes},
	{"\u201d", straightQuotes},
	{"\u201e", straightQuotes},
	{"\u2018", straightQuotes},
	{"\u2019", straightQuotes},
	{"\u2264", "write <="},
	{"\u2265", "write >="},
	{"\u2260", "write !="},
}

// foreign says why a token does not belong, "" when it does.
func foreign(t token) (why, help string) {
	switch {
	case t.class == classWord:
		if help, bad := foreignWords[t.text]; bad {
			return "conditions do without " + quoted(t.text), help
		}
		if strings.Contains(t.text, "$") {
			return "conditions do without " + quoted(t.text), "a name has letters, digits and _"
		}
		return "", ""
	case t.class != classForeign:
		return "", ""
	}
	if first := t.text[0]; first >= '0' && first <= '9' || first == '.' && len(t.text) > 1 && digit(rune(t.text[1])) {
		return "the number " + quoted(t.text) + " cannot be read", "write digits with at most one point"
	}
	for _, s := range foreignSigns {
		if strings.HasPrefix(t.text, s.sign) {
			return "conditions do without " + quoted(shown(t.text)), s.help
		}
	}
	return "conditions do without " + quoted(shown(t.text)), ""
}

// shown cuts a long piece (a comment) to its beginning.
func shown(s string) string {
	if r := []rune(s); len(r) > 12 {
		return string(r[:12]) + "..."
	}
	return s
}

// quoted puts a piece of the text into quotes, unless it brings its own.
func quoted(s string) string {
	if s != "" && (s[0] == '"' || s[0] == '\'') {
		return s
	}
	return "\"" + s + "\""
}

// refuse turns away a node of the larger language. The scan has usually placed
// its signs already; then nothing is added.
func (g *gate) refuse(n ast.Node) {
	if g.foreign {
		return
	}
	what := "this"
	switch n.(type) {
	case *ast.MemberNode, *ast.SliceNode, *ast.ChainNode:
		what = "a place in a list"
	case *ast.PointerNode, *ast.PredicateNode:
		what = "# outside a test of readings"
	case *ast.ArrayNode:
		what = "a list here"
	case *ast.ConditionalNode:
		what = "a choice between two values"
	}
	help := "there are and, or, not, comparisons, in, + - * /, known, done and the functions of the book"
	g.fault(n.Location(), codeNotAdmitted, help, "conditions do without %s", what)
}
