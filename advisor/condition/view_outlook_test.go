package condition

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// What may yet be answered can make a condition true or false; what stays as it
// is cannot, and then the rest of the condition may not matter either.
func TestOutlook(t *testing.T) {
	for _, row := range []struct {
		source            string
		may               []string
		yes, no           bool
		forTrue, forFalse []string
	}{
		{"turns", []string{"turns"}, true, true, []string{"turns"}, []string{"turns"}},
		{"turns", nil, false, false, nil, nil},
		{"turns and laid_up > 4", []string{"turns"}, false, true, nil, []string{"turns"}},
		{"turns or laid_up > 4", []string{"turns"}, true, false, []string{"turns"}, nil},
		{"not (turns and laid_up > 4)", []string{"turns"}, true, false, []string{"turns"}, nil},
		{"(turns and laid_up > 4) or climate == \"dry\"", []string{"turns", "climate"}, true, true,
			[]string{"climate"}, []string{"climate", "turns"}},
		{"(turns or laid_up > 4) and climate == \"dry\"", []string{"turns", "climate"}, true, true,
			[]string{"climate", "turns"}, []string{"climate"}},
	} {
		v, id := viewOf(t, row.source, nil)
		may := make([]bool, len(v.p.facts))
		names := func(qs []int) (out []string) {
			for _, q := range qs {
				out = append(out, v.p.facts[q].id)
			}
			return out
		}
		for _, name := range row.may {
			may[questionAt(t, v.p, name)] = true
		}
		o := v.Outlook(may)
		assert.Equal(t, row.yes, o.Can(id, advisor.True), "%s can become true", row.source)
		assert.Equal(t, row.no, o.Can(id, advisor.False), "%s can become false", row.source)
		assert.ElementsMatch(t, row.forTrue, names(o.Waits(id, advisor.True, nil)), row.source)
		assert.ElementsMatch(t, row.forFalse, names(o.Waits(id, advisor.False, nil)), row.source)
	}
}

func questionAt(t *testing.T, p *Program, name string) int {
	for q := range p.facts {
		if p.facts[q].id == name {
			return q
		}
	}
	require.FailNow(t, "no question "+name)
	return -1
}

// An Outlook never promises too little: whatever is answered, in any order, a
// condition comes to nothing that was ruled out, and changes only by an answer
// to a question that it waited for.
func TestOutlookIsSound(t *testing.T) {
	c := vocabularyCompiler()
	sources := []string{
		"turns and laid_up > 4 or climate == \"dry\" and not turns",
		"not (climate in [\"damp\", \"salt\"] or laid_up < 2) and (turns or \"mud\" in finds)",
		"known(turns) and laid_up > 10 or not known(climate) and turns",
		"laid_up / 2 > 3 and (\"mud\" in finds or \"nest\" in finds) and turns",
	}
	var ids []advisor.CondID
	for _, s := range sources {
		ids = append(ids, one(t, c, s))
	}
	p := c.Program()
	r := rand.New(rand.NewPCG(1, 2))
	names := []string{"turns", "laid_up", "climate", "finds"}
	for range 1000 {
		v := p.NewView()
		v.Reset(2025.5)
		v.OpenKnown(true)
		may := make([]bool, len(p.facts))
		var open []int
		for _, name := range names {
			q := questionAt(t, p, name)
			switch r.IntN(3) {
			case 0:
				v.SetKnown(q, advisor.False) // it will not be asked
			case 1:
				v.Set(q, answerTo(r, p, q))
			default:
				may[q] = true
				open = append(open, q)
			}
		}
		o := v.Outlook(may)
		for _, id := range ids {
			before := v.Truth(id)
			can := map[advisor.Truth]bool{advisor.True: o.Can(id, advisor.True), advisor.False: o.Can(id, advisor.False)}
			waits := o.Waits(id, advisor.True, nil)
			waits = o.Waits(id, advisor.False, waits)
			after := p.NewView()
			after.CopyFrom(v)
			for _, q := range open {
				was := after.Truth(id)
				after.Set(q, answerTo(r, p, q))
				if now := after.Truth(id); now != was {
					require.Equal(t, advisor.Unknown, before)
					require.True(t, can[now], "%s became %s", sources[id-ids[0]], now)
				}
			}
			only := p.NewView()
			only.CopyFrom(v)
			for _, q := range waits {
				only.Set(q, v.p.told(after, q))
			}
			require.Equal(t, after.Truth(id), only.Truth(id), "what it does not wait for changes nothing")
		}
	}
}

// answerTo is a random answer to a question, "can't tell" among them.
func answerTo(r *rand.Rand, p *Program, q int) advisor.Value {
	f := &p.facts[q]
	if r.IntN(5) == 0 {
		return advisor.Value{State: advisor.CantTell}
	}
	switch f.kind {
	case advisor.YesNoKind:
		return advisor.YesNo(r.IntN(2) == 1)
	case advisor.Choice:
		return advisor.OneOf(1 << r.IntN(3))
	case advisor.Choices:
		yes := r.Uint64() & f.all
		return advisor.Value{State: advisor.Told, Yes: yes, No: f.all &^ yes}
	}
	return advisor.Number(float64(r.IntN(20)))
}

// told is the answer that a view has to a question.
func (p *Program) told(v *View, q int) advisor.Value {
	f := &p.facts[q]
	if v.state[q] != advisor.Told {
		return advisor.Value{State: v.state[q]}
	}
	out := advisor.Value{State: advisor.Told, Options: v.options[q], Yes: v.yes[q], No: v.no[q]}
	if f.number >= 0 {
		out.Low, out.High = v.figures[f.number].lo, v.figures[f.number].hi
	}
	return out
}
