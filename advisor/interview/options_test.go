package interview_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor/interview"
)

// TestOptionsAreSaidBackAsTheyAreRead answers every question of the book that
// has options, by number, and types what is said back: it is the same answer,
// whatever commas and ors stand in an option's words.
func TestOptionsAreSaidBackAsTheyAreRead(t *testing.T) {
	r := shelf()
	said := 0
	for i := range r.Book.Questions {
		q := &r.Book.Questions[i]
		p := &interview.Prompt{Question: q}
		for j := range q.Options {
			p.Options = append(p.Options, q.Options[j].Name)
		}
		for j := range p.Options {
			for _, form := range []string{"%d", "not %d", "%d or %d"} {
				typed := fmt.Sprintf(form, j+1, (j+1)%len(p.Options)+1)
				typed, _, _ = strings.Cut(typed, "%!")
				first, err := p.Read(typed)
				if err != nil {
					continue // of two options there is no third
				}
				second, err := p.Read(first.Shown)
				if !assert.NoError(t, err, "%s: %q is said back as %q", q.ID, typed, first.Shown) {
					continue
				}
				assert.Equal(t, first.Answer.Value, second.Answer.Value, "%s: %q is said back as %q", q.ID, typed, first.Shown)
				said++
			}
		}
	}
	assert.Greater(t, said, 1000)
}
