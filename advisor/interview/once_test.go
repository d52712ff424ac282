package interview

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// atBonnet is a book with one once-over of five questions, one of them without a
// usual answer, and a question before and behind it.
func atBonnet(open ...string) *bench {
	oil := advisor.Question{ID: "oil", Kind: advisor.Choice, Name: "oil level", Ask: "oil?", Station: "bonnet", How: advisor.Seen,
		Options: []advisor.Option{{ID: "low", Name: "low"}, {ID: "right", Name: "at its mark"}}}
	wires := advisor.Question{ID: "wires", Kind: advisor.Choices, Name: "wiring", Ask: "wires?", Station: "bonnet", How: advisor.Seen, Hazards: []string{"springs"},
		Options: []advisor.Option{{ID: "none", Name: "nothing amiss"}, {ID: "bare", Name: "bare"}}}
	volts := advisor.Question{ID: "volts", Kind: advisor.NumberKind, Name: "battery at rest", Ask: "volts?", Station: "bonnet", How: advisor.Measured, High: 30, Unit: "V"}
	b := &advisor.Book{
		Questions: []advisor.Question{yesNo("who", "story"), oil, wires, yesNo("drip", "bonnet"), yesNo("smell", "bonnet"), volts, yesNo("rust", "underneath")},
		Suspects:  []advisor.Suspect{{ID: "leak", Name: "it leaks"}},
		Cautions:  []advisor.Caution{{ID: "c", Hazard: "springs", Text: "Stand aside."}},
		OnceOvers: []advisor.OnceOver{{ID: "lamp", Name: "under the bonnet", Station: "bonnet", Ask: "what differs?", Help: "With a lamp.",
			Members: []advisor.OnceMember{{Question: "oil", Usual: "right"}, {Question: "wires", Usual: "none"}, {Question: "drip", Usual: "no"},
				{Question: "smell", Usual: "no"}, {Question: "volts"}}}},
	}
	for i := range b.Questions {
		if b.Questions[i].Name == "" {
			b.Questions[i].Name = b.Questions[i].ID
		}
	}
	if open == nil {
		open = []string{"who", "oil", "wires", "drip", "smell", "volts", "rust"}
	}
	return &bench{book: b, open: func(map[string]advisor.Answer) (out []advisor.OpenQuestion) {
		for _, id := range open {
			q := b.Question(id)
			out = append(out, advisor.OpenQuestion{ID: id, Station: q.Station, Suspects: []string{"leak"}, Net: 1})
		}
		return out
	}}
}

// said tells the answers of a case in short, in order: yes and no by letter,
// options by place, a question mark for can't tell, an x for hidden.
func said(c *advisor.Case) string {
	var out []string
	for i := range c.Answers {
		a := &c.Answers[i]
		v := strings.Trim(strings.ReplaceAll(a.Written, "can't tell", "?"), `[]"`)
		out = append(out, a.Question+"="+v)
	}
	return strings.Join(out, " ")
}

func TestOnceOverAsksTogether(t *testing.T) {
	for _, c := range []struct {
		name              string
		open              []string
		typed             map[string][]string
		asked, want, skip string
	}{
		{"none differs", nil, map[string][]string{"who": {"y"}, "lamp": {"none"}, "volts": {"12"}, "rust": {"y"}},
			"who lamp volts rust", `who=true oil=right wires=none drip=false smell=false volts=12 rust=true`, ""},
		{"two differ, by number", nil, map[string][]string{"who": {"y"}, "lamp": {"3 1"}, "oil": {"low"}, "drip": {"y"}, "volts": {"x"}, "rust": {"y"}},
			"who lamp oil drip volts rust", `who=true wires=none smell=false oil=low drip=true volts=hidden rust=true`, ""},
		{"a range and a name", nil, map[string][]string{"who": {"y"}, "lamp": {"2 to 3, battery"}, "wires": {"bare"}, "drip": {"y"}, "volts": {"12"}, "rust": {"y"}},
			"who lamp wires drip volts rust", `who=true oil=right smell=false wires=bare drip=true volts=12 rust=true`, ""},
		{"nobody can tell", nil, map[string][]string{"who": {"y"}, "lamp": {"can't tell"}, "rust": {"y"}},
			"who lamp rust", "who=true oil=? wires=? drip=? smell=? volts=? rust=true", ""},
		{"hidden", nil, map[string][]string{"who": {"y"}, "lamp": {"x"}, "rust": {"y"}},
			"who lamp rust", "who=true oil=hidden wires=hidden drip=hidden smell=hidden volts=hidden rust=true", ""},
		{"only two can be told", nil, map[string][]string{"who": {"y"}, "lamp": {"only 1 5"}, "oil": {"low"}, "volts": {"12"}, "rust": {"y"}},
			"who lamp oil volts rust", "who=true wires=? drip=? smell=? oil=low volts=12 rust=true", ""},
		{"one differs, some cannot be told", nil, map[string][]string{"who": {"y"}, "lamp": {"1 c 3 5 x 4"}, "oil": {"low"}, "rust": {"y"}},
			"who lamp oil rust", `who=true wires=none drip=? smell=hidden volts=? oil=low rust=true`, ""},
		{"none but what cannot be told", nil, map[string][]string{"who": {"y"}, "lamp": {"c 5"}, "rust": {"y"}},
			"who lamp rust", `who=true oil=right wires=none drip=false smell=false volts=? rust=true`, ""},
		{"each", nil, map[string][]string{"who": {"y"}, "lamp": {"each"}, "oil": {"low"}, "wires": {"none"}, "drip": {"y"}, "smell": {"y"}, "volts": {"12"}, "rust": {"y"}},
			"who lamp oil wires drip smell volts rust", `who=true oil=low wires=none drip=true smell=true volts=12 rust=true`, ""},
		{"two open questions are asked by themselves", []string{"oil", "volts", "rust"}, map[string][]string{"oil": {"low"}, "volts": {"12"}, "rust": {"y"}},
			"oil volts rust", "oil=low volts=12 rust=true", ""},
		{"only what is open is listed", []string{"drip", "smell", "volts"}, map[string][]string{"lamp": {"2"}, "smell": {"y"}, "volts": {"12"}},
			"lamp smell volts", "drip=false smell=true volts=12", ""},
		{"wrong, then right", nil, map[string][]string{"who": {"y"}, "lamp": {"7", "moon", "c"}, "rust": {"y"}},
			"who lamp lamp lamp rust", "who=true oil=? wires=? drip=? smell=? volts=? rust=true", ""},
		{"back from the question behind it, and a new answer takes the place of all", nil,
			map[string][]string{"who": {"y"}, "lamp": {"none", "c"}, "volts": {"b"}, "rust": {"y"}},
			"who lamp volts lamp rust", "who=true oil=? wires=? drip=? smell=? volts=? rust=true", ""},
		{"back from the first one asked of it, Enter keeps what it was", nil,
			map[string][]string{"who": {"y"}, "lamp": {"1", ""}, "oil": {"b", "low"}, "volts": {"12"}, "rust": {"y"}},
			"who lamp oil lamp oil volts rust", `who=true wires=none drip=false smell=false oil=low volts=12 rust=true`, ""},
		{"what differs after all is taken out at once and asked", nil,
			map[string][]string{"who": {"y"}, "lamp": {"c", "3"}, "rust": {"b", "y"}, "drip": {"y"}, "volts": {"12"}},
			"who lamp rust lamp drip volts rust", `who=true oil=right wires=none smell=false drip=true volts=12 rust=true`, ""},
		{"back behind what was asked by itself shows it again", nil,
			map[string][]string{"who": {"y"}, "lamp": {"1", "1"}, "oil": {"low", "b", "", "right"}, "volts": {"b", "12"}, "rust": {"y"}},
			"who lamp oil volts oil lamp oil volts rust", `who=true oil=low wires=none drip=false smell=false volts=12 rust=true`, ""},
		{"back through it to the question before", nil,
			map[string][]string{"who": {"y", "n"}, "lamp": {"b", "c"}, "rust": {"y"}},
			"who lamp who lamp rust", "who=false oil=? wires=? drip=? smell=? volts=? rust=true", ""},
		{"Enter leaves all for another time", nil, map[string][]string{"who": {"y"}, "lamp": {""}, "rust": {"y"}},
			"who lamp rust", "who=true rust=true", "oil wires drip smell volts"},
		{"its station again asks what was left", nil, map[string][]string{"who": {"y"}, "lamp": {"skip", "none"}, "rust": {"s bonnet", "y"}, "volts": {"12"}},
			"who lamp rust lamp volts rust", `who=true oil=right wires=none drip=false smell=false volts=12 rust=true`, ""},
		{"back to what was left", nil, map[string][]string{"who": {"y"}, "lamp": {"", "c"}, "rust": {"b", "y"}},
			"who lamp rust lamp rust", "who=true oil=? wires=? drip=? smell=? volts=? rust=true", ""},
		{"another station in between", nil, map[string][]string{"who": {"y"}, "lamp": {"only 1 2 3 4 5"}, "oil": {"s underneath", "low"}, "rust": {"y"},
			"wires": {"none"}, "drip": {"y"}, "smell": {"y"}, "volts": {"12"}},
			"who lamp oil rust oil wires drip smell volts", `who=true rust=true oil=low wires=none drip=true smell=true volts=12`, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			iv, a, finished, err := run(t, atBonnet(c.open...), Options{}, c.typed)
			require.NoError(t, err)
			assert.True(t, finished)
			assert.Equal(t, c.asked, strings.Join(a.ids, " "))
			assert.Equal(t, c.want, said(iv.Case()))
			assert.Equal(t, c.skip, strings.Join(iv.Skipped(), " "))
		})
	}
}

// untold is the once-over of atBonnet with nothing usual.
func untold() *bench {
	b := atBonnet("oil", "wires", "drip")
	for i := range b.book.OnceOvers[0].Members {
		b.book.OnceOvers[0].Members[i].Usual = ""
	}
	return b
}

// TestOnceOverTakesNothingForGranted: where nothing usual is listed, what is not
// named stays not known, and nobody says "fine" by keeping silent.
func TestOnceOverTakesNothingForGranted(t *testing.T) {
	for typed, want := range map[string]string{"none": "oil=? wires=? drip=?", "2": "oil=? drip=? wires=none", "only 2": "oil=? drip=? wires=none",
		"x": "oil=hidden wires=hidden drip=hidden", "2 x 3": "oil=? drip=hidden wires=none"} {
		iv, _, finished, err := run(t, untold(), Options{}, map[string][]string{"lamp": {typed}, "wires": {"none"}})
		require.NoError(t, err)
		assert.True(t, finished)
		assert.Equal(t, want, said(iv.Case()), typed)
	}
}

func TestOnceOverIsNotPutToWhoBeganOneByOne(t *testing.T) {
	seen := func(note string) *advisor.Case {
		return &advisor.Case{Answers: []advisor.Answer{{Question: "oil", Value: advisor.OneOf(1), Note: note}}}
	}
	first := func(c *advisor.Case, o Options, open ...string) string {
		return New(atBonnet(open...), c, o).Next().Question.ID
	}
	assert.Equal(t, "wires", first(seen(""), Options{}, "oil", "wires", "drip", "smell", "volts"))
	assert.Equal(t, "lamp", first(seen("known type van"), Options{}, "oil", "wires", "drip", "smell", "volts"), "a type's answer is no beginning")

	iv := New(atBonnet(), &advisor.Case{}, Options{})
	iv.Skip("oil")
	iv.Skip("who")
	assert.Equal(t, "wires", iv.Next().Question.ID)
}

// TestOnceOverInABriefInterview is put whole when one of its questions is worth
// asking: the others come at no further prompt, and none of them alone.
func TestOnceOverInABriefInterview(t *testing.T) {
	worth := func(ids ...string) *bench {
		b := atBonnet("oil", "wires", "drip", "volts")
		open := b.open
		b.open = func(a map[string]advisor.Answer) []advisor.OpenQuestion {
			out := open(a)
			for i := range out {
				out[i].Structure, out[i].Net = slices.Contains(ids, out[i].ID), -1
			}
			return out
		}
		return b
	}
	for _, c := range []struct{ name, worth, typed, asked, want, left string }{
		{"nothing is worth asking", "", "", "", "", "oil wires drip volts"},
		{"what is worth nothing is not asked behind it", "oil", "none", "lamp", "oil=right wires=none drip=false", "volts"},
		{"what is worth asking is", "volts", "none", "lamp volts", "oil=right wires=none drip=false volts=12", ""},
		{"what is named is asked", "oil", "only 2 4", "lamp wires volts", "oil=? drip=? wires=none volts=12", ""},
		{"each asks each", "oil", "each", "lamp oil wires drip volts", "oil=low wires=none drip=true volts=12", ""},
		{"nobody can tell", "drip", "c", "lamp", "oil=? wires=? drip=? volts=?", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			iv, a, finished, err := run(t, worth(strings.Fields(c.worth)...), Options{Brief: true},
				map[string][]string{"lamp": {c.typed}, "oil": {"low"}, "wires": {"none"}, "drip": {"y"}, "volts": {"12"}})
			require.NoError(t, err)
			assert.True(t, finished)
			assert.Equal(t, c.asked, strings.Join(a.ids, " "))
			assert.Equal(t, c.want, said(iv.Case()))
			assert.Equal(t, c.left, strings.Join(iv.LeftOut(), " "))
		})
	}
	p := New(worth("oil"), &advisor.Case{}, Options{Brief: true}).Next()
	assert.Contains(t, p.Text(), "    4 battery at rest: asked only when named\n")
}

// TestWhatAQuestionClosesIsNotAskedOfAOnceOver: an answer may close what was
// named with it.
func TestWhatAQuestionClosesIsNotAskedOfAOnceOver(t *testing.T) {
	b := atBonnet("oil", "wires", "drip", "smell")
	open := b.open
	b.open = func(done map[string]advisor.Answer) []advisor.OpenQuestion {
		if _, ok := done["oil"]; ok {
			return nil
		}
		return open(done)
	}
	_, a, finished, err := run(t, b, Options{}, map[string][]string{"lamp": {"only 1 3"}, "oil": {"low"}})
	require.NoError(t, err)
	assert.True(t, finished)
	assert.Equal(t, []string{"lamp", "oil"}, a.ids)
}

func TestOnceOverAnswersSayHowTheyAreKnown(t *testing.T) {
	p := New(atBonnet("oil", "wires", "drip", "volts"), &advisor.Case{}, Options{}).Next()
	r, err := p.Read("none @owner # by telephone")
	require.NoError(t, err)
	assert.True(t, r.HowTold)
	assert.Equal(t, "as usual: oil level, wiring, drip; asked next: battery at rest (owner)", r.Shown)
	require.Len(t, r.Sweep.Given, 3)
	for _, g := range r.Sweep.Given {
		assert.Equal(t, advisor.Owner, g.Answer.How)
		assert.Equal(t, "by telephone", g.Answer.Note)
	}
	assert.Equal(t, []string{"volts"}, r.Sweep.Next)

	r, err = p.Read("c")
	require.NoError(t, err)
	assert.Equal(t, advisor.Measured, r.Sweep.Given[3].Answer.How)
	assert.Equal(t, "cannot be told: oil level, wiring, drip, battery at rest", r.Shown)

	r, err = p.Read("Each")
	require.NoError(t, err)
	assert.Empty(t, r.Sweep.Given)
	assert.Equal(t, []string{"oil", "wires", "drip", "volts"}, r.Sweep.Next)
	assert.Equal(t, "asked next: oil level, wiring, drip, battery at rest", r.Shown)
}

func TestOnceOverRefusesInOneLine(t *testing.T) {
	p := New(atBonnet(), &advisor.Case{Answers: []advisor.Answer{{Question: "who", Value: advisor.YesNo(true)}}}, Options{}).Next()
	require.NotNil(t, p.Once)
	for typed, want := range map[string]string{
		"6":             `"6" is none of what is listed; numbers from 1 to 5, none, only 2, c or each`,
		"0 2":           `"0" is none of what is listed`,
		"4-2":           `"4-2" is none of what is listed`,
		"1-9":           `"1-9" is none of what is listed`,
		"-":             `"-" is none of what is listed`,
		"yes":           `"yes" is none of what is listed`,
		"only":          `"only" is none of what is listed`,
		"only none":     `"none" is none of what is listed`,
		"2 c 9":         `"9" is none of what is listed`,
		"3 c 3":         "drip is to be told, and cannot be told; say it once",
		"3 # it drips":  "the remark would stand by the others; leave it out here, and say it where drip is asked",
		"none @guess":   `"@guess" is no way of knowing`,
		"# only a note": `"" is none of what is listed`,
		"s moon":        `there is no station "moon"`,
	} {
		_, err := p.Read(typed)
		require.Error(t, err, typed)
		assert.Contains(t, err.Error(), want)
		assert.NotContains(t, err.Error(), "\n")
	}
}

func TestOnceOverInWords(t *testing.T) {
	p := New(atBonnet("oil", "wires", "drip", "volts"), &advisor.Case{}, Options{}).Next()
	text := p.Text()
	for _, want := range []string{"bonnet, question 1, 4 at one look (4 left at most)\nwhat differs?\n  With a lamp.\n  why: suspected: it leaks\n  CAUTION: Stand aside.\n",
		"    1 oil level: usually at its mark\n    2 wiring: usually nothing amiss\n    3 drip: usually no\n    4 battery at rest: asked by itself\n",
		"  none: nothing differs, taken as seen; 2 5: these differ; c: can't tell any;"} {
		assert.Contains(t, text, want)
	}
	for _, page := range []string{text, p.HelpText(), p.WhyText(), untold().prompt().Text()} {
		for _, line := range strings.Split(page, "\n") {
			assert.LessOrEqual(t, len([]rune(line)), 80, line)
		}
	}
	assert.Contains(t, p.HelpText(), "never taken for")
	assert.Contains(t, p.WhyText(), "4 battery at rest: suspected: it leaks")
	assert.Contains(t, untold().prompt().Text(), "2 5: these can be told; none: none of them can; each: one by one")
	p.Repeated = true
	assert.True(t, strings.HasPrefix(p.Text(), "\nwhat differs?\n    1 oil level"), "the numbers stay in sight")
}

func (b *bench) prompt() *Prompt { return New(b, &advisor.Case{}, Options{}).Next() }
