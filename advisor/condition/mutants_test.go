package condition

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// tally of mutants: killed, survived, the same condition.
func judged(m *Measure) (killed, survived, same int, survivors []string) {
	for _, mutant := range m.Mutants() {
		switch {
		case mutant.Killed:
			killed++
		case mutant.Same:
			same++
		default:
			survived++
			survivors = append(survivors, mutant.Change)
		}
	}
	return killed, survived, same, survivors
}

// Specimens at the threshold and on both sides of it kill every edit; one that
// fires and one that does not leave many alive.
func TestMutants(t *testing.T) {
	source := "damp and laid_up >= 10"
	weak := measured(t, source, answers{"damp": yes, "laid_up": num(20)}, answers{"damp": no, "laid_up": num(2)})
	sharp := measured(t, source, answers{"damp": yes, "laid_up": num(10)}, answers{"damp": yes, "laid_up": num(9)},
		answers{"damp": yes, "laid_up": num(11)}, answers{"damp": no, "laid_up": num(11)})
	killed, survived, same, _ := judged(weak)
	assert.Equal(t, [3]int{6, 11, 0}, [3]int{killed, survived, same})
	killed, survived, same, survivors := judged(sharp)
	assert.Equal(t, [3]int{17, 0, 0}, [3]int{killed, survived, same}, survivors)
}

// A survivor comes with the case that would kill it.
func TestSurvivorShowsItsCase(t *testing.T) {
	m := measured(t, "laid_up > 10", answers{"laid_up": num(20)}, answers{"laid_up": num(2)})
	found := false
	for _, mutant := range m.Mutants() {
		if mutant.Change == "laid_up > 10: otherwise at the threshold" {
			found = true
			assert.Equal(t, []string{"laid_up = 10"}, mutant.Example)
		}
	}
	assert.True(t, found)
}

// An edit that changes nothing in any case does not count against anybody.
func TestSameConditionDoesNotCount(t *testing.T) {
	m := measured(t, "laid_up <= 60 / 2 and laid_up < 31", answers{"laid_up": num(30)}, answers{"laid_up": num(31)}, answers{"laid_up": num(29)})
	_, survived, same, survivors := judged(m)
	assert.Positive(t, same)
	assert.Zero(t, survived, survivors)
}

// Options, lists and derived values: the inside of a derived value is not
// edited, the value itself is.
func TestMutantsOfChoices(t *testing.T) {
	m := measured(t, "climate in [\"damp\", \"salt\"] or not wet",
		answers{"climate": advisor.OneOf(1)}, answers{"climate": advisor.OneOf(2)}, answers{"climate": advisor.OneOf(4)})
	mutants := m.Mutants()
	var changes []string
	for _, mutant := range mutants {
		changes = append(changes, mutant.Change)
	}
	assert.Equal(t, []string{
		`climate in ["damp", "salt"]: "dry" changed`, `climate in ["damp", "salt"]: "damp" changed`, `climate in ["damp", "salt"]: "salt" changed`,
		`climate in ["damp", "salt"]: the other way round`, `climate in ["damp", "salt"]: always true`, `climate in ["damp", "salt"]: always false`,
		`climate in ["damp", "salt"]: not wet in its place`,
		`not wet: the other way round`, `not wet: always true`, `not wet: always false`, `not wet: climate in ["damp", "salt"] in its place`,
		`the group at climate in ["damp", "salt"]: and exchanged with or`, `the group at climate in ["damp", "salt"]: the other way round`,
	}, changes)
}

// The condition's own tables are as before after all edits were tried.
func TestMutantsLeaveNoTrace(t *testing.T) {
	m := measured(t, "damp and (laid_up >= 10 or turns)", answers{"damp": yes, "laid_up": num(10), "turns": no}, answers{"damp": yes, "laid_up": num(9), "turns": no})
	before := m.Pins()
	first := m.Mutants()
	require.Equal(t, before, m.Pins())
	require.Equal(t, first, m.Mutants())
}
