package book

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSilenceOfALayer: what a house layer changes it may silence, wherever the
// item itself stands; without a reason nothing is silenced.
func TestSilenceOfALayer(t *testing.T) {
	turned := "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '1 of 10'\nwithout = '8 of 10'\n"
	loud := with(t, "barn", turned)
	assert.Equal(t, []string{"turned-round"}, codesOf(loud.Diagnostics))
	assert.Zero(t, loud.Silenced())

	quiet := with(t, "barn", turned+"silence = { turned-round = 'Ours are even when they leak.' }\n")
	require.Empty(t, said(quiet))
	assert.Equal(t, 1, quiet.Silenced())
	silences := quiet.Silences()
	require.Len(t, silences, 1)
	assert.Equal(t, []string{"sign", "uneven", "turned-round", "Ours are even when they leak."},
		[]string{silences[0].Kind, silences[0].ID, silences[0].Code, silences[0].Because})

	elsewhere := with(t, "barn", turned, "shed", "[[word]]\nid = 'sump'\ntext = 'sump'\nmeans = 'the pan'\nsilence = { turned-round = 'So.' }\n")
	assert.Equal(t, []string{"turned-round", "idle-silence"}, codesOf(elsewhere.Diagnostics), "only where it stands")
}
