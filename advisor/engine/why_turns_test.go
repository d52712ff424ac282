package engine_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
)

// answered is a copy of a case with one question known to be otherwise, in the
// way in which it is usually known.
func answered(e *engine.Engine, c *advisor.Case, t advisor.Turn) *advisor.Case {
	out := *c
	out.Answers = slices.DeleteFunc(slices.Clone(c.Answers), func(a advisor.Answer) bool { return a.Question == t.Question })
	out.Answers = append(out.Answers, advisor.Answer{Question: t.Question, Value: t.Value, How: e.Book().Question(t.Question).How})
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
	listed := map[string]string{}
	for _, u := range e.Why(c, op).Turns {
		listed[key(u)] = u.Changes[0].To
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
		for _, u := range e.Tries(c, q) {
			to := call(e.Advise(answered(e, c, u)), op).Call
			said, ok := listed[key(u)]
			assert.Equal(t, kind(to) != kind(now), ok, "%s: %s = %s", op, u.Question, u.Written)
			if ok {
				assert.Equal(t, string(kind(to)), said)
			}
		}
	}
}

func TestASlippingClutchTurnsTheCall(t *testing.T) {
	e := open(t, small)
	turns := e.Why(read(t, e, ""), "clutch").Turns
	i := slices.IndexFunc(turns, func(u advisor.Turn) bool { return u.Question == "slips" && u.Written == "yes" })
	if assert.GreaterOrEqual(t, i, 0, "seeing it slip turns leave into do") {
		assert.Equal(t, []advisor.Change{{ID: "clutch", From: "leave", To: "do"}}, turns[i].Changes)
		assert.False(t, turns[i].Asked)
	}
}

// TestTurnsOfTheBuiltInBook holds Why to the whole advice: on the practice cars
// every listed answer does what is said, and of the others tried none does.
func TestTurnsOfTheBuiltInBook(t *testing.T) {
	e := builtin(t, nil)
	draw := rand.New(rand.NewPCG(7, 11))
	for path, ids := range map[string][]string{
		"demo.toml":         {"head_off", "pipes_not_proved", "carb_bowl_look"},
		"practice/P02.toml": {"clutch_kit"},
		"practice/P05.toml": {"structure_weld", "head_gasket_leak"},
		"practice/P09.toml": {"gearbox_oil_seals"},
	} {
		c := onDisk(t, e, path)
		before := e.Brief(c)
		for _, id := range ids {
			w := e.Why(c, id)
			require.NotEmpty(t, w.Kind, id)
			listed := map[string]advisor.Turn{}
			for _, u := range w.Turns {
				listed[fmt.Sprint(u.Question, u.Written)] = u
			}
			tried := everyTry(e, c)
			assert.Equal(t, len(tried), w.Tried)
			for i, u := range tried {
				turn, said := listed[fmt.Sprint(u.Question, u.Written)]
				if said && i%5 == 0 || draw.IntN(60) == 0 {
					changes := differ(w.Kind, id, before, e.Brief(answered(e, c, u)))
					assert.Equal(t, turn.Changes, changes, "%s %s: %s = %s", path, id, u.Question, u.Written)
				}
			}
		}
	}
}

// everyTry lists all answers that a why tries.
func everyTry(e *engine.Engine, c *advisor.Case) (out []advisor.Turn) {
	for q := range e.Book().Questions {
		if question := &e.Book().Questions[q]; !question.Fixed && len(e.Program().ReadBy(q)) > 0 {
			out = append(out, e.Tries(c, question)...)
		}
	}
	return out
}

// differ reads what changed off two whole advices.
func differ(kind, id string, was, now *advisor.Advice) (out []advisor.Change) {
	add := func(id, from, to string) {
		if from != to {
			out = append(out, advisor.Change{ID: id, From: from, To: to})
		}
	}
	one := func(a *advisor.Advice, id string) string {
		return strings.Replace(string(call(a, id).Call), "do while open", "do", 1)
	}
	hold := func(a *advisor.Advice) string {
		i := slices.IndexFunc(a.Holds, func(h advisor.HoldAdvice) bool { return h.ID == id })
		switch {
		case i < 0:
			return "lifted, or does not apply"
		case a.Holds[i].When == advisor.True:
			return "stands"
		}
		return "stands until it is known whether it applies"
	}
	look := func(a *advisor.Advice) string {
		i := slices.IndexFunc(a.Inspections, func(k advisor.InspectionAdvice) bool { return k.ID == id })
		switch {
		case i < 0:
			return "nothing left for it to answer"
		case a.Inspections[i].Advised:
			return "called for"
		}
		return "not called for"
	}
	switch kind {
	case "operation":
		add(id, one(was, id), one(now, id))
	case "hold":
		add(id, hold(was), hold(now))
	case "inspection":
		add(id, look(was), look(now))
	case "suspect":
		for i := range was.Suspects {
			if was.Suspects[i].ID == id {
				for _, o := range was.Suspects[i].CuredBy {
					add(o, one(was, o), one(now, o))
				}
			}
		}
	}
	return out
}

// onDisk reads a case of the repository.
func onDisk(t testing.TB, e *engine.Engine, path string) *advisor.Case {
	data, err := os.ReadFile("../../testdata/cases/" + path)
	require.NoError(t, err)
	c, l := casefile.Read(path, data, e.Book())
	require.False(t, l.HasErrors(), path)
	return c
}
