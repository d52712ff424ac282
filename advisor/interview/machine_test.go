package interview

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// bench is a small book whose adviser holds open what a test says.
type bench struct {
	book *advisor.Book
	open func(answered map[string]advisor.Answer) []advisor.OpenQuestion
	// cautions that do not apply once a question is answered, by its id
	spared map[string]string
}

func (b *bench) Book() *advisor.Book { return b.book }

func (b *bench) Advise(c *advisor.Case) *advisor.Advice {
	answered := map[string]advisor.Answer{}
	for _, a := range c.Answers {
		answered[a.Question] = a
	}
	open := slices.DeleteFunc(b.open(answered), func(o advisor.OpenQuestion) bool {
		_, ok := answered[o.ID]
		return ok
	})
	return &advisor.Advice{Case: c, Open: open}
}

func (b *bench) Open(c *advisor.Case) []advisor.OpenQuestion { return b.Advise(c).Open }

func (b *bench) Cautions(c *advisor.Case, hazards []string) (out []advisor.CautionAdvice) {
	for i := range b.book.Cautions {
		k := &b.book.Cautions[i]
		answered := slices.ContainsFunc(c.Answers, func(a advisor.Answer) bool { return b.spared[a.Question] == k.ID })
		if slices.Contains(hazards, k.Hazard) && !answered {
			out = append(out, advisor.CautionAdvice{ID: k.ID, Hazard: k.Hazard, Text: k.Text, Defers: k.Defers})
		}
	}
	return out
}

func yesNo(id, station string) advisor.Question {
	return advisor.Question{ID: id, Kind: advisor.YesNoKind, Ask: id + "?", Station: station, How: advisor.Seen}
}

// small is a book of six questions: two of the first ten, and four stations.
func small() *bench {
	first, second := yesNo("who", "story"), yesNo("why", "papers")
	first.Rank, second.Rank = 2, 1
	always := yesNo("keys", "papers")
	always.Always = true
	always.Hazards = []string{"springs"}
	b := &advisor.Book{
		Questions: []advisor.Question{first, yesNo("dents", "outside"), second, always, yesNo("drip", "underneath"), yesNo("smell", "bonnet"), yesNo("bore", "inspection")},
		Cautions:  []advisor.Caution{{ID: "c", Hazard: "springs", Text: "Stand aside.", Defers: "The maker's data."}},
		Suspects:  []advisor.Suspect{{ID: "leak", Name: "it leaks"}},
		Holds:     []advisor.Hold{{ID: "h", Name: "it is dry"}},
	}
	return &bench{book: b, open: func(done map[string]advisor.Answer) []advisor.OpenQuestion {
		out := []advisor.OpenQuestion{{ID: "keys", Station: "papers"},
			{ID: "smell", Station: "bonnet", Net: -5, Suspects: []string{"leak"}},
			{ID: "drip", Station: "underneath", Structure: true, Feeds: []string{"h"}, Suspects: []string{"leak"}}}
		if a, ok := done["smell"]; ok && a.Value.Options == 1 {
			return out[:1] // no smell: nothing to look for underneath
		}
		return out
	}}
}

// asked runs an interview with answers given by id, and lists what was asked.
type asked struct {
	typed map[string][]string
	ids   []string
	said  []string
}

func (a *asked) Ask(p *Prompt) (string, error) {
	id := p.Question.ID
	a.ids = append(a.ids, id)
	if len(a.typed[id]) == 0 {
		return "", ErrEnded
	}
	next := a.typed[id][0]
	a.typed[id] = a.typed[id][1:]
	return next, nil
}

func (a *asked) Say(text string) { a.said = append(a.said, text) }

// run holds an interview; answers that the case keeps stand in the case it gives.
func run(t require.TestingT, b *bench, o Options, typed map[string][]string) (*Interview, *asked, bool, error) {
	iv := New(b, &advisor.Case{}, o)
	keep := func(given []Given) (*advisor.Case, error) {
		c := *iv.Case()
		c.Answers = slices.Clone(c.Answers)
		for _, g := range given {
			c.Answers = slices.DeleteFunc(c.Answers, func(x advisor.Answer) bool { return x.Question == g.Question.ID })
			if g.Gone {
				continue
			}
			toml, err := g.Entry.TOML(g.Question)
			require.NoError(t, err)
			a, faults := casefile.Judge(g.Question, toml, 2025)
			require.Empty(t, faults)
			c.Answers = append(c.Answers, a)
		}
		return &c, nil
	}
	asker := &asked{typed: typed}
	finished, err := iv.Run(asker, keep, func(*advisor.Advice) string { return "the page" })
	return iv, asker, finished, err
}

func TestOrderOfTheWalk(t *testing.T) {
	for _, c := range []struct {
		name  string
		o     Options
		typed map[string][]string
		want  string
	}{
		{"first ten by rank, then stations", Options{}, map[string][]string{"why": {"y"}, "who": {"y"}, "keys": {"y"}, "smell": {"y"}, "drip": {"y"}}, "why who keys smell drip"},
		{"what an answer closes is not asked", Options{}, map[string][]string{"why": {"y"}, "who": {"y"}, "keys": {"y"}, "smell": {"n"}}, "why who keys smell"},
		{"all asks what changes nothing", Options{All: true}, map[string][]string{"why": {"y"}, "who": {"y"}, "keys": {"y"}, "dents": {"y"}, "smell": {"y"}, "drip": {"y"}}, "why who keys dents smell drip"},
		{"brief leaves out what is not worth its minutes", Options{Brief: true}, map[string][]string{"why": {"y"}, "who": {"y"}, "keys": {"y"}, "drip": {"y"}}, "why who keys drip"},
		{"a wrong answer is asked again", Options{}, map[string][]string{"why": {"moon", "y"}, "who": {"y"}, "keys": {"y"}, "smell": {"n"}}, "why why who keys smell"},
		{"back asks the one before again", Options{}, map[string][]string{"why": {"y", "n"}, "who": {"b", "y"}, "keys": {"y"}, "smell": {"n"}}, "why who why who keys smell"},
		{"back twice", Options{}, map[string][]string{"why": {"y", ""}, "who": {"y", "back", "y"}, "keys": {"b", "y"}, "smell": {"n"}}, "why who keys who why keys smell"},
		{"back at the first", Options{}, map[string][]string{"why": {"b", "stop"}}, "why why"},
		{"another station first", Options{}, map[string][]string{"why": {"s underneath", "y"}, "drip": {"y"}, "who": {"y"}, "keys": {"y"}, "smell": {"n"}}, "why drip why who keys smell"},
		{"a station with nothing to ask", Options{}, map[string][]string{"why": {"s bench", "stop"}}, "why why"},
		{"skipped ones come no more", Options{}, map[string][]string{"why": {""}, "who": {"skip"}, "keys": {"y"}, "smell": {"n"}}, "why who keys smell"},
		{"back to what was skipped", Options{}, map[string][]string{"why": {"", "y"}, "who": {"b", "y"}, "keys": {"y"}, "smell": {"n"}}, "why who why who keys smell"},
		{"hidden is an answer", Options{}, map[string][]string{"why": {"x"}, "who": {"c"}, "keys": {"y"}, "smell": {"n"}}, "why who keys smell"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, a, _, err := run(t, small(), c.o, c.typed)
			require.NoError(t, err)
			assert.Equal(t, c.want, strings.Join(a.ids, " "))
		})
	}
}

func TestBackKeepsAndReplaces(t *testing.T) {
	iv, _, finished, err := run(t, small(), Options{}, map[string][]string{"why": {"y", "n"}, "who": {"b", "y"}, "keys": {"y"}, "smell": {"n"}})
	require.NoError(t, err)
	assert.True(t, finished)
	for _, a := range iv.Case().Answers {
		if a.Question == "why" {
			assert.Equal(t, advisor.YesNo(false), a.Value)
		}
	}
	assert.Len(t, iv.Case().Answers, 4)
	assert.Empty(t, iv.Skipped())
}

func TestEndOfInputIsNoAnswer(t *testing.T) {
	iv, _, finished, err := run(t, small(), Options{}, map[string][]string{"why": {"y"}})
	assert.ErrorIs(t, err, ErrEnded)
	assert.False(t, finished)
	assert.Len(t, iv.Case().Answers, 1)
}

func TestCommandsTell(t *testing.T) {
	_, a, finished, err := run(t, small(), Options{}, map[string][]string{"why": {"y"}, "who": {"y"}, "keys": {"y"},
		"smell": {"w", "?", "a", "s", "b", "y"}, "drip": {"q"}})
	// back from smell asks keys again, for which nothing is left to say
	assert.ErrorIs(t, err, ErrEnded)
	assert.False(t, finished)
	all := strings.Join(a.said, "\n")
	for _, want := range []string{"suspected: it leaks", "Answer with yes or no", "the page", "bonnet      1 to ask", "kept: yes"} {
		assert.Contains(t, all, want)
	}
}

func TestPromptInWords(t *testing.T) {
	iv := New(small(), &advisor.Case{}, Options{})
	keys := iv.About(iv.Question("keys")).Text()
	assert.Contains(t, keys, "CAUTION: Stand aside. Defers to: The maker's data.")
	assert.Contains(t, keys, "asked of every car, for the record")
	assert.Contains(t, keys, "yes or no; taken as seen unless you say otherwise")
	iv.Take("keys", iv.Case())
	assert.Contains(t, iv.About(iv.Question("keys")).Text(), "CAUTION: as before: springs")
	again := New(atBonnet(), &advisor.Case{Answers: []advisor.Answer{{Question: "oil", Value: advisor.OneOf(1)}}}, Options{}).About(&atBonnet().book.Questions[1])
	again.Repeated = true
	assert.Equal(t, "\noil?\n    1 low\n    2 at its mark\n  now: low (seen); Enter keeps it\n"+fold(again.Form, "  ", "  "), again.Text(), "the numbers stay in sight")
	drip := iv.About(iv.Question("drip")).Text()
	assert.Contains(t, drip, "why: hold: stands until it is dry; suspected: it leaks")
	for _, line := range strings.Split(drip+keys, "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80)
	}
}

// TestPutAgainSaysWhatItBearsOn: a question to which somebody goes back bears on
// what it bore on before it was answered.
func TestPutAgainSaysWhatItBearsOn(t *testing.T) {
	iv := New(atBonnet(), &advisor.Case{}, Options{})
	first := iv.Next()
	assert.Equal(t, []string{"suspected: it leaks"}, first.Reasons)
	iv.Take("who", &advisor.Case{Answers: []advisor.Answer{{Question: "who", Value: advisor.YesNo(true)}}})
	require.True(t, iv.Back())
	again := iv.Next()
	assert.Equal(t, "who", again.Question.ID)
	assert.Equal(t, first.Reasons, again.Reasons)
	iv.Skip("who")
	lamp := iv.Next()
	require.NotNil(t, lamp.Once)
	assert.Equal(t, first.Reasons, lamp.Reasons)
}

// TestCautionsThatApply: what the case rules out is not said, what comes to
// apply later is said whole, and of one hazard the name comes once.
func TestCautionsThatApply(t *testing.T) {
	b := small()
	b.book.Cautions = append(b.book.Cautions, advisor.Caution{ID: "d", Hazard: "springs", Text: "Diesel is caught."})
	b.spared = map[string]string{"who": "d"}
	keys := b.book.Question("keys")
	who := advisor.Answer{Question: "who", Value: advisor.YesNo(true)}
	iv := New(b, &advisor.Case{Answers: []advisor.Answer{who}}, Options{})
	assert.NotContains(t, iv.About(keys).Text(), "Diesel")
	iv.Take("keys", iv.Case())
	assert.Equal(t, []string{"as before: springs"}, iv.About(keys).Cautions)
	iv.Take("who", &advisor.Case{}) // taken back
	assert.Equal(t, []string{"Diesel is caught.", "as before: springs"}, iv.About(keys).Cautions)
	iv.Take("keys", iv.Case())
	assert.Equal(t, []string{"as before: springs"}, iv.About(keys).Cautions)
}

func TestBriefListsWhatItLeavesOut(t *testing.T) {
	iv, _, _, err := run(t, small(), Options{Brief: true}, map[string][]string{"why": {"y"}, "who": {"y"}, "keys": {"y"}, "drip": {"y"}})
	require.NoError(t, err)
	assert.Equal(t, []string{"smell"}, iv.LeftOut())
}

// TestInterviewAlwaysEnds holds interviews with whatever is typed: nothing is
// asked again but after back, a wrong answer or a command, and a case that is
// answered asks nothing.
func TestInterviewAlwaysEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom([]string{"y", "n", "x", "c", "", "skip", "b", "w", "?", "moon", "s outside", "s underneath", "s bonnet", "s", "y @owner # so",
			"none", "each", "1", "2-3", "only 2", "1 c 2", "12"})
		book := rapid.SampledFrom([]func() *bench{small, func() *bench { return atBonnet() }, untold}).Draw(t, "book")
		typed := map[string][]string{}
		for _, q := range book().book.Questions {
			typed[q.ID] = rapid.SliceOfN(word, 0, 4).Draw(t, q.ID)
		}
		for _, o := range book().book.OnceOvers {
			typed[o.ID] = rapid.SliceOfN(word, 0, 6).Draw(t, o.ID)
		}
		words := 0
		for _, w := range typed {
			words += len(w)
		}
		iv, a, finished, err := run(t, book(), Options{All: rapid.Bool().Draw(t, "all")}, typed)
		if len(a.ids) > words+1 {
			t.Fatalf("%d words were asked %d times", words, len(a.ids))
		}
		if err == nil && finished && len(iv.Skipped()) == 0 {
			if again := New(book(), iv.Case(), iv.options).Next(); again != nil {
				t.Fatalf("%s is asked of a case that is answered", again.Question.ID)
			}
		}
	})
}
