package condition

import (
	"errors"
	"fmt"
	"strings"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"

	"longstand/advisor/diag"
)

// gate is one text on its way into the tables: it gathers every fault.
type gate struct {
	c       *Compiler
	text    Text
	runes   []rune
	faults  diag.List
	foreign bool     // the scan has spoken of signs that do not belong
	hollow  bool     // it rests on a derived value that has faults of its own
	patches []func() // make the tree fit for expr's own type check
}

func (c *Compiler) gate(t Text) *gate {
	return &gate{c: c, text: t}
}

// fault records an error at a stretch of the text; the same one twice (a chain
// holds its middle twice) is kept once.
func (g *gate) fault(at file.Location, code, help, format string, args ...any) {
	g.record(diag.Diagnostic{Severity: diag.Error, Code: code, Message: fmt.Sprintf(format, args...),
		Help: help, At: g.text.span(at.From, at.To)})
}

func (g *gate) warn(at file.Location, code, help, format string, args ...any) {
	g.record(diag.Diagnostic{Severity: diag.Warning, Code: code, Message: fmt.Sprintf(format, args...),
		Help: help, At: g.text.span(at.From, at.To)})
}

func (g *gate) record(d diag.Diagnostic) {
	for i := range g.faults {
		if g.faults[i].At == d.At && g.faults[i].Code == d.Code && g.faults[i].Message == d.Message {
			return
		}
	}
	g.faults = append(g.faults, d)
}

// full tells that enough faults are known and the walk may end.
func (g *gate) full() bool { return len(g.faults) >= maxFaults }

// read checks length, brackets and signs, then parses. Nil: there is no tree.
func (g *gate) read() ast.Node {
	src := g.text.Source
	if len(src) > MaxBytes {
		g.fault(file.Location{From: 0, To: 1}, codeTooLong, "split it: put parts of it into derived values",
			"the condition is %d bytes long, the most is %d", len(src), MaxBytes)
		return nil
	}
	if g.c.bytes += len(src); g.c.bytes > MaxBook {
		if !g.c.tooMuch {
			g.fault(whole, codeTooMuch, "take rules out of the book", "the conditions of the book are together longer than %d bytes", MaxBook)
		}
		g.c.tooMuch, g.hollow = true, true
		return nil
	}
	g.runes = []rune(src)
	if !g.lex() {
		return nil
	}
	tree, err := parse(src)
	if err != nil {
		if !g.foreign {
			g.syntax(err)
		}
		return nil
	}
	return tree
}

// lex records every token that does not belong; false when what it saw forbids
// parsing at all.
func (g *gate) lex() bool {
	s := scan(g.text.Source)
	if len(s.tokens) > MaxTokens {
		g.fault(whole, codeTooLong, "split it: put parts of it into derived values",
			"the condition has %d words and signs, the most is %d", len(s.tokens), MaxTokens)
		return false
	}
	if t, found := heaped(s.tokens); found {
		g.fault(file.Location{From: t.from, To: t.to}, codeNotAdmitted, "one is enough", "%q three times in a row", t.text)
		return false
	}
	for _, t := range s.tokens {
		if why, help := foreign(t); why != "" && !g.full() {
			g.foreign = true
			g.fault(file.Location{From: t.from, To: t.to}, codeNotAdmitted, help, "%s", why)
		}
	}
	switch {
	case s.tooDeep >= 0:
		g.fault(file.Location{From: s.tooDeep, To: s.tooDeep + 1}, codeTooDeep, "put a part of it into a derived value",
			"brackets nest more than %d deep", MaxDepth)
		return false
	case s.loose >= 0:
		g.fault(file.Location{From: s.loose, To: s.loose + 1}, codeSyntax, "every bracket needs its fellow",
			"the bracket %q has no fellow", string(g.runes[s.loose]))
		return false
	}
	return true
}

// heaped finds the third not, or minus, in a row: the parser goes one level
// deeper for each.
func heaped(tokens []token) (token, bool) {
	for i := 2; i < len(tokens); i++ {
		t := tokens[i]
		if (t.text == "-" || t.text == "not") && t.text == tokens[i-1].text && t.text == tokens[i-2].text {
			return t, true
		}
	}
	return token{}, false
}

// parse calls expr's parser, a new one each time: it cannot be used twice. A
// panic of the parser is a fault of the text, not of the program.
func parse(src string) (n ast.Node, err error) {
	defer func() {
		if r := recover(); r != nil {
			n, err = nil, &file.Error{Location: file.Location{From: 0, To: 1}, Message: "cannot be read"}
		}
	}()
	tree, err := parser.ParseWithConfig(src, nil)
	if err != nil {
		return nil, err
	}
	return tree.Node, nil
}

// syntax puts the parser's complaint into the language of this book.
func (g *gate) syntax(err error) {
	var e *file.Error
	if !errors.As(err, &e) {
		g.fault(file.Location{From: 0, To: len(g.runes)}, codeSyntax, "", "%s", err.Error())
		return
	}
	at := e.Location
	word := g.piece(at)
	switch {
	case strings.Contains(e.Message, "token EOF") || strings.Contains(e.Message, "end of expression"):
		g.fault(file.Location{From: len(g.runes) - 1, To: len(g.runes)}, codeSyntax,
			"a name, a number, a word in quotes or a bracket is missing", "the condition ends too soon")
	case strings.Contains(e.Message, "not terminated"):
		if tokens := scan(g.text.Source).tokens; len(tokens) > 0 {
			at = file.Location{From: tokens[len(tokens)-1].from, To: tokens[len(tokens)-1].to}
		}
		g.fault(at, codeSyntax, "close it with the quote that opened it", "a word in quotes is not closed")
	case strings.HasPrefix(e.Message, "unexpected token"):
		g.fault(at, codeSyntax, g.syntaxHelp(at.From, word), "%q cannot stand here", word)
	case strings.HasPrefix(e.Message, "expected at least"):
		g.fault(at, codeWrongArguments, "any and all are written any(readings, # < number)", "the function needs two arguments")
	default:
		g.fault(at, codeSyntax, "", "%s", e.Message)
	}
}

// syntaxHelp looks at what stands before the word that does not fit.
func (g *gate) syntaxHelp(from int, word string) string {
	if word == "#" {
		return "# stands for one reading within any, all or count"
	}
	var last, next token
	for _, t := range scan(g.text.Source).tokens {
		switch {
		case t.to <= from:
			last = t
		case t.from > from && next.to == 0:
			next = t
		}
	}
	switch lower := strings.ToLower(word); {
	case lower != word && (lower == "and" || lower == "or" || lower == "not" || lower == "in"):
		return "write it in small letters: " + lower
	case lower == "is" || lower == "equals":
		return "compare with =="
	case word == "," && last.class == classNumber:
		return "a decimal is written with a point, as 3.5"
	case last.class == classNumber && word != "" && wordRune([]rune(word)[0]):
		return "a number stands alone, in the unit of its question; join two conditions with and, or with or"
	}
	if last.class == classWord && word != "" && wordRune([]rune(word)[0]) {
		joined := last.text + "_" + word
		if g.c.has(joined) {
			return "a name has no spaces: " + joined
		}
		if joined += "_" + next.text; g.c.has(joined) {
			return "a name has no spaces: " + joined
		}
		return "join two conditions with and, or with or"
	}
	return ""
}

// piece is the text at a location.
func (g *gate) piece(at file.Location) string {
	from := max(0, min(at.From, len(g.runes)))
	return string(g.runes[from:max(from, min(at.To, len(g.runes)))])
}
