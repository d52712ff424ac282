package condition

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// Every fault is placed on the piece of the text that it speaks of, with a
// stable code, and says what to do.
func TestFaults(t *testing.T) {
	for _, row := range []struct{ source, code, piece, message, help string }{
		{`climat == "damp"`, "unknown-name", `climat`, `there is no question or derived value "climat"`, "the nearest is climate"},
		{`climate == "dmap"`, "unknown-option", `"dmap"`, `climate has no option "dmap"`, "the nearest is damp; the options are dry, damp, salt"},
		{`climate == dry`, "unknown-name", `dry`, `there is no question or derived value "dry"`, `dry is an option: write climate == "dry"`},
		{`climate and damp`, "wrong-kind", `climate`, `a yes or no is wanted; "climate" is a choice`, `write climate == "dry"; the options are dry, damp, salt`},
		{`laid_up and damp`, "wrong-kind", `laid_up`, `a yes or no is wanted; "laid_up" is a number`, "compare it with a number"},
		{`not laid_up > 3`, "not-binds", `not`, `not belongs to the name after it, not to the whole comparison`, "put the comparison into brackets: not (a > b)"},
		{`not climate in ["dry"]`, "not-binds", `not`, `not belongs to the name after it, not to the whole comparison`, "write a not in [...]"},
		{`laid_up > 3 and`, "syntax", `d`, `the condition ends too soon`, "a name, a number, a word in quotes or a bracket is missing"},
		{`laid up > 3`, "syntax", `up`, `"up" cannot stand here`, "a name has no spaces: laid_up"},
		{`laid_up > 3 AND damp`, "syntax", `AND`, `"AND" cannot stand here`, "write it in small letters: and"},
		{`climate is "dry"`, "syntax", `is`, `"is" cannot stand here`, "compare with =="},
		{`laid_up > 3,5`, "syntax", `,`, `"," cannot stand here`, "a decimal is written with a point, as 3.5"},
		{`laid_up > 3 years`, "syntax", `years`, `"years" cannot stand here`, "a number stands alone, in the unit of its question; join two conditions with and, or with or"},
		{`climate == “dry"`, "not-admitted", `“`, `conditions do without "“"`, "these are printers' quotes; put words into straight ones"},
		{`laid_up ≥ 3`, "not-admitted", `≥`, `conditions do without "≥"`, "write >="},
		{`damp turns`, "syntax", `turns`, `"turns" cannot stand here`, "join two conditions with and, or with or"},
		{`((damp)`, "syntax", `(`, `the bracket "(" has no fellow`, "every bracket needs its fellow"},
		{`damp)`, "syntax", `)`, `the bracket ")" has no fellow`, "every bracket needs its fellow"},
		{`(damp]`, "syntax", `]`, `the bracket "]" has no fellow`, "every bracket needs its fellow"},
		{`climate == "dry`, "syntax", `"dry`, `a word in quotes is not closed`, "close it with the quote that opened it"},
		{`   `, "syntax", ` `, `the condition ends too soon`, "a name, a number, a word in quotes or a bracket is missing"},
		{`damp && turns`, "not-admitted", `&&`, `conditions do without "&&"`, "write and"},
		{`!damp`, "not-admitted", `!`, `conditions do without "!"`, "write not before a name, != between two things"},
		{`laid_up = 3`, "not-admitted", `=`, `conditions do without "="`, "compare with =="},
		{`laid_up > 1e1`, "not-admitted", `1e1`, `the number "1e1" cannot be read`, "write digits with at most one point"},
		{`damp == true`, "not-admitted", `true`, `conditions do without "true"`, "leave it out: a bare name means yes, no condition at all means always"},
		{`laid_up in 1..3`, "not-admitted", `..`, `conditions do without ".."`, "write low <= x <= high"},
		{`$env`, "not-admitted", `$env`, `conditions do without "$env"`, "a name has letters, digits and _"},
		{`laid_up % 2 == 0`, "not-admitted", `%`, `conditions do without "%"`, "there are + - * / and the functions of the book"},
		{`laid_up ** 2 == 4`, "not-admitted", `**`, `conditions do without "**"`, "there are + - * / and the functions of the book"},
		{`damp // because`, "not-admitted", `// because`, `conditions do without "// because"`, `the reason of a rule belongs into because = "..."`},
		{`words matches "x"`, "not-admitted", `matches`, `conditions do without "matches"`, `name the options: x in ["a", "b"]`},
		{`compression[0] > 1`, "not-admitted", `[`, `conditions do without a place in a list`, "there are and, or, not, comparisons, in, + - * /, known, done and the functions of the book"},
		{`any(compression, # < laid_up)`, "not-admitted", `#`, `a test of readings is # and one constant`, `write # < number (or <= == != >= >)`},
		{`any(compression, any(compression, # > 1))`, "not-admitted", `any`, `a test of readings is # and one constant`, `write # < number (or <= == != >= >)`},
		{`"mud" in climate`, "wrong-kind", `in`, `a word in quotes cannot be in a choice`, `write climate == "dry"; the options are dry, damp, salt`},
		{`finds == "mud"`, "wrong-kind", `==`, `a question with several answers is compared with a word in quotes`, `write "mud" in finds; the options are mud, oil_film, nest`},
		{`words == "x"`, "wrong-kind", `==`, `a text is compared with a word in quotes`, "conditions do not read texts; ask a question with options"},
		{`words`, "wrong-kind", `words`, `a yes or no is wanted; "words" is a text`, "conditions do not read texts; ask a question with options"},
		{`laid_up == "3"`, "wrong-kind", `==`, `a number is compared with a word in quotes`, "a number is written without quotes"},
		{`damp == "yes"`, "wrong-kind", `==`, `a yes or no is compared with a word in quotes`, "write damp, or not damp"},
		{`climate < "damp"`, "wrong-kind", `<`, `a choice is compared with <`, `write climate == "dry"; the options are dry, damp, salt; options have no order`},
		{`climate == "damp" or "salt"`, "wrong-kind", `"salt"`, `a yes or no is wanted; "salt" is a word in quotes`, `write question == "option", or question in ["a", "b"]`},
		{`compression > 3`, "wrong-kind", `>`, `a list of readings is compared with a number`, "compare min(compression), max(compression) or mean(compression), or write any(compression, # < number)"},
		{`laid_up in [1, 2]`, "wrong-kind", `in`, `a number cannot be in a list of words`, "write low <= x <= high, or x == a or x == b"},
		{`climate in []`, "wrong-kind", `[`, `the list of options is empty`, `write climate == "dry"; the options are dry, damp, salt`},
		{`min(laid_up) > 2`, "wrong-kind", `laid_up`, `min takes readings; laid_up is a number`, ""},
		{`laid_up + damp > 2`, "wrong-kind", `damp`, `a number is wanted; damp is a yes or no`, ""},
		{`known(case_year)`, "wrong-kind", `case_year`, `known takes a question; case_year is reckoned, not asked`, "ask for the questions that it rests on"},
		{`minn(compression) > 2`, "unknown-function", `minn`, `there is no function "minn"`, "the nearest is min(readings)"},
		{`head_off(1)`, "unknown-function", `head_off`, `there is no function "head_off"`, "head_off is an operation: write done(head_off)"},
		{`len(compression) > 2`, "unknown-function", `len`, `there is no function "len"`, "*"},
		{`filter(compression, # > 2)`, "unknown-function", `filter`, `there is no function "filter"`, "*"},
		{`done(head_of)`, "unknown-operation", `head_of`, `there is no operation "head_of"`, "the nearest is head_off"},
		{`head_off`, "unknown-name", `head_off`, `there is no question or derived value "head_off"`, "head_off is an operation: write done(head_off)"},
		{`done("head_off")`, "wrong-arguments", `"head_off"`, `done takes a name`, "write done(operation), the name without quotes"},
		{`any(compression)`, "wrong-arguments", `)`, `the function needs two arguments`, "any and all are written any(readings, # < number)"},
		{`min(compression, 3) > 1`, "wrong-arguments", `min`, `min takes one list of readings`, "write min(readings)"},
		{`1 < 2`, "reads-nothing", `<`, `this comparison reads no answer`, "compare the answer to a question"},
		{`laid_up / 0 > 1`, "division-by-zero", `/`, `a division by 0`, ""},
	} {
		_, faults := vocabularyCompiler().Condition(placed(row.source))
		if !assert.Len(t, faults, 1, row.source) {
			continue
		}
		d := faults[0]
		runes := []rune(row.source)
		assert.Equal(t, row.code, d.Code, row.source)
		assert.Equal(t, row.piece, string(runes[d.At.Start:d.At.End]), row.source)
		assert.Equal(t, row.message, d.Message, row.source)
		if row.help != "*" {
			assert.Equal(t, row.help, d.Help, row.source)
		}
		assert.Equal(t, diag.Error, d.Severity, row.source)
	}
}

// A comparison that the range decides is a warning, and the condition stands.
func TestOutOfRange(t *testing.T) {
	for source, message := range map[string]string{
		"laid_up > 100":          "this comparison with 100 is always false",
		"laid_up >= 0":           "this comparison with 0 is always true",
		"100 >= laid_up":         "this comparison with 100 is always true",
		"laid_up == -1":          "this comparison with -1 is always false",
		"min(compression) < 0":   "this comparison with 0 is always false",
		"any(compression, # >4)": "", "laid_up < 60": "", "pressure < -5": "",
	} {
		id, faults := vocabularyCompiler().Condition(placed(source))
		assert.NotZero(t, id)
		if message == "" {
			assert.Empty(t, faults, source)
			continue
		}
		require.Len(t, faults, 1, source)
		assert.Equal(t, diag.Warning, faults[0].Severity)
		assert.Equal(t, "out-of-range", faults[0].Code)
		assert.Equal(t, message, faults[0].Message)
	}
}

// All faults of one text are told at once, each where it stands.
func TestAllFaultsAtOnce(t *testing.T) {
	source := `climat == "dry" and (laid_up > "x" or done(nothing)) and finds in ["mud"] and "dirt" in finds`
	id, faults := vocabularyCompiler().Condition(placed(source))
	var codes []string
	for _, d := range faults {
		codes = append(codes, d.Code)
	}
	assert.Equal(t, []string{"unknown-name", "wrong-kind", "unknown-operation", "wrong-kind", "unknown-option"}, codes)
	assert.NotZero(t, id)
}

// Offsets count runes, not bytes.
func TestSpansCountRunes(t *testing.T) {
	_, faults := vocabularyCompiler().Condition(placed(`climate == "fée" and climat == "dry"`))
	require.Len(t, faults, 2)
	assert.Equal(t, [2]int{11, 16}, [2]int{faults[0].At.Start, faults[0].At.End})
	assert.Equal(t, [2]int{21, 27}, [2]int{faults[1].At.Start, faults[1].At.End})
}

// What stands beside a fault still counts, the fault itself is never known.
func TestFaultIsNeverKnown(t *testing.T) {
	c := vocabularyCompiler()
	and, faults := c.Condition(placed("damp and nonsense"))
	require.True(t, faults.HasErrors())
	or, _ := c.Condition(placed("not nonsense or damp"))
	broken, _ := c.Condition(placed("damp ("))
	p := c.Program()
	v := p.NewView()
	assert.Equal(t, []int{1}, p.Reads(and))
	for _, row := range []struct{ damp, and, or advisor.Truth }{{y, u, y}, {n, n, u}, {u, u, u}} {
		v.Set(1, answerOf(row.damp))
		assert.Equal(t, row.and, v.Truth(and))
		assert.Equal(t, row.or, v.Truth(or))
		assert.Equal(t, u, v.Truth(broken))
	}
}

// Every code is explained, and its examples are what they say.
func TestCodesAreExplained(t *testing.T) {
	for _, code := range Codes {
		assert.NotEmpty(t, code.Meaning, code.ID)
		assert.Equal(t, strings.ToLower(code.ID), code.ID)
		switch code.ID {
		case codeTooLong, codeTooMuch, codeTooDeep, codeCycle, codeTypeCheck:
			continue
		}
		_, faults := vocabularyCompiler().Condition(placed(code.Wrong))
		require.NotEmpty(t, faults, code.Wrong)
		assert.Equal(t, code.ID, faults[0].Code, code.Wrong)
		_, faults = vocabularyCompiler().Condition(placed(code.Right))
		assert.Empty(t, faults, code.Right)
	}
}
