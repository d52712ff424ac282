package main

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
	"longstand/advisor/interview"
)

// kills is how many intakes are killed; a quarter of them with -short.
const kills = 200

// TestKilledIntakeLosesNothing kills intakes at random moments. Each answer
// carries a note of its own, which all answers of a once-over share; every one
// that was acknowledged must be in the case, which must read without a fault,
// and of a once-over either all answers or none.
func TestKilledIntakeLosesNothing(t *testing.T) {
	e, err := (&door{}).engine()
	require.NoError(t, err)
	n := int64(kills)
	if testing.Short() {
		n /= 4
	}
	var acknowledged, killed, together atomic.Int64
	for worker := range 4 {
		t.Run(fmt.Sprint("bench ", worker), func(t *testing.T) {
			t.Parallel()
			r := rand.New(rand.NewPCG(4, uint64(worker)))
			for stay := 0; killed.Load() < n; stay++ {
				path := filepath.Join(t.TempDir(), fmt.Sprintf("case%d.toml", stay))
				var notes []string
				for round := 0; round < 12 && killed.Load() < n; round++ {
					got := killOne(t, path, fmt.Sprintf("n%d_%d_", stay, round), r)
					killed.Add(1)
					acknowledged.Add(int64(len(got)))
					notes = append(notes, got...)
					data, err := os.ReadFile(path)
					if os.IsNotExist(err) && len(notes) == 0 {
						continue
					}
					require.NoError(t, err)
					c, faults := casefile.Read(path, data, e.Book())
					require.Empty(t, faults, "a torn case after %d kills", killed.Load())
					for _, note := range notes {
						require.Contains(t, string(data), `"`+note+`"`, "an acknowledged answer is lost")
					}
					if lastWhole(t, e, c) {
						together.Add(1)
					}
				}
			}
		})
	}
	t.Cleanup(func() {
		assert.Positive(t, acknowledged.Load())
		assert.Positive(t, together.Load())
		t.Logf("%d intakes killed, %d acknowledged answers found, no torn case; %d times a once-over was the last write, and whole", killed.Load(), acknowledged.Load(), together.Load())
	})
}

// lastWhole tells whether the last write of a case was a once-over's, and demands
// that it is whole: answers that share a note came in one write, and what they
// answer must be all that the once-over listed.
func lastWhole(t *testing.T, e *engine.Engine, c *advisor.Case) bool {
	from := len(c.Answers) - 1
	if from < 0 {
		return false
	}
	last := c.Answers[from]
	for from > 0 && c.Answers[from-1].Note == last.Note {
		from--
	}
	before := *c
	before.Answers = c.Answers[:from]
	iv := interview.New(e, &before, interview.Options{})
	require.True(t, iv.Go(e.Book().Question(last.Question).Station))
	p := iv.Next()
	if p.Once == nil {
		require.Len(t, c.Answers[from:], 1)
		return false
	}
	var listed, kept []string
	for _, it := range p.Once.Items {
		listed = append(listed, it.Question.ID)
	}
	for _, a := range c.Answers[from:] {
		kept = append(kept, a.Question)
	}
	require.Equal(t, listed, kept, "a part of %s is kept", p.Once.Over.ID)
	return true
}

// killOne starts an intake, sends it answers all at once, and kills it at a
// random moment. It gives the notes of the answers that were acknowledged.
func killOne(t *testing.T, path, prefix string, r *rand.Rand) (notes []string) {
	self, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.Command(self)
	cmd.Args = []string{"longstand", "intake", path, "--date", "2025-10-14"}
	var answers strings.Builder
	answers.WriteString([]string{"", "station papers\n", "station bonnet\n", "station underneath\n"}[r.IntN(4)])
	for i := range 15 {
		fmt.Fprintf(&answers, "c # %s%d\n", prefix, i)
	}
	cmd.Stdin = strings.NewReader(answers.String())
	talk, err := cmd.StderrPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	after := r.IntN(6) // acknowledgements
	kill := func() { _ = cmd.Process.Kill() }
	if after == 0 {
		timer := time.AfterFunc(time.Duration(r.IntN(100))*time.Millisecond, kill)
		defer timer.Stop()
	}
	in := bufio.NewReader(talk)
	for {
		line, err := in.ReadString('\n')
		if strings.HasPrefix(strings.TrimPrefix(line, "> "), "  kept: ") && strings.HasSuffix(line, "\n") {
			notes = append(notes, fmt.Sprint(prefix, len(notes)))
			if len(notes) == after {
				time.AfterFunc(time.Duration(r.IntN(30_000))*time.Microsecond, kill)
			}
		}
		if err != nil {
			require.ErrorIs(t, err, io.EOF)
			_ = cmd.Wait()
			return notes
		}
	}
}
