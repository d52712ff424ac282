package engine_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
	"longstand/advisor/engine"
)

// answered is a copy of a case with one question seen to be otherwise.
func answered(c *advisor.Case, t advisor.Turn) *advisor.Case {
	out := *c
	out.Answers = slices.DeleteFunc(slices.Clone(c.Answers), func(a advisor.Answer) bool { return a.Question == t.Question })
	out.Answers = append(out.Answers, advisor.Answer{Question: t.Question, Value: t.Value, How: advisor.Seen})
	return &out
}

// TestListedTurnsAreAllAndOnlyThoseThatTurn applies every answer tried through
// the whole advice: the call turns exactly when the answer is listed.
func TestListedTurnsAreAllAndOnlyThoseThatTurn(t *testing.T) {
	e := open(t, small)
	for _, body := range []string{"", "[answers]\nslips = true", "[answers]\nfelt = \"scored\"", "[answers]\nhose = \"cracked\"\nyears = 4"} {
		c := read(t, e, body)
		for _, op := range e.Book().Operations {
			checkTurns(t, e, c, op.ID)
		}
	}
}

func checkTurns(t *testing.T, e *engine.Engine, c *advisor.Case, op string) {
	key := func(u advisor.Turn) string { return fmt.Sprint(u.Question, u.Written) }
	listed := map[string]advisor.Call{}
	for _, u := range e.Turns(c, op) {
		listed[key(u)] = u.To
	}
	kind := func(c advisor.Call) advisor.Call {
		if c == advisor.DoOpen {
			return advisor.Do
		}
		return c
	}
	now := call(e.Advise(c), op).Call
	for i := range e.Book().Questions {
		q := &e.Book().Questions[i]
		for _, u := range e.Tries(q) {
			to := call(e.Advise(answered(c, u)), op).Call
			said, ok := listed[key(u)]
			assert.Equal(t, kind(to) != kind(now), ok, "%s: %s = %s", op, u.Question, u.Written)
			if ok {
				assert.Equal(t, to, said)
			}
		}
	}
}

func TestASlippingClutchTurnsTheCall(t *testing.T) {
	e := open(t, small)
	turns := e.Turns(read(t, e, ""), "clutch")
	i := slices.IndexFunc(turns, func(u advisor.Turn) bool { return u.Question == "slips" && u.Written == "yes" })
	if assert.GreaterOrEqual(t, i, 0, "seeing it slip turns leave into do") {
		assert.Equal(t, advisor.Do, turns[i].To)
		assert.False(t, turns[i].Asked)
	}
}
