package report

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
)

// bench is a small job: a brake job that needs the car on the lift, a look that
// the lift opens, a look that waits for fresh oil, a head that stays shut.
func bench() (*advisor.Advice, *advisor.Book) {
	dust := []advisor.CautionAdvice{{ID: "dust", Hazard: "asbestos", Text: "no airline", Defers: "local rules"}}
	b := &advisor.Book{Fingerprint: "ab12cd34",
		Operations: []advisor.Operation{{ID: "head_off"}, {ID: "hoses"}, {ID: "lift"}, {ID: "linings"}, {ID: "oil"}},
		Questions: []advisor.Question{{ID: "feel", Name: "bearing", Kind: advisor.Choice, Options: []advisor.Option{{ID: "smooth"}, {ID: "rough"}}},
			{ID: "pressure", Name: "oil pressure", Kind: advisor.NumberKind, Unit: "bar"}}}
	a := &advisor.Advice{Case: &advisor.Case{ID: "job", Name: "A saloon", Date: "2025-10-14"}, Settings: &advisor.Settings{},
		Holds: []advisor.HoldAdvice{{ID: "h", Name: "the hoses are renewed", Stops: []string{"road"}, When: advisor.True}},
		Operations: []advisor.OperationAdvice{
			{ID: "head_off", Name: "lift the cylinder head", Phase: "strip", Access: true, Door: true, Call: advisor.Leave},
			{ID: "hoses", Name: "renew the hoses", Phase: "repair", Part: "brakes", Call: advisor.Do, Needs: []string{"lift"}, MinutesUsual: 90, Cautions: dust},
			{ID: "lift", Name: "put it on the lift", Phase: "strip", Part: "access", Call: advisor.Do, MinutesUsual: 15},
			{ID: "linings", Name: "renew the linings", Phase: "repair", Part: "brakes", Call: advisor.LookFirst, Cautions: dust},
			{ID: "oil", Name: "oil and filter", Phase: "wake", Call: advisor.Do, MinutesUsual: 30, Variant: "two drains", VariantOpen: true},
		},
		Inspections: []advisor.InspectionAdvice{
			{ID: "spin", Name: "spin the wheels", Where: "underneath", Minutes: 10, Advised: true, Access: []string{"lift"}, WhenOpen: true, Answers: []string{"feel"}, Cautions: dust},
			{ID: "gauge", Name: "oil pressure on the starter", Where: "bonnet", Minutes: 15, Advised: true, Before: []string{"oil"}, Answers: []string{"pressure"}},
			{ID: "both", Name: "all looks of one lift", Where: "underneath", Advised: true, Bundle: []string{"spin", "gauge"}, Answers: []string{"feel", "pressure"}},
		}}
	return a, b
}

func TestSheetIsInWorkingOrder(t *testing.T) {
	a, b := bench()
	page := Sheet(a, b)
	at := -1
	for _, want := range []string{"DO NOT take it on the road UNTIL the hoses", "[  3] put it on the lift (15 min)", "Look: Spin the wheels", "[101] bearing: smooth, rough",
		"[  2] renew the hoses (1 h 30 min)", "[  5] oil and filter", "Look: Oil pressure on the starter", "[102] oil pressure: a number in bar",
		"Decided after looking", "[  4] renew the linings", "Not to be done without asking: lift the cylinder head", Closing[:20]} {
		i := strings.Index(page, want)
		assert.Greater(t, i, at, want)
		at = i
	}
	assert.Contains(t, page, "--sheet ab12")
	assert.Equal(t, 1, strings.Count(page, "[101]"), "a bundle's looks are on the sheet once")
	assert.Equal(t, 1, strings.Count(page, "No airline."), "a caution stands whole at its first step")
	assert.Contains(t, page, "As above: asbestos", "and by its hazard at the next")
	assert.Contains(t, strings.Join(strings.Fields(page), " "), "the dearest way still possible: two drains")
	for _, line := range strings.Split(page, "\n") {
		assert.LessOrEqual(t, runes(line), width, line)
	}
}

// TestBoxesNameEverything: every number on a sheet leads back to its id.
func TestBoxesNameEverything(t *testing.T) {
	a, b := bench()
	for _, m := range regexp.MustCompile(`(?m)^\[ *([0-9]+)\]`).FindAllStringSubmatch(Sheet(a, b), -1) {
		n := 0
		for _, d := range m[1] {
			n = n*10 + int(d-'0')
		}
		id := b.Boxed(n)
		assert.NotEmpty(t, id)
		assert.Equal(t, n, b.Box(id))
	}
	assert.Empty(t, b.Boxed(0))
	assert.Empty(t, b.Boxed(6))
	assert.Empty(t, b.Boxed(100))
	assert.Empty(t, b.Boxed(103))
	assert.Zero(t, b.Box("nothing"))
}
