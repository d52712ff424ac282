package engine_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
)

// proved adds a test that lifts a hold, and two jobs that open what was tested.
const proved = small + `
[[question]]
id = "pedal_holds"
kind = "yesno"
ask = "Does the pedal hold for a minute?"
name = "pedal holds"
station = "inspection"
again_after = ["hoses", "skim"]

[[inspection]]
id = "pedal_test"
name = "press the pedal for a minute"
where = "cabin"
minutes = 5
answers = ["pedal_holds"]
because = "it tells a leak"
source = "practice"

[[hold]]
id = "pedal"
name = "the pedal holds for a minute"
stops = ["road"]
until = 'pedal_holds'
because = "a brake that was opened is not a brake that was proved"
source = "practice"
`

func TestAHoldComesBackWhenItsPlaceIsOpenedAgain(t *testing.T) {
	e := open(t, proved)
	stands := func(body string) bool {
		for _, h := range e.Advise(read(t, e, body)).Holds {
			if h.ID == "pedal" {
				assert.Contains(t, h.LiftedBy, advisor.Settle{Kind: "inspection", ID: "pedal_test"}, "and says how it is lifted again")
				return true
			}
		}
		return false
	}
	const held = "[answers]\npedal_holds = { is = true, how = \"measured\", on = "
	for _, c := range []struct {
		name, body string
		stands     bool
	}{
		{"not tested", "", true},
		{"tested", held + "2025-10-20 }\n", false},
		{"work that does not open it", held + "2025-10-20 }\n[decisions]\ndone = [{ operation = \"oil\", on = 2025-10-21 }]", false},
		{"opened after", held + "2025-10-20 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-21 }]", true},
		{"opened before", held + "2025-10-20 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-19 }]", false},
		{"the same day, nobody says which first", held + "2025-10-20 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-20 }]", true},
		{"the same day, the test after", held + "2025-10-20T16:00:00 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-20T12:30:00 }]", false},
		{"the very second", held + "2025-10-20T12:30:00 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-20T12:30:00 }]", true},
		{"the same day, the test before", held + "2025-10-20T11:00:00 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-20T12:30:00 }]", true},
		{"nobody says when it was opened", held + "2025-10-20 }\n[decisions]\ndone = [\"hoses\"]", true},
		{"the answer is as old as the case", "[answers]\npedal_holds = { is = true, how = \"measured\" }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2031-01-01 }]", true},
		{"opened twice", held + "2025-10-20 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-19 }, { operation = \"hoses\", on = 2025-10-21 }]", true},
		{"opened by the other job", held + "2025-10-20 }\n[decisions]\ndone = [{ operation = \"hoses\", on = 2025-10-19 }, { operation = \"skim\", on = 2025-10-22 }]", true},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.stands, stands(c.body)) })
	}
	a := e.Advise(read(t, e, held+"2025-10-20 }\n[decisions]\ndone = [\"hoses\"]"))
	assert.Contains(t, a.Notes[0], "pedal holds", "and it is said which answer no longer counts")
}

// TestWhatWasOvertakenStaysSoWhileAnswersAreTried: to take back an answer that
// was tried is not to bring back one that work has undone.
func TestWhatWasOvertakenStaysSoWhileAnswersAreTried(t *testing.T) {
	e := open(t, strings.Replace(small, "id = \"hose\"\n", "id = \"hose\"\nagain_after = [\"oil\"]\n", 1))
	c := read(t, e, "[answers]\nhose = { is = \"cracked\", how = \"seen\", on = 2024-12-01 }\n"+
		"[decisions]\ndone = [{ operation = \"oil\", on = 2024-12-31 }]")
	for _, op := range e.Book().Operations {
		checkTurns(t, e, c, op.ID)
	}
}
