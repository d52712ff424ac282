package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// more adds to the small book what the walk-round can settle and what it cannot.
const more = `
[[question]]
id = "dark"
kind = "yesno"
ask = "Is the oil dark?"
name = "dark oil"
station = "bonnet"

[[question]]
id = "firm"
kind = "yesno"
ask = "Is it firm?"
name = "firm"
station = "bonnet"

[[question]]
id = "towed"
kind = "yesno"
ask = "Was it towed?"
name = "towed"
station = "story"

[[standing]]
id = "dark_oil_out"
operation = "oil"
says = "in"
routine = true
when = 'dark'
because = "dark oil is old oil"
source = "practice"

[[hold]]
id = "clutch_hold"
name = "the clutch is renewed"
stops = ["driven"]
when = 'towed'
until = 'done(clutch) and turned'
because = "a car that was towed"
source = "practice"

[[hold]]
id = "firm_hold"
name = "it is firm"
stops = ["road"]
when = 'not towed'
until = 'firm or felt == "smooth"'
because = "firm is firm"
source = "practice"
`

// TestWhatCanStillMatter opens a question only while its answer can change a
// call, a hold, a standing rule or a danger.
func TestWhatCanStillMatter(t *testing.T) {
	e := open(t, small+more)
	for _, row := range []struct {
		name, answers string
		open, shut    []string
	}{
		{"nothing known", "", []string{"slips", "hose", "years", "dark", "towed", "firm"}, []string{"turned", "felt"}},
		{"the oil comes out for its years anyway, but a second rule may act as well", "years = 5", []string{"slips", "dark"}, nil},
		{"it has not stood", "years = 0", []string{"dark"}, nil},
		{"a hold that does not concern the car", "towed = { is = true, how = \"paper\" }", nil, []string{"firm"}},
		{"but hearsay does not take it away", "towed = true", []string{"firm"}, nil},
		{"only work can lift the other, whatever turned says", "towed = true", []string{"slips"}, []string{"turned"}},
		{"lifted already", "firm = true", []string{"towed"}, nil},
		{"neither of the two holds waits any more", "firm = true\ntowed = false", nil, []string{"turned"}},
		{"a danger seen sound", "hose = \"sound\"", nil, []string{"hose"}},
	} {
		var ids []string
		for _, o := range e.Open(read(t, e, "[answers]\n"+row.answers)) {
			ids = append(ids, o.ID)
		}
		assert.Subset(t, ids, row.open, row.name)
		for _, id := range row.shut {
			assert.NotContains(t, ids, id, row.name)
		}
	}
}

// TestOpenIsTheAdvicesOwn asks for the open questions alone.
func TestOpenIsTheAdvicesOwn(t *testing.T) {
	e := open(t, small+more)
	c := read(t, e, "[answers]\nyears = 5")
	assert.Equal(t, e.Advise(c).Open, e.Open(c))
}
