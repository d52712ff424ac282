package casefile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// TestLettersAndPhotographsWronglyWritten checks that each fault is told at its place.
func TestLettersAndPhotographsWronglyWritten(t *testing.T) {
	for text, want := range map[string]string{
		"letter = 3":   "x.toml:3:10: error: letter is a list of tables, and this is",
		"letter = [3]": "x.toml:3:11: error: letter is a list of tables, and this is",
		"[[letter]]\nnumber = 0\ndate = 2025-10-14":                   "x.toml:4:10: error: number is a whole number of 1 or more",
		"[[letter]]\nnumber = 1":                                      "error: a letter says its date",
		"[[letter]]\nnumber = 1\ndate = \"soon\"":                     "x.toml:5:8: error: \"soon\" is no date",
		"[[letter]]\nnumber = 1\ndate = 2025-10-14\ndo = [3]":         "x.toml:6:6: error: do is a list of ids in quotes",
		"[[letter]]\nnumber = 1\ndate = 2025-10-14\nsum = 3":          "x.toml:6:1: error: a letter has no key \"sum\"",
		"[answers]\nturns = { is = true, photo = 3 }":                 "x.toml:4:30: error: a photograph is the name of a file in quotes",
		"[answers]\nturns = { is = true, photo = [\"\"] }":            "x.toml:4:31: error: a photograph is the name of a file in quotes",
		"[answers]\nturns = { is = true, photo = \"/a.jpg\" }":        "x.toml:4:30: error: the photograph \"/a.jpg\" lies outside the folder of the case",
		"[answers]\nturns = { is = true, photo = \"a/../../b.jpg\" }": "lies outside the folder of the case",
	} {
		_, faults := Read("x.toml", []byte(head+text+"\n"), vocabulary())
		assert.Contains(t, faultLines(faults), want, text)
	}
}

// TestRememberKeepsWhatIsThere adds two letters to a case with comments and
// other line ends, and reads both back.
func TestRememberKeepsWhatIsThere(t *testing.T) {
	for _, data := range []string{head + "# a remark\n[answers]\nturns = true # felt\n", "case = 1\r\ndate = 2025-10-14\r\n# end", head} {
		first := advisor.Letter{Number: 1, Date: "2025-10-14", Agree: 4651, Likely: 8978, Do: []string{"head_off", "battery"}, Found: []string{"turns", "turns"}}
		second := advisor.Letter{Number: 2, Date: "2025-11-01"}
		out, err := Remember([]byte(data), &first)
		require.NoError(t, err)
		assert.Equal(t, data, string(out[:len(data)]), "what was there stays")
		out, err = Remember(out, &second)
		require.NoError(t, err)
		c, faults := Read("x.toml", out, vocabulary())
		require.Empty(t, faults, string(out))
		require.Len(t, c.Letters, 2)
		for i := range c.Letters {
			c.Letters[i].At = advisor.Place{}
		}
		assert.Equal(t, first, c.Letters[0])
		assert.Equal(t, second, c.Letters[1])
	}
	_, err := Remember([]byte(head+"letter = []\n"), &advisor.Letter{Number: 1, Date: "2025-10-14"})
	assert.ErrorContains(t, err, "by hand")
}
