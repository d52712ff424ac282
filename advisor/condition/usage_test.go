package condition

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/diag"
)

// Functions called amiss say how they are called.
func TestUsage(t *testing.T) {
	for source, help := range map[string]string{
		`alll(compression, # > 1)`:         "# stands for one reading within any, all or count",
		`counts(compression) > 1`:          "the nearest is count(readings, # > number)",
		`spred(compression) > 1`:           "the nearest is spread(readings)",
		`knwon(damp)`:                      "the nearest is known(question)",
		`donne(head_off)`:                  "the nearest is done(operation)",
		`cut_limt(laid_up) > 1`:            "the nearest is cut_limit(section width)",
		`cut_limit > 1`:                    "cut_limit is a function: write cut_limit(section width)",
		`cut_limit(79) > 1`:                "write cut_limit(section width)",
		`tread_limit(250) > 1`:             "write tread_limit(country)",
		`cut_limit(1, laid_up) > 1`:        "write cut_limit(section width)",
		`count(compression, # > 1, 2) > 1`: "",
		`count(laid_up) > 1`:               "",
		`known(damp, turns)`:               "write known(question)",
		`known(nothing)`:                   "a name here is a question or a derived value of the book",
		`min(compression + 1) > 2`:         "write min(readings)",
		`spread(nothing) > 2`:              "a name here is a question or a derived value of the book",
		`compression.size() > 1`:           "there is nothing to reach into: a name stands alone",
		`any(compression, # + 1 > 2)`:      "write # < number (or <= == != >= >)",
		`known(damp) > 2`:                  "numbers are compared with numbers, choices with options",
		`climate in ["dry", 3]`:            "put each option into double quotes",
		`climate in ["dyr", "salt"]`:       "the nearest is dry; the options are dry, damp, salt",
		`cut_limit(laid_up)`:               "compare it with a number",
		`compression and damp`:             "write any(compression, # < number) or compare min(compression)",
		`finds`:                            `write "mud" in finds; the options are mud, oil_film, nest`,
		`compression + 1 > 2`:              "write min(compression), max(compression), mean(compression) or count(compression, # < number)",
		`cut_limit(nothing + damp) > 1`:    "a name here is a question or a derived value of the book",
	} {
		_, faults := vocabularyCompiler().Condition(placed(source))
		require.NotEmpty(t, faults, source)
		assert.True(t, faults.HasErrors(), source)
		assert.Equal(t, help, faults[0].Help, "%s: %s", source, faults[0].Message)
	}
}

// Without a way to look inside, a fault stands at the whole text.
func TestFaultWithoutInside(t *testing.T) {
	at := diag.Span{File: "rules.toml", Line: 3, Col: 5}
	_, faults := vocabularyCompiler().Condition(Text{Source: "nonsense", At: at})
	require.Len(t, faults, 1)
	assert.Equal(t, at, faults[0].At)
}

func TestIntervals(t *testing.T) {
	inf := math.Inf(1)
	for _, row := range []struct {
		op         numberOp
		a, b, want interval
	}{
		{numAdd, interval{1, 2}, interval{10, 20}, interval{11, 22}},
		{numSub, interval{1, 2}, interval{10, 20}, interval{-19, -8}},
		{numMul, interval{-1, 2}, interval{-3, 5}, interval{-6, 10}},
		{numMul, interval{0, 2}, anything(), anything()},
		{numMul, interval{0, 0}, anything(), interval{0, 0}},
		{numDiv, interval{1, 2}, interval{-1, 1}, anything()},
		{numDiv, interval{1, 2}, interval{0, 1}, anything()},
		{numDiv, interval{1, 2}, interval{2, 4}, interval{0.25, 1}},
		{numDiv, interval{1, 2}, interval{2, inf}, interval{0, 1}},
		{numDiv, interval{-inf, inf}, interval{2, inf}, anything()},
		{numAdd, interval{inf, inf}, interval{-inf, -inf}, anything()},
	} {
		assert.Equal(t, row.want, combine(row.op, row.a, row.b), "%v: %v %v", row.op, row.a, row.b)
	}
	w := interval{0, 60}
	assert.Equal(t, interval{5, 60}, w.within(5, inf))
	assert.Equal(t, interval{0, 5}, w.within(-inf, 5))
	assert.Equal(t, w, w.within(math.NaN(), 5))
	assert.Equal(t, w, w.within(7, 5))
	assert.Equal(t, anything(), wide(&advisor.Question{}))
	assert.Equal(t, anything(), wide(&advisor.Question{Low: 5, High: 1}))
}
