package engine_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// shell adds a danger that comes before the engine: until someone has looked
// at the structure, no money on what needs the engine out is firm.
const shell = small + `
[[question]]
id = "probed"
kind = "choice"
ask = "Probed, what is the structure like?"
name = "structure probed"
station = "underneath"
options = { sound = "sound", holed = "holed" }

[[operation]]
id = "weld"
name = "weld the sill"
part = "structure"
phase = "repair"
who = "shop"
hours = [5, 5, 5]
parts = [0, 0, 0]
because = "rotten"
source = "practice"

[[operation]]
id = "bolts"
name = "new bolts"
part = "engine"
phase = "refit"
who = "shop"
hours = [0.2, 0.2, 0.2]
parts = [5, 5, 5]
because = "they stretch"
source = "practice"

[[operation]]
id = "cover"
name = "renew the cover"
part = "engine"
phase = "repair"
who = "shop"
hours = [1, 1, 1]
parts = [20, 20, 20]
needs = ["out", "bolts"]
because = "it warps"
source = "practice"

[[standing]]
id = "cover_with_a_slipping_clutch"
operation = "cover"
says = "in"
when = 'slips'
because = "a slipping clutch warps it"
source = "practice"
fires = [{ slips = true }]
fires_not = [{ slips = false }]

[[suspect]]
id = "rotten_shell"
name = "the structure is rotten"
part = "structure"
cured_by = ["weld"]
base = [{ count = "1 of 10" }]
because = "it rusts from within"
source = "practice"
danger = { kind = "structure", good = 'probed == "sound"', before = ["out"] }

[[inspection]]
id = "probing"
name = "probe the structure"
where = "underneath"
minutes = 30
answers = ["probed"]
because = "from above every car looks whole"
source = "practice"

[[hold]]
id = "shell"
name = "the structure is probed"
stops = ["road"]
until = 'probed == "sound"'
because = "it may fold"
source = "practice"
`

func TestTheShellComesFirst(t *testing.T) {
	e := open(t, shell)
	kinds := func(body string) map[string]string {
		out := map[string]string{}
		a := e.Advise(read(t, e, body))
		var firm int64
		for _, l := range a.Total.Lines {
			out[l.Operation] = l.Kind + " " + l.Waits
			if l.Kind == "firm" || l.Kind == "look" {
				firm += l.Mean
			}
		}
		assert.Equal(t, firm, a.Total.Firm)
		return out
	}
	slips := "[answers]\nslips = true\n"
	unseen := kinds(slips)
	assert.Equal(t, "maybe rotten_shell", unseen["clutch"], "engine money is not firm while nobody has probed")
	assert.Equal(t, "maybe rotten_shell", unseen["out"])
	assert.Equal(t, "maybe rotten_shell", unseen["bolts"], "nor what comes only with it")
	sound := kinds(slips + `probed = "sound"`)
	assert.Equal(t, "firm ", sound["clutch"])
	assert.Equal(t, "firm ", sound["out"])
	assert.Equal(t, "firm ", kinds(slips + "[decisions]\naccepted = [\"clutch\"]")["clutch"], "the owner still wants it")
	assert.Equal(t, "firm ", kinds(slips + "[decisions]\naccepted = [\"clutch\"]")["out"], "and what it needs")
	holed := kinds(slips + `probed = "holed"`)
	assert.Equal(t, "firm ", holed["clutch"], "known is known: the owner decides on the whole sum")
	assert.Equal(t, "firm ", kinds(slips + "hose = \"cracked\"")["hoses"], "brakes wait for nothing")
}
