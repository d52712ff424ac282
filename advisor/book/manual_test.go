package book

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/condition"
)

const emptyManual = "# Manual\n\n<!-- generated: operators -->\nstale words\n<!-- end of operators -->\n\n<!-- generated: functions -->\n<!-- end of functions -->\n" +
	"by hand\n<!-- generated: keys -->\n<!-- end of keys -->\n<!-- generated: codes -->\n<!-- end of codes -->\nlast\n"

// The generated parts hold every key of every table, every operator, every
// function and every code; what is written by hand stays.
func TestManualHoldsEverything(t *testing.T) {
	page, err := Manual(emptyManual)
	require.NoError(t, err)
	assert.NotContains(t, page, "stale words")
	assert.Contains(t, page, "\nby hand\n")
	assert.True(t, strings.HasSuffix(page, "\nlast\n"))
	for _, u := range slices.Concat(condition.Operators(), condition.Functions()) {
		assert.Contains(t, page, "\n- `"+u.Write+"`: ")
	}
	for _, c := range Codes() {
		assert.Contains(t, page, "\n- `"+c.ID+"`: "+c.Title)
	}
	_, rest, _ := strings.Cut(page, "<!-- generated: keys -->")
	for _, table := range Tables() {
		_, rest, _ := strings.Cut(rest, table.Name+"]")
		own, _, _ := strings.Cut(rest, "\n### ")
		for _, k := range table.Keys {
			if !strings.HasPrefix(k.Doc, "house rules: ") {
				assert.Contains(t, own, "`"+k.Name+"`", "%s %s", table.Name, k.Name)
			}
			if k.Keys != nil && k.Type != asMixed {
				for _, in := range k.Keys() {
					assert.Contains(t, own, "`"+in.Name+"`", "%s %s %s", table.Name, k.Name, in.Name)
				}
			}
		}
	}
	again, err := Manual(page)
	require.NoError(t, err)
	assert.Equal(t, page, again)
	assert.NotContains(t, page, ": . ", "a form without words")
}

func TestManualWantsItsMarks(t *testing.T) {
	for _, mark := range []string{"<!-- generated: keys -->\n", "<!-- end of codes -->"} {
		_, err := Manual(strings.Replace(emptyManual, mark, "", 1))
		assert.ErrorContains(t, err, strings.TrimSpace(mark))
	}
}

func TestHouseKeysAreTold(t *testing.T) {
	var told []string
	for _, k := range houseDocs {
		told = append(told, k.Name)
	}
	assert.Equal(t, slices.Sorted(maps.Keys(houseKeys)), told)
}
