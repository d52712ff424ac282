package report_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// TestMoneyThatWaits: work on the engine is advised and not agreed to before the
// structure is known; it stands in a row, a paragraph and a term of its own.
func TestMoneyThatWaits(t *testing.T) {
	a := shelf().Advise(readCase(t, "practice/P05.toml"))
	sum := int64(0)
	var waiting []string
	for _, n := range a.Total.Lines {
		if n.Waits != "" {
			sum += n.Mean
			waiting = append(waiting, n.Name)
		}
	}
	require.NotEmpty(t, waiting)
	text := letterOf(t, "practice/P05.toml", "text")
	front, _, _ := strings.Cut(text, "====")
	cells := map[string]int{}
	for _, line := range strings.Split(front, "\n") {
		if name, amount, ok := strings.Cut(line, " ..."); ok {
			cells[strings.TrimSpace(name)] = pounds(strings.TrimLeft(amount, ". "))
		}
	}
	waits := cells["Advised, but not yet: it waits for a look"]
	assert.InDelta(t, float64(sum)*1.2/100, waits, 1)
	assert.InDelta(t, cells["Likely in the end"], cells["To agree today"]+waits+cells["What we find may add, by its chance"], 2, "the rows add up")
	flat := strings.Join(strings.Fields(text), " ")
	assert.Contains(t, flat, "We spend none of it until we know whether the structure")
	assert.Contains(t, flat, "It is not in the sum you agree to.")
	for _, part := range strings.Split(flat, "We would do this now.")[1:] {
		now, _, _ := strings.Cut(part, "What \"no\" means:")
		now, _, _ = strings.Cut(now, "We advise this, but it waits")
		now, _, _ = strings.Cut(now, "We look first")
		for _, name := range waiting {
			assert.NotContains(t, strings.ToLower(now), "* "+name+",", "it waits")
		}
	}
	assert.NotContains(t, letterOf(t, "practice/P02.toml", "text"), "waits")
}

// TestSumsOfTheTerms: the sum to sign never passes what the owner allowed, and
// the word that rings does not contradict it.
func TestSumsOfTheTerms(t *testing.T) {
	for name, row := range map[string]struct {
		said        map[string]float64
		want, never []string
	}{
		"nothing said": {nil, []string{"We ring you before passing £4,561, to say how it goes. Without your word we never pass £5,067", "I agree to work up to £5,067"}, []string{"You told us to stop"}},
		"stop":         {map[string]float64{"stop_sum": 4000}, []string{"We ring you before passing £4,000. ", "today comes to £5,067", "until then we stop at £4,000", "I agree to work up to £4,000"}, []string{"I agree to work up to £5"}},
		"stop beyond":  {map[string]float64{"stop_sum": 9000}, []string{"You told us to stop at £9,000.", "I agree to work up to £5,067"}, []string{"what shall wait"}},
		"ring":         {map[string]float64{"ring_sum": 1500}, []string{"We ring you before passing £1,500. Without your word we stop there."}, []string{"to say how it goes"}},
	} {
		t.Run(name, func(t *testing.T) {
			c := readCase(t, "demo.toml")
			for q, sum := range row.said {
				c.Answers = append(c.Answers, advisor.Answer{Question: q, Value: advisor.Number(sum), How: advisor.Owner})
			}
			a := shelf().Advise(c)
			a.Total.Firm = 422280 // £5,067 with tax
			page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: "text"})
			require.NoError(t, err)
			flat := strings.Join(strings.Fields(page), " ")
			for _, want := range row.want {
				assert.Contains(t, flat, want)
			}
			for _, never := range row.never {
				assert.NotContains(t, flat, never)
			}
		})
	}
}

// TestOneReasonIsSaidOnce: operations that share a reason stand together.
func TestOneReasonIsSaidOnce(t *testing.T) {
	c := readCase(t, "practice/P07.toml")
	a := shelf().Advise(c)
	flat := strings.Join(strings.Fields(letterOn(t, c, "text")), " ")
	decisions := flat[strings.Index(flat, "Your decisions"):strings.Index(flat, "What we would leave alone")]
	said := map[string]int{}
	for i := range a.Operations {
		if o := &a.Operations[i]; o.Part == "engine_bottom" && o.Call == advisor.Do {
			said[o.Reason]++
		}
	}
	shared := 0
	for reason, n := range said {
		if n > 1 {
			shared++
			assert.Less(t, strings.Count(decisions, reason), n, reason)
		}
	}
	assert.Positive(t, shared)
	assert.Contains(t, decisions, "For the same reason.")
}

// TestDeclinedAndDoneForTheirOwner: a letter speaks to the owner, not of one.
func TestDeclinedAndDoneForTheirOwner(t *testing.T) {
	c := readCase(t, "demo.toml")
	c.Declined = append(c.Declined, advisor.Decision{Operation: "brake_pipes"}, advisor.Decision{Operation: "ignition_service"})
	c.Done = append(c.Done, advisor.Decision{Operation: "battery"})
	flat := strings.Join(strings.Fields(letterOn(t, c, "text")), " ")
	assert.NotContains(t, flat, "The owner")
	assert.Contains(t, flat, "You declined it. The stop on the road stays, and the car leaves on a trailer.")
	assert.Equal(t, 2, strings.Count(flat, "You declined it."))
	assert.Contains(t, flat, "Done already, and no longer in the sums: new battery.")
}

// TestWhatWaitedIsAskedForAgain: once the structure is known, a later letter
// asks for the work that waited.
func TestWhatWaitedIsAskedForAgain(t *testing.T) {
	c := readCase(t, "practice/P05.toml")
	says := report.LetterSays(shelf().Advise(c), "")
	assert.NotContains(t, says.Do, "head_off")
	assert.Contains(t, says.LookFirst, "head_off")
	c.Letters = append(c.Letters, says)
	probe := shelf().Book().Question("probe_result")
	for i := range probe.Options {
		if probe.Options[i].ID == "sound" {
			c.Answers = append(c.Answers, advisor.Answer{Question: "probe_result", Value: advisor.Value{State: advisor.Told, Options: 1 << i}, How: advisor.Seen})
		}
	}
	page, err := report.Letter(shelf().Advise(c), shelf().Book(), report.LetterOptions{Format: "text", Since: 1})
	require.NoError(t, err)
	flat := strings.Join(strings.Fields(page), " ")
	assert.Contains(t, flat, `Lift the cylinder head: it was "look first" and is now "do"`)
	assert.Contains(t, flat, "Lift the cylinder head, £")
	assert.NotContains(t, flat, "overleaf", "a later letter lists no stops overleaf")
}
