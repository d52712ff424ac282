package interview

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// ended is a small book and a case in which the head was lifted and the gasket
// renewed, a bore looked into, and the sump left on.
func ended() (*advisor.Book, *advisor.Advice) {
	b := &advisor.Book{
		Questions: []advisor.Question{{ID: "bore", Station: "inspection"}, {ID: "smell", Station: "bonnet"}},
		Suspects: []advisor.Suspect{
			{ID: "gasket", Name: "the gasket leaks", CuredBy: []string{"gasket_new"}},
			{ID: "guides", Name: "the guides are worn", CuredBy: []string{"guides_new"}},
			{ID: "rust", Name: "rust in the bores", CuredBy: []string{"hone"}},
			{ID: "shells", Name: "the shells are worn", CuredBy: []string{"shells_new"}},
			{ID: "drip", Name: "it drips", CuredBy: []string{"seal"}},
			{ID: "trim", Name: "the trim is loose", CuredBy: []string{"screws"}},
		},
		Operations: []advisor.Operation{
			{ID: "gasket_new", Name: "renew the gasket", Needs: []advisor.Need{{Op: "head_off"}}},
			{ID: "guides_new", Name: "renew the guides", Needs: []advisor.Need{{Op: "head_off"}}},
			{ID: "head_off", Name: "lift the head", Access: true},
			{ID: "hone", Name: "hone the bores", Needs: []advisor.Need{{Op: "head_off"}, {Op: "sump_off"}}},
			{ID: "screws", Name: "screws"},
			{ID: "seal", Name: "renew the seal", Needs: []advisor.Need{{Op: "the_end"}, {Op: "lamp", When: advisor.Condition{Text: "dark"}}}},
			{ID: "shells_new", Name: "new shells", Needs: []advisor.Need{{Op: "sump_off"}}},
			{ID: "sump_off", Name: "drop the sump", Access: true},
			{ID: "lamp", Name: "a lamp", Access: true},
			{ID: "gearbox_out", Name: "gearbox out", Access: true},
		},
		Routes: []advisor.Route{{ID: "the_end", Ways: []advisor.Way{{Through: []string{"sump_off"}}, {Through: []string{"gearbox_out"}}}}},
	}
	c := &advisor.Case{Done: []advisor.Decision{{Operation: "head_off"}, {Operation: "gasket_new"}, {Operation: "gearbox_out"}, {Operation: "head_off", Date: "2025-10-15"}},
		Answers: []advisor.Answer{{Question: "bore", Value: advisor.YesNo(true)}, {Question: "smell", Value: advisor.YesNo(true)}}}
	a := &advisor.Advice{Case: c}
	for _, s := range b.Suspects {
		a.Suspects = append(a.Suspects, advisor.SuspectAdvice{ID: s.ID})
	}
	line := func(question string) []advisor.LedgerLine {
		return []advisor.LedgerLine{{Name: "a sign", Truth: advisor.True, How: advisor.Seen, Questions: []string{question}}}
	}
	a.Suspect("rust").Ledger = line("bore")
	a.Suspect("trim").Ledger = line("smell")
	return b, a
}

// TestWorthAsking: cures first, then what was looked at, then what was opened;
// what the walk-round alone saw, or what stayed shut, only with all.
func TestWorthAsking(t *testing.T) {
	b, a := ended()
	hours := []string{"hours:head_off", "hours:gasket_new", "hours:gearbox_out"}
	cl := NewClosing(b, a, false)
	assert.Equal(t, append([]string{"gasket", "rust", "guides", "drip"}, hours...), cl.Open())
	assert.Equal(t, []string{"opened: gearbox out"}, cl.About("drip").Reasons)
	assert.Equal(t, append([]string{"gasket", "rust", "guides", "drip", "shells", "trim"}, hours...), NewClosing(b, a, true).Open())
	a.Suspects = a.Suspects[:3]
	assert.NotContains(t, NewClosing(b, a, true).Open(), "trim", "of what is not on the car nothing is asked")
	a.Case.Looked = []advisor.Looked{{Suspect: "rust", Found: advisor.NotLookedAt}}
	assert.NotContains(t, NewClosing(b, a, false).Open(), "rust", "said is said")
}

func TestUnderstandEndings(t *testing.T) {
	b, a := ended()
	cl := NewClosing(b, a, false)
	for _, tt := range []struct{ typed, found, note string }{
		{"1", advisor.Found, ""}, {"found", advisor.Found, ""}, {"Sound", advisor.Sound, ""}, {"sound # dry as a bone", advisor.Sound, "dry as a bone"},
		{"3", advisor.NotLookedAt, ""}, {"not looked at", advisor.NotLookedAt, ""}, {"c", advisor.Unsettled, ""}, {"can't tell # oil on it", advisor.Unsettled, "oil on it"},
		{"Yes # split", advisor.Found, "split"}, {"there", advisor.Found, ""}, {"not there @seen # dry", advisor.Sound, "dry"},
	} {
		c, e, _, err := Understand(cl.About("gasket"), tt.typed)
		require.NoError(t, err, tt.typed)
		assert.Equal(t, None, c)
		assert.Equal(t, &advisor.Looked{Suspect: "gasket", Found: tt.found, Note: tt.note}, e.Looked, tt.typed)
	}
	for typed, want := range map[string]float64{"2.5": 2.5, "2,5": 2.5, "2 1/2": 2.5, "2.5 h": 2.5, "2 h 30 min": 2.5, "45 min": 0.75, "0": 0} {
		_, e, _, err := Understand(cl.About("hours:head_off"), typed)
		require.NoError(t, err, typed)
		assert.Equal(t, &advisor.Taken{Operation: "head_off", Hours: want, Known: true}, e.Taken, typed)
	}
	_, e, _, err := Understand(cl.About("hours:head_off"), "c")
	require.NoError(t, err)
	assert.Equal(t, &advisor.Taken{Operation: "head_off"}, e.Taken)
	for _, bad := range []struct{ id, typed, want string }{
		{"gasket", "perhaps", "a number from 1 to 3, or can't tell"}, {"gasket", "no", `"no" can be sound, or not looked at; say which`}, {"gasket", "not found", "say which"}, {"gasket", "not 1", "one finding is wanted"}, {"gasket", "1 or 2", "one finding is wanted"},
		{"gasket", "found @owner", "only what the workshop saw"}, {"gasket", "hidden", "only what the workshop saw"},
		{"hours:head_off", "2 to 3", "one figure is wanted"}, {"hours:head_off", "about 2", "one figure is wanted"}, {"hours:head_off", "5000", "out of range"}, {"hours:head_off", "long", "figure"},
	} {
		_, _, _, err := Understand(cl.About(bad.id), bad.typed)
		assert.ErrorContains(t, err, bad.want, bad.typed)
	}
	assert.Nil(t, cl.About("gaskte"))
	assert.Nil(t, cl.About("hours:gaskte"))
	assert.NotNil(t, cl.About("shells"), "a suspect that is not asked can be said all the same")
}

// talk answers from a list and keeps what was said.
type talk struct {
	typed []string
	asked []string
	heard []string
}

func (t *talk) Ask(p *Prompt) (string, error) {
	t.asked = append(t.asked, p.Question.ID)
	if len(t.typed) == 0 {
		return "", ErrEnded
	}
	next := t.typed[0]
	t.typed = t.typed[1:]
	return next, nil
}

func (t *talk) Say(text string) { t.heard = append(t.heard, text) }

func TestClosingRuns(t *testing.T) {
	b, a := ended()
	c := a.Case
	keep := func(e Ending) (*advisor.Case, error) {
		next := *c
		if e.Looked != nil {
			next.Looked = append(next.Looked[:len(next.Looked):len(next.Looked)], *e.Looked)
		} else {
			next.Taken = append(next.Taken[:len(next.Taken):len(next.Taken)], *e.Taken)
		}
		c = &next
		return c, nil
	}
	page := func(*advisor.Case) string { return "the page" }
	cl := NewClosing(b, a, false)
	who := &talk{typed: []string{"b", "found", "", "b", "why", "sound", "a", "s", "?", "no", "c", "3", "2", "c"}}
	finished, err := cl.Run(who, keep, page)
	assert.ErrorIs(t, err, ErrEnded)
	assert.False(t, finished)
	assert.Equal(t, []string{"gasket", "gasket", "rust", "guides", "rust", "rust", "guides", "guides", "guides", "guides", "guides", "drip", "hours:head_off", "hours:gasket_new", "hours:gearbox_out"}, who.asked)
	assert.Equal(t, "this is the first question", who.heard[0])
	assert.Contains(t, who.heard, "the page")
	assert.Contains(t, who.heard, "the end of a job has no stations")
	assert.Contains(t, who.heard, "why it is asked:\n  looked at: a sign")
	assert.Equal(t, []string{"hours:gearbox_out"}, cl.Open())
	assert.Equal(t, advisor.Unsettled, c.LookedAt("guides").Found)

	finished, err = cl.Run(&talk{typed: []string{""}}, keep, page)
	assert.NoError(t, err)
	assert.True(t, finished)
	assert.Equal(t, []string{"hours:gearbox_out"}, cl.Skipped())
	assert.Contains(t, cl.About("hours:head_off").Text(), "now: 2 h (seen); Enter keeps it")
	assert.Contains(t, cl.About("gasket").Text(), "now: found: it was there (seen); Enter keeps it")
	stopped, err := NewClosing(b, a, false).Run(&talk{typed: []string{"q"}}, keep, page)
	assert.NoError(t, err)
	assert.False(t, stopped)
}
