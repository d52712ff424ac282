package casefile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWithoutTakesOneAnswerOut(t *testing.T) {
	for name, c := range map[string]struct{ is, want string }{
		"its line":             {"case = 1\n[answers]\na = 1\nb = \"x\"\nc = 3\n", "case = 1\n[answers]\na = 1\nc = 3\n"},
		"a long form":          {"[answers]\nb = { is = 1, how = \"owner\" }  \r\nc = 3\r\n", "[answers]\nc = 3\r\n"},
		"the last line":        {"[answers]\na = 1\nb = 2", "[answers]\na = 1\n"},
		"a remark stays":       {"[answers]\n# asked twice\nb = 2 # by the gate\nc = 3\n", "[answers]\n# asked twice\n # by the gate\nc = 3\n"},
		"a dotted key":         {"answers.a = 1\nanswers.b = 2\n", "answers.a = 1\n"},
		"in brackets, first":   {"answers = { b = 2, c = 3 }\n", "answers = { c = 3 }\n"},
		"in brackets, last":    {"answers = { a = 1, b = 2 }\n", "answers = { a = 1 }\n"},
		"in brackets, alone":   {"answers = { b = 2 }\n", "answers = {  }\n"},
		"it is not there":      {"[answers]\na = 1\n", "[answers]\na = 1\n"},
		"there are no answers": {"case = 1\n", "case = 1\n"},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := Without([]byte(c.is), "b")
			require.NoError(t, err)
			assert.Equal(t, c.want, string(got))
		})
	}
	for name, is := range map[string]string{
		"a header of its own": "[answers.b]\nis = 1\n", "headers": "[[answers.b]]\nis = 1\n", "no TOML": "[answers\n",
	} {
		_, err := Without([]byte(is), "b")
		assert.Error(t, err, name)
	}
}
