package report_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/report"
)

// TestInShort reads the first lines of the advice: every door is open or shut,
// by name, and the owner's sum is spoken of only where the likely sum passes it.
func TestInShort(t *testing.T) {
	e := shelf()
	short := func(more string) string {
		_, page, _ := strings.Cut(report.Text(advised(t, e, cases+"/demo.toml", more)), "In short\n")
		page, _, ok := strings.Cut(page, "Do not, until")
		require.True(t, ok)
		return strings.Join(strings.Fields(page), " ")
	}
	page := short("")
	doors := 0
	for i := range e.Book().Operations {
		if o := &e.Book().Operations[i]; o.Door {
			doors++
			assert.Equal(t, 1, strings.Count(page, o.Name), o.ID)
		}
	}
	assert.Positive(t, doors)
	assert.NotContains(t, page, "hoist", "the way up is no door of its own")
	assert.NotContains(t, page, "rather stop")
	assert.Contains(t, short("stop_sum = 3000\n"), "With tax that is over the £3,000 at which the owner would rather stop")
	assert.NotContains(t, short("stop_sum = 300000\n"), "rather stop")
}
