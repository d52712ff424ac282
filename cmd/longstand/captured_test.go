package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// mechanic is the one who answers a captured intake: reads the question on the
// screen, types what the car's case says of it, and "c" (can't tell) where it
// says nothing. What is typed shows on the screen too.
type mechanic struct {
	screen    bytes.Buffer
	read      int // of the screen
	questions []advisor.Question
	answers   map[string]string
	met       map[int]bool
	knows     int
}

func (m *mechanic) Read(p []byte) (int, error) {
	shown := strings.Join(strings.Fields(m.screen.String()[m.read:]), " ")
	last := -1
	for i := range m.questions {
		ask := strings.Join(strings.Fields(m.questions[i].Ask), " ")
		if strings.Contains(shown, ask) && (last < 0 || len(ask) > len(m.questions[last].Ask)) {
			last = i
		}
	}
	if last < 0 || m.met[last] {
		return 0, io.EOF // no question, or an answer that was refused
	}
	m.met[last] = true
	typed, ok := m.answers[m.questions[last].ID]
	if ok {
		m.knows++
	} else {
		typed = "c"
	}
	m.screen.WriteString(typed + "\n")
	m.read = m.screen.Len()
	return copy(p, typed+"\n"), nil
}

// typed is an answer as a person would type it.
func typed(a *advisor.Answer, q *advisor.Question) string {
	text := strings.NewReplacer("[", "", "]", "", `"`, "", ",", "").Replace(a.Written)
	switch text {
	case "":
		text = "none"
	case "true":
		text = "yes"
	case "false":
		text = "no"
	}
	if a.How != q.How && a.How != advisor.Nohow {
		text += " @" + a.How.String()
	}
	if a.Note != "" {
		text += " # " + a.Note
	}
	return text
}

// TestCapturedIntake holds the intake of the demonstration car through a pipe
// and compares all that is on the screen, 80 columns wide, with what was
// captured.
func TestCapturedIntake(t *testing.T) {
	e, err := (&door{}).engine()
	require.NoError(t, err)
	data, err := os.ReadFile("../../testdata/cases/demo.toml")
	require.NoError(t, err)
	demo, faults := casefile.Read("demo.toml", data, e.Book())
	require.False(t, faults.HasErrors())
	m := &mechanic{questions: e.Book().Questions, answers: map[string]string{}, met: map[int]bool{}}
	for i := range demo.Answers {
		a := &demo.Answers[i]
		for j := range m.questions {
			if m.questions[j].ID == a.Question {
				m.answers[a.Question] = typed(a, &m.questions[j])
			}
		}
	}
	golden, err := filepath.Abs("../../testdata/golden/intake_demo.txt")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	code := run([]string{"intake", "demo.toml", "--date", demo.Date}, m, &m.screen, &m.screen)
	require.Equal(t, exitDone, code, "%s", m.screen.String()[max(0, m.screen.Len()-2000):])
	for i, line := range strings.Split(m.screen.String(), "\n") {
		if !strings.HasPrefix(line, "> ") {
			assert.LessOrEqual(t, len([]rune(line)), 80, "line %d is wider than a terminal: %s", i+1, line)
		}
	}
	t.Logf("%d of %d questions asked, %d of them answered by the case", len(m.met), walkRound(m.questions), m.knows)
	if *update {
		require.NoError(t, os.WriteFile(golden, m.screen.Bytes(), 0o644))
		return
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err, "run `go test ./cmd/longstand -run Captured -update`")
	assert.True(t, bytes.Equal(want, m.screen.Bytes()), "the intake differs from %s; look at it, then run with -update", golden)
}

func walkRound(questions []advisor.Question) (n int) {
	for i := range questions {
		if questions[i].Station != "inspection" {
			n++
		}
	}
	return n
}
