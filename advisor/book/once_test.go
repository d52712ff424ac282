package book

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// rattles are two questions that a rule reads, and a once-over of them and one
// that a hold's until reads.
const rattles = "[[question]]\nid = 'rattle'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'bonnet'\n" +
	"[[question]]\nid = 'squeak'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'bonnet'\n" +
	"[[standing]]\nid = 'in'\noperation = 'head_off'\nsays = 'in'\nwhen = 'rattle or squeak'\nbecause = 'So.'\nsource = 'practice'\n" +
	"fires = [{ rattle = true, squeak = false }]\nbut_not = [{ rattle = false }]\nbut_fires = [{ rattle = false, squeak = true }]\n"

const byEar = "[[once_over]]\nid = 'by_ear'\nname = 'by ear'\nstation = 'bonnet'\nask = 'So?'\n" +
	"questions = [{ q = 'rattle', usual = 'no' }, { q = 'squeak', usual = 'no' }, 'engine_turns']\n"

func usuals(o *advisor.OnceOver) string {
	var out []string
	for _, m := range o.Members {
		out = append(out, m.Question+"="+m.Usual)
	}
	return strings.Join(out, " ")
}

// TestOnceOversAreAddedAdjustedAndWithdrawn as any other item.
func TestOnceOversAreAddedAdjustedAndWithdrawn(t *testing.T) {
	r := with(t, "barn", rattles+byEar)
	require.Empty(t, said(r))
	require.Len(t, r.Book.OnceOvers, 1)
	o := r.Book.OnceOver("by_ear")
	assert.Equal(t, "barn", o.Layer)
	assert.Equal(t, "rattle=no squeak=no engine_turns=", usuals(o))
	items := r.Book.Items()
	assert.Equal(t, "once_over", items[len(items)-1].Kind)

	r = with(t, "barn", rattles+byEar, "shed", "[[once_over]]\nid = 'by_ear'\nadjust = true\nquestions = ['rattle', 'oil_finds', 'engine_turns']\n")
	require.Empty(t, said(r))
	assert.Equal(t, "rattle= oil_finds= engine_turns=", usuals(r.Book.OnceOver("by_ear")))

	r = with(t, "barn", rattles+byEar, "shed", "[[withdraw]]\nid = 'by_ear'\nkind = 'once_over'\nbecause = 'So.'\n")
	require.Empty(t, said(r))
	assert.Nil(t, r.Book.OnceOver("by_ear"))
}

// TestAShopThatGuardsAThingTakesItsUsualAwayFromOthers: a once-over of another
// layer still asks it, and takes nothing for granted.
func TestAShopThatGuardsAThingTakesItsUsualAway(t *testing.T) {
	hold := "[[hold]]\nid = 'quiet'\nname = 'it is quiet'\nstops = ['run']\nuntil = 'not rattle'\nlifts = [{ rattle = false }]\nlifts_not = [{ rattle = true }]\nbecause = 'So.'\nsource = 'shop'\n"
	r := with(t, "barn", rattles+byEar, "shed", hold)
	require.Empty(t, said(r))
	assert.Equal(t, "rattle= squeak=no engine_turns=", usuals(r.Book.OnceOver("by_ear")))

	r = with(t, "barn", rattles+byEar+hold)
	assert.Contains(t, said(r), "no-usual")
}
