package casefile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// badCases are cases with faults, and what is said of them.
var badCases = []struct{ name, text, want string }{
	{"nothing", "", "x.toml: error: the case has no case [missing-key]\n  add: case = 1\nx.toml: error: the case has no date [missing-key]\n  add date, the day of the case, as 2025-10-14\n"},
	{"newer", "case = 3\ndate = 2025-10-14\n", "x.toml:1:8: error: the case is of format 3, and this program reads up to 2 [newer-format]\n  use the newer program with which it was written\n"},
	{"no version", "case = \"one\"\ndate = 2025-10-14\n", "x.toml:1:8: error: case is the format's version, from 1 to 2 [wrong-kind]\n"},
	{"no day", "case = 1\ndate = \"autumn\"\n[answers]\ntyre = \"2309\"\n", "x.toml:2:8: error: \"autumn\" is no date [wrong-kind]\n  a date is written 2025-10-14\n"},
	{"unknown key", head + "nmae = \"x\"\n", "x.toml:3:1: error: a case has no key \"nmae\" [unknown-key]\n  did you mean \"name\"?\n"},
	{"unknown care", head + "care = \"norml\"\n", "x.toml:3:8: error: \"norml\" is no care [unknown-word]\n  did you mean \"normal\"?\n"},
	{"unknown question", head + "[answers]\nclimat = \"dry\"\n", "x.toml:4:1: error: there is no question \"climat\" [unknown-question]\n  did you mean \"climate\"?\n"},
	{"unknown option", head + "[answers]\nclimate = \"dmap\"\n", "x.toml:4:12: error: climate has no option \"dmap\" [unknown-option]\n  did you mean \"damp\"?\n"},
	{"unknown option in a list", head + "[answers]\nclimate = \"not dry or dmap\"\n", "x.toml:4:23: error: climate has no option \"dmap\" [unknown-option]\n  did you mean \"damp\"?\n"},
	{"unknown find", head + "[answers]\nfinds = [\"mud\", \"oil_flim\"]\n", "x.toml:4:17: error: finds has no option \"oil_flim\" [unknown-option]\n  did you mean \"oil_film\"?\n"},
	{"nothing left", head + "[answers]\nclimate = \"not dry or damp or coastal\"\n", "x.toml:4:11: error: this leaves no option of climate [nothing-left]\n"},
	{"yes no", head + "[answers]\nturns = 1\n", "x.toml:4:9: error: turns takes true or false, and this is a whole number: 1 [wrong-kind]\n  \"hidden\" and \"can't tell\" are answers too\n"},
	{"out of range", head + "[answers]\nlow = -70\n", "x.toml:4:7: error: -70 is out of range for low [out-of-range]\n  from -60 to 30 C\n"},
	{"a range out of range", head + "[answers]\nlow = \"5 to 80\"\n", "x.toml:4:7: error: 80 is out of range for low [out-of-range]\n  from -60 to 30 C\n"},
	{"backwards", head + "[answers]\nlow = \"8 to 5\"\n", "x.toml:4:7: error: a range goes from the lesser to the greater: 8 to 5 [not-increasing]\n"},
	{"backwards long", head + "[answers]\nlow = { from = 8, to = 5 }\n", "x.toml:4:7: error: a range goes from the lesser to the greater: 8 to 5 [not-increasing]\n"},
	{"words for a number", head + "[answers]\nlow = \"about 5\"\n", "x.toml:4:7: error: low takes a number, and this is the text \"about 5\" [wrong-kind]\n  write 8 without quotes, or a range as \"5 to 8\"\n"},
	{"no number", head + "[answers]\nlow = nan\n", "x.toml:4:7: error: low takes a number in C, and this is a number: nan [wrong-kind]\n  \"hidden\" and \"can't tell\" are answers too\n"},
	{"one bad reading", head + "[answers]\ncompression = [140, 700, \"x\"]\n", "x.toml:4:21: error: 700 is out of range for compression [out-of-range]\n  from 0 to 600 psi\nx.toml:4:26: error: compression takes a number in psi, and this is the text \"x\" [wrong-kind]\n  \"hidden\" and \"can't tell\" are answers too\n"},
	{"no reading", head + "[answers]\ncompression = []\n", "x.toml:4:15: error: compression takes at least one figure [wrong-kind]\n"},
	{"a code without quotes", head + "[answers]\ntyre = 2309\n", "x.toml:4:8: error: tyre takes a code in quotes, and this is a whole number: 2309 [wrong-kind]\n  put quotes round it: \"2309\"\n"},
	{"no such week", head + "[answers]\ntyre = \"7709\"\n", "x.toml:4:8: error: tyre code \"7709\" names week 77; weeks run from 01 to 53 [bad-code]\n  four digits are week and year (2309: week 23 of 2009), three are week and year before 2000\n"},
	{"not yet made", head + "[answers]\ntyre = \"0130\"\n", "x.toml:4:8: error: tyre code \"0130\" reads as a date still to come [bad-code]\n  four digits are week and year (2309: week 23 of 2009), three are week and year before 2000\n"},
	{"two values", head + "[answers]\nlow = { is = 5, from = 3 }\n", "x.toml:4:7: error: an answer says its value once, this one 2 times [one-value]\n  give one of is, not, any_of, or from with to\n"},
	{"unknown long key", head + "[answers]\nlow = { is = 5, hwo = \"seen\", how = \"herd\" }\n", "x.toml:4:17: error: an answer has no key \"hwo\" [unknown-key]\n  did you mean \"how\"?\nx.toml:4:37: error: \"herd\" is no way of knowing [unknown-word]\n  allowed are \"seen\", \"measured\", \"paper\", \"owner\" and \"secondhand\"\n"},
	{"not for numbers", head + "[answers]\nlow = { not = [\"5\"] }\nturns = { from = 1 }\n", "x.toml:4:15: error: only a question with options is answered by what it is not, and low is a number [wrong-kind]\nx.toml:5:9: error: from and to are for numbers, and turns is a yesno [wrong-kind]\n"},
	{"both ways", head + "[decisions]\naccepted = [\"head_off\"]\ndeclined = [\"head_off\", \"radiatr\", 3]\ndone = [\"battery\", \"battery\"]\n", `x.toml:5:13: error: head_off is declined, and accepted as well [both-ways]
  leave the decision that holds
  x.toml:4:13 accepted here
x.toml:5:25: error: there is no operation "radiatr" [unknown-operation]
  did you mean "radiator"?
x.toml:5:36: error: an operation is named by its id in quotes, and this is a whole number [wrong-kind]
x.toml:6:20: error: battery is done twice [duplicate-id]
  x.toml:6:9 the first one
`},
	{"overruled", head + "[[overruled]]\noperation = \"radiator\"\ncall = \"do it\"\n", `x.toml:3:1: error: an overruling says by [missing-key]
  every page shows by whom a call was set, and why
x.toml:3:1: error: an overruling says why [missing-key]
  every page shows by whom a call was set, and why
x.toml:5:8: error: "do it" is no call [unknown-word]
  allowed are "do", "do while open", "look first", "leave" and "not fitted"
`},
	{"no chance", head + "[forecast]\ngasket_leak = 3\n", "x.toml:4:15: error: a chance is a number from 0 to 1, and this is 3 [out-of-range]\n"},
	{"tables and lists", head + "answers = 1\ndecisions = []\noverruled = {}\nbook = \"x\"\n", "x.toml:3:11: error: answers is a table, and this is a whole number [wrong-kind]\nx.toml:4:13: error: decisions is a table, and this is a list [wrong-kind]\nx.toml:5:13: error: overruled is a list of tables, and this is a table [wrong-kind]\n  start each with [[overruled]]\nx.toml:6:8: error: book is a table, and this is a text [wrong-kind]\n"},
}

func TestFaults(t *testing.T) {
	for _, tt := range badCases {
		t.Run(tt.name, func(t *testing.T) {
			_, faults := Read("x.toml", []byte(tt.text), vocabulary())
			assert.Equal(t, tt.want, faultLines(faults))
		})
	}
}

func TestTooLarge(t *testing.T) {
	_, faults := Read("x.toml", []byte(strings.Repeat("#", MaxBytes+1)), vocabulary())
	assert.Equal(t, "x.toml: error: a case has at most 256 KB [file-too-large]\n  this is something else than a case\n", faultLines(faults))
}
