package terminal

import (
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/interview"
)

func prompt(id string) *interview.Prompt {
	return &interview.Prompt{Question: &advisor.Question{ID: id, Ask: id + "?", Kind: advisor.YesNoKind, Station: "story"}}
}

func TestLinesSharesOneReader(t *testing.T) {
	for name, in := range map[string]io.Reader{
		"at once":        strings.NewReader("one\r\ntwo\n\nfour\nhalf"),
		"byte by byte":   iotest.OneByteReader(strings.NewReader("one\r\ntwo\n\nfour\nhalf")),
		"data with end":  iotest.DataErrReader(strings.NewReader("one\r\ntwo\n\nfour\nhalf")),
		"half at a time": iotest.HalfReader(strings.NewReader("one\r\ntwo\n\nfour\nhalf")),
	} {
		t.Run(name, func(t *testing.T) {
			var out strings.Builder
			l := NewLines(in, &out)
			for _, want := range []string{"one", "two", "", "four"} {
				got, err := l.Ask(prompt("a"))
				require.NoError(t, err)
				assert.Equal(t, want, got)
			}
			_, err := l.Ask(prompt("a"))
			assert.ErrorIs(t, err, interview.ErrEnded, "half a line is no answer")
			l.Say("so")
			assert.Equal(t, 5, strings.Count(out.String(), "a?"))
			assert.True(t, strings.HasSuffix(out.String(), "so\n"))
		})
	}
}

func TestLinesBoundsALine(t *testing.T) {
	l := NewLines(strings.NewReader(strings.Repeat("x", longest-100)+"\n"+strings.Repeat("x", 2*longest)), io.Discard)
	long, err := l.Ask(prompt("a"))
	require.NoError(t, err)
	assert.Len(t, long, longest-100)
	_, err = l.Ask(prompt("a"))
	assert.ErrorContains(t, err, "no answer")
	l = NewLines(iotest.ErrReader(io.ErrClosedPipe), io.Discard)
	_, err = l.Ask(prompt("a"))
	assert.ErrorIs(t, err, io.ErrClosedPipe)
}

func TestScript(t *testing.T) {
	s, err := ReadScript("answers.txt", "# at the car\n\na = yes # a note\nb=5 to 8 \n", false)
	require.NoError(t, err)
	assert.Equal(t, []string{"a", "b"}, s.IDs())
	got, err := s.Ask(prompt("a"))
	require.NoError(t, err)
	assert.Equal(t, "yes # a note", got)
	s.Say("it is neither")
	_, err = s.Ask(prompt("a"))
	assert.EqualError(t, err, "answers.txt:3: a: it is neither")
	_, err = s.Ask(prompt("c"))
	assert.ErrorContains(t, err, "answers.txt has no answer to c")
	nothing := func(_, _ string) bool { return false }
	assert.Equal(t, []string{"answers.txt:4: b was not asked"}, s.Unused(nothing))
	assert.Empty(t, s.Unused(func(id, typed string) bool { return id == "b" && typed == "5 to 8" }))

	partial, err := ReadScript("answers.txt", "a = yes", true)
	require.NoError(t, err)
	got, err = partial.Ask(prompt("c"))
	require.NoError(t, err)
	assert.Equal(t, "skip", got)
}

// TestScriptAtAOnceOver: a list that does not name it goes through it one by
// one, a partial one too; one that names it says what a person would.
func TestScriptAtAOnceOver(t *testing.T) {
	lamp := prompt("lamp")
	lamp.Once = &interview.Once{}
	for _, partial := range []bool{false, true} {
		s, err := ReadScript("answers.txt", "a = yes", partial)
		require.NoError(t, err)
		got, err := s.Ask(lamp)
		require.NoError(t, err)
		assert.Equal(t, interview.Each, got)
	}
	s, err := ReadScript("answers.txt", "lamp = only 2\nb = yes", false)
	require.NoError(t, err)
	got, err := s.Ask(lamp)
	require.NoError(t, err)
	assert.Equal(t, "only 2", got)
	assert.Equal(t, []string{"answers.txt:2: b was not asked"}, s.Unused(func(string, string) bool { return false }))
	s.Say("no")
	_, err = s.Ask(lamp)
	assert.EqualError(t, err, "answers.txt:1: lamp: no", "asked again, a list says the same again")
}

func TestScriptFaults(t *testing.T) {
	for text, says := range map[string]string{
		"a yes":          "answers.txt:1: a line is",
		"= yes":          "answers.txt:1: a line is",
		"a = 1\na = 2\n": "answers.txt:2: a is answered already on line 1",
	} {
		_, err := ReadScript("answers.txt", text, false)
		assert.ErrorContains(t, err, says)
	}
}

func TestTabCompletesWhatIsUnique(t *testing.T) {
	p := prompt("a")
	p.Question.Options = []advisor.Option{{ID: "oil_film"}, {ID: "overheated"}, {ID: "mud"}}
	s := &Screen{prompt: p}
	for _, c := range []struct {
		line, want string
		ok         bool
	}{
		{"ov", "overheated", true},
		{"o", "", false},
		{"not m", "not mud", true},
		{"mud, oi", "mud, oil_film", true},
		{"5 @me", "5 @measured", true},
		{"und", "", false},
		{"", "", false},
	} {
		got, pos, ok := s.complete(c.line, len(c.line), '\t')
		assert.Equal(t, c.ok, ok, c.line)
		assert.Equal(t, c.want, got)
		assert.Equal(t, len(got), pos)
	}
	p.Once = &interview.Once{}
	for line, want := range map[string]string{"ea": "each", "onl": "only ", "only 2, mu": "only 2, mud"} {
		got, _, ok := s.complete(line, len(line), '\t')
		assert.True(t, ok, line)
		assert.Equal(t, want, got)
	}
	_, _, ok := s.complete("ov", 2, 'x')
	assert.False(t, ok)
}
