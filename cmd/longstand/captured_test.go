package main

import (
	"bytes"
	"fmt"
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
	book      *advisor.Book
	questions []advisor.Question
	answers   map[string]string
	met       map[string]bool
	knows     int
	oneByOne  bool // has each question of a once-over asked
}

func (m *mechanic) Read(p []byte) (int, error) {
	shown := strings.Join(strings.Fields(m.screen.String()[m.read:]), " ")
	id, longest := "", 0
	look := func(next, ask string) {
		if ask = strings.Join(strings.Fields(ask), " "); strings.Contains(shown, ask) && len(ask) > longest {
			id, longest = next, len(ask)
		}
	}
	for i := range m.questions {
		look(m.questions[i].ID, m.questions[i].Ask)
	}
	for i := range m.book.OnceOvers {
		look(m.book.OnceOvers[i].ID, m.book.OnceOvers[i].Ask)
	}
	if id == "" || m.met[id] {
		return 0, io.EOF // no question, or an answer that was refused
	}
	m.met[id] = true
	typed, ok := m.answers[id]
	switch o := m.book.OnceOver(id); {
	case o != nil && m.oneByOne:
		typed = "each"
	case o != nil:
		typed = m.atOneLook(o, shown)
	case ok:
		m.knows++
	default:
		typed = "c"
	}
	m.screen.WriteString(typed + "\n")
	m.read = m.screen.Len()
	return copy(p, typed+"\n"), nil
}

// atOneLook answers a once-over in the words that leave the fewest questions to
// be asked by themselves.
func (m *mechanic) atOneLook(o *advisor.OnceOver, shown string) string {
	_, shown, _ = strings.Cut(shown, " (") // behind the place and the number of the question
	var told, differ, untold []string
	n, asked, usual := 0, 0, false
	for _, member := range o.Members {
		q := m.book.Question(member.Question)
		if !strings.Contains(shown, fmt.Sprintf(" %d %s", n+1, q.Name)) {
			continue
		}
		n++
		usual = usual || member.Usual != ""
		answer, ok := m.answers[q.ID]
		if !ok {
			untold = append(untold, fmt.Sprint(n))
			continue
		}
		m.knows++
		told = append(told, fmt.Sprint(n))
		if answer != member.Usual {
			m.knows--
			asked++
		}
		if answer != member.Usual && member.Usual != "" {
			differ = append(differ, fmt.Sprint(n))
		}
	}
	switch {
	case len(told) == 0:
		return "c"
	case !usual:
		return strings.Join(told, " ")
	case len(told) <= asked:
		return "only " + strings.Join(told, " ")
	case len(untold) > 0:
		return strings.TrimSpace(strings.Join(differ, " ") + " c " + strings.Join(untold, " "))
	case len(differ) == 0:
		return "none"
	}
	return strings.Join(differ, " ")
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
	m := &mechanic{book: e.Book(), questions: e.Book().Questions, answers: map[string]string{}, met: map[string]bool{}}
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
	t.Logf("asked %d times, of %d questions; %d answered by the case", len(m.met), walkRound(m.questions), m.knows)
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
