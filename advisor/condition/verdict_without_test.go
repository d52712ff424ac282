package condition

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

func compiled(t *testing.T, texts ...string) (*Program, []advisor.CondID) {
	c := vocabularyCompiler()
	require.Empty(t, c.DeriveAll([]Derivation{{"age", placed("case_year - made")}}))
	var ids []advisor.CondID
	for _, text := range texts {
		ids = append(ids, one(t, c, text))
	}
	return c.Program(), ids
}

func question(t *testing.T, p *Program, id string) int {
	for i := range p.facts {
		if p.facts[i].id == id {
			return i
		}
	}
	require.Fail(t, "no question "+id)
	return -1
}

func TestForgotten(t *testing.T) {
	for _, row := range []struct {
		text, question string
		from, to       advisor.Truth
		found          bool
	}{
		{"known(climate) and climate == \"damp\"", "climate", y, n, true},
		{"known(climate) and climate == \"damp\"", "climate", n, y, false},
		{"climate == \"damp\"", "climate", y, n, false}, // unknown is not false
		{"damp and not (known(turns) and not turns)", "turns", n, y, true},
		{"damp and (turns or not known(turns))", "turns", n, y, true},
		{"damp and not known(climate) and damp", "climate", y, n, false},
		{"known(turns) or damp", "turns", y, n, true},
		{"known(turns) and turns or damp", "damp", y, n, false}, // no known() of it
	} {
		p, ids := compiled(t, row.text)
		v := p.Forgotten(ids[0], question(t, p, row.question), row.from, row.to)
		assert.Equal(t, row.found, v.Answer != y, "%s without %s: %v", row.text, row.question, v)
		assert.Equal(t, row.found, v.Example != nil, row.text)
	}
}

func TestReached(t *testing.T) {
	for _, row := range []struct {
		text   string
		before []string
		want   bool
	}{
		{"laid_up > 8", []string{"laid_up > 3"}, false},
		{"laid_up > 3", []string{"laid_up > 8"}, true},
		{"laid_up > 4", []string{"damp", "not damp"}, true}, // as long as damp is not known
		{"damp and laid_up > 4", []string{"damp and turns", "laid_up > 4"}, false},
		{"climate == \"dry\"", []string{"climate in [\"dry\", \"salt\"]"}, false},
	} {
		p, ids := compiled(t, append([]string{row.text}, row.before...)...)
		assert.Equal(t, row.want, p.Reached(ids[0], ids[1:]...), "%s after %v", row.text, row.before)
	}
}

func TestNeverWithout(t *testing.T) {
	p, ids := compiled(t, "damp and turns or done(head_off)", "damp and turns", "damp and turns or laid_up > 3")
	closed := map[int]bool{question(t, p, "turns"): true}
	shut := func(q int) bool { return closed[q] }
	assert.Equal(t, n, p.NeverWithout(ids[0], shut).Answer, "the work can be done")
	assert.Equal(t, y, p.NeverWithout(ids[1], shut).Answer)
	assert.Equal(t, []string{"laid_up = 4"}, p.NeverWithout(ids[2], shut).Example)
}

func TestUndone(t *testing.T) {
	p, ids := compiled(t, "done(head_off) or damp")
	claim := func(x Truths) uint64 { return x.True[0] }
	assert.Equal(t, []string{"damp = true"}, p.Undone(ids, claim).Example)
	p, ids = compiled(t, "done(head_off) and damp")
	assert.Equal(t, y, p.Undone(ids, claim).Answer)
}

func TestAlike(t *testing.T) {
	p, ids := compiled(t, "climate == \"damp\"", "known(climate)", "\"mud\" in finds")
	climate, finds := question(t, p, "climate"), question(t, p, "finds")
	options := len(p.facts[climate].source.Options)
	assert.Len(t, p.Alike(climate, ids[1:2])[0], options, "known() tells none apart")
	rest := p.Alike(climate, ids[:2])
	require.Len(t, rest, 1)
	assert.Len(t, rest[0], options-1, "all but damp")
	assert.Len(t, p.Alike(finds, ids), len(p.facts[finds].source.Options)-1, "each that is not read")
	assert.Equal(t, []int{climate}, p.KnownOf(ids[1]))
	assert.Empty(t, p.KnownOf(ids[0]))
}
