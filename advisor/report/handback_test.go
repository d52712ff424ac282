package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
)

func TestHandbackTellsWhatGoesWithTheCar(t *testing.T) {
	a, _ := bench()
	a.Case.Done = []advisor.Decision{{Operation: "lift", Date: "2025-10-15T09:00:00", By: "JB", Note: "four stands"}}
	a.Case.Declined = []advisor.Decision{{Operation: "hoses", By: "owner"}}
	a.Operations[1].Call, a.Operations[1].Forced, a.Operations[1].Reason = advisor.Leave, "declined", "The owner declined it: its hold stays, and the car leaves on a trailer."
	a.Operations[2].Call, a.Operations[2].Forced = advisor.Leave, "done"
	a.Operations[0].Access, a.Operations[0].Until = false, "left shut until it boils"
	page := Handback(a)
	at := -1
	for _, want := range []string{"Handed back: A saloon", "Not yet: take it on the road. It leaves on a trailer.", "UNTIL the hoses are renewed",
		"put it on the lift, 2025-10-15, JB.", "Four stands.", "renew the hoses, owner.", "its hold stays", "Advised, and not done", "oil and filter",
		"to be looked at first", "renew the linings", "Left, and what to watch", "lift the cylinder head: Left shut until it boils.", Closing[:20]} {
		i := strings.Index(strings.Join(strings.Fields(page), " "), want)
		assert.Greater(t, i, at, want)
		at = i
	}
	for _, line := range strings.Split(page, "\n") {
		assert.LessOrEqual(t, runes(line), width, line)
	}
	assert.Equal(t, strings.Count(page, "  - "), strings.Count(HandbackMarkdown(a), "\n- "), "the same items in Markdown")
	a.Holds[0].Stops = []string{"charged"}
	assert.Contains(t, Handback(a), "Not yet: charge the battery.\n", "a car that may roll needs no trailer")
	a.Holds = nil
	assert.Contains(t, Handback(a), "None: nothing in the rules holds it back.")
}
