package condition

// Code explains one stable diagnostic code of this room, with a condition that
// earns it and one that does not.
type Code struct {
	ID, Meaning  string
	Wrong, Right string
}

// Codes lists every diagnostic code that compiling a condition can give.
var Codes = []Code{
	{codeTooLong, "a condition is longer than 2048 bytes or 400 words and signs", "a very long list of ors", "damp or laid_up > 3"},
	{codeTooMuch, "the conditions of a book are together longer than 256 KB: thousands of very long ones", "", ""},
	{codeTooDeep, "brackets nest more than 32 deep", "((((...))))", "damp and (laid_up > 3 or laid_up < 1)"},
	{codeSyntax, "the text cannot be read as a condition", "laid_up > and damp", "laid_up > 3 and damp"},
	{codeNotAdmitted, "something of a larger language that conditions do without", "damp ? 1 : 2", "damp and laid_up > 3"},
	{codeUnknownName, "no question or derived value has this name", "climat == \"damp\"", "climate == \"damp\""},
	{codeUnknownOption, "the question has no such option", "climate == \"dmap\"", "climate == \"damp\""},
	{codeUnknownFunction, "there is no such function", "minimum(compression) < 100", "min(compression) < 100"},
	{codeUnknownOperation, "done() names no operation of the book", "done(head_of)", "done(head_off)"},
	{codeWrongKind, "a thing is used as what it is not: a choice as a yes or no, a word as a number", "climate and damp", "climate == \"damp\" and damp"},
	{codeWrongArguments, "a function is called with the wrong number or sort of arguments", "any(compression)", "any(compression, # < 100)"},
	{codeNotBinds, "not binds closer than the comparison after it", "not laid_up > 3", "not (laid_up > 3)"},
	{codeReadsNothing, "a comparison that reads no answer", "1 < 2", "laid_up < 2"},
	{codeOutOfRange, "a comparison that the question's range already decides", "laid_up >= 0", "laid_up >= 1"},
	{codeZero, "a division by the number 0", "laid_up / 0 > 1", "laid_up / 2 > 1"},
	{codeCycle, "a derived value that rests on itself", "a = b + 1 with b = a - 1", "a = laid_up + 1"},
	{codeTypeCheck, "expr's own type check found a fault that the gate did not", "", ""},
}

const (
	codeTooLong          = "too-long"
	codeTooMuch          = "too-much"
	codeTooDeep          = "too-deep"
	codeSyntax           = "syntax"
	codeNotAdmitted      = "not-admitted"
	codeUnknownName      = "unknown-name"
	codeUnknownOption    = "unknown-option"
	codeUnknownFunction  = "unknown-function"
	codeUnknownOperation = "unknown-operation"
	codeWrongKind        = "wrong-kind"
	codeWrongArguments   = "wrong-arguments"
	codeNotBinds         = "not-binds"
	codeReadsNothing     = "reads-nothing"
	codeOutOfRange       = "out-of-range"
	codeZero             = "division-by-zero"
	codeCycle            = "cycle"
	codeTypeCheck        = "type-check"
)
