package casefile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// TestKnownLeavesWhatIsAnswered: a type fills only what the case leaves open,
// says how it is known, and a second time changes nothing.
func TestKnownLeavesWhatIsAnswered(t *testing.T) {
	van := &advisor.Type{ID: "van", Answers: []advisor.Answer{
		{Question: "layout", Written: `"front_rear"`, How: advisor.Paper},
		{Question: "climate", Written: `'not dry'`, How: advisor.Paper}}}
	data, kept, err := Known([]byte("case = 1\ndate = 2025-10-14\n\n[answers]\nlayout = \"four\" # looked\n"), van)
	require.NoError(t, err)
	assert.Equal(t, []string{"layout"}, kept)
	assert.Equal(t, "case = 1\ndate = 2025-10-14\n\n[answers]\nlayout = \"four\" # looked\n"+
		"climate = { is = 'not dry', how = \"paper\", note = \"known type van\" }\n", string(data))
	again, kept, err := Known(data, van)
	require.NoError(t, err)
	assert.Len(t, kept, 2)
	assert.Equal(t, string(data), string(again))
	_, _, err = Known([]byte("[answers\n"), van)
	assert.Error(t, err)
}
