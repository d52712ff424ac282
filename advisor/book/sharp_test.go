package book

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// beside checks a text beside the small book: as part of it, or as a layer.
func beside(t testing.TB, layer, text string) *Result {
	return Check([]File{base(t), {Name: "x.toml", Data: []byte(text), Layer: layer}})
}

const salted = aRule + "when = 'years_laid_up > 3 and climate == \"coastal\"'\n"

func TestScoreByClass(t *testing.T) {
	without := beside(t, "", sumpOff).Score
	with := beside(t, "", salted+"fires = [{ years_laid_up = 4, climate = 'coastal' }]\nbut_not = [{ climate = 'dry' }, { years_laid_up = 3 }]").Score
	assert.Equal(t, without.Of[ClassB], with.Of[ClassB], "a standing rule is of class A")
	a, b := with.Of[ClassA], without.Of[ClassA]
	assert.Equal(t, [3]int{1, 4, 4}, [3]int{a.Conditions - b.Conditions, a.Pins - b.Pins, a.Pinned - b.Pinned})
	assert.Equal(t, [2]int{3, 2}, [2]int{a.Edges - b.Edges, a.Edged - b.Edged}, "two years are not told")
	slips, noticed := a.Slips-b.Slips, a.Noticed-b.Noticed
	assert.Equal(t, 23, slips)
	assert.Equal(t, slips-1, noticed, "climate == \"damp\" as a slip is noticed, years_laid_up != 3 is not")
	bare := beside(t, "", salted).Score.Of[ClassA]
	assert.Equal(t, 1, bare.Bare-a.Bare)
	assert.Equal(t, a.Slips, bare.Slips, "what could be shown does not hang on what is")
}

// In the built-in book class A falls short as an error, class B as a warning.
func TestHeldToItsClass(t *testing.T) {
	const specimens = "fires = [{ years_laid_up = 5 }]\nfires_not = [{ years_laid_up = 3 }]\n"
	for _, row := range []struct {
		text string
		want []string
	}{
		{aRule + "when = 'years_laid_up > 3'\n" + specimens, []string{"error open-edge"}},
		{aSign + "when = 'years_laid_up > 3'\n" + specimens, []string{"warning open-edge"}},
		{aRule + "when = 'years_laid_up > 3'\n", []string{"error no-specimen"}},
		{aSign + "when = 'years_laid_up > 3'\n", nil},
		{aRule + "when = 'climate in [\"dry\", \"damp\"]'\nfires = [{ climate = 'dry' }]\nfires_not = [{ climate = 'coastal' }]", []string{"error slip-unnoticed"}},
	} {
		r := Load([]File{base(t), {Name: "x.toml", Data: []byte(row.text)}})
		require.Empty(t, r.Diagnostics, row.text)
		p := newProver(r)
		p.held = true
		for _, it := range r.items {
			for _, c := range it.conds {
				if c.node != nil && c.node.Span.File == "x.toml" {
					p.prove(it, c)
				}
			}
		}
		var got []string
		for _, d := range p.list {
			got = append(got, d.Severity.String()+" "+d.Code)
		}
		assert.Equal(t, row.want, got, row.text)
	}
}

// What a house layer may do to a hold.
func TestLoosenedHolds(t *testing.T) {
	const (
		adjusted = "[[hold]]\nid = 'hoses_first'\nadjust = true\n"
		gone     = "[[withdraw]]\nkind = 'hold'\nid = 'hoses_first'\nbecause = 'We test on the brake bench.'\n"
		own      = "[[hold]]\nid = 'bench_first'\nname = 'the bench says so'\nbecause = 'It says so.'\nsource = 'shop'\n"
		until    = "until = 'hose_age < 8'\nlifts = [{ hose_year = 2018 }]\nlifts_not = [{ hose_year = 2017 }, { hose_year = 2018, case_year = 2026 }]\n"
	)
	for _, row := range []struct {
		name, text string
		want       string
	}{
		{"only its words", adjusted + "name = 'the hoses are new'", ""},
		{"what lifts it, from every side", adjusted + "until = 'hose_look == \"sound\"'\nlifts = [{ hose_look = 'sound' }]\nlifts_not = [{ hose_look = 'crazed' }, { hose_look = 'cracked' }]", ""},
		{"what lifts it, from one side", adjusted + "until = 'hose_look == \"sound\"'\nlifts = [{ hose_look = 'sound' }]\nlifts_not = []", "loosens hoses_first"},
		{"what it stops, shown from every side", adjusted + "stops = ['driven']", ""},
		{"what it stops, from one side", adjusted + "stops = ['driven']\nlifts_not = []", "loosens hoses_first"},
		{"an act set free", adjusted + "stops = ['lifted']", `takes "road" off what the hold hoses_first stops`},
		{"an act that another hold of the layer stops", adjusted + "stops = ['lifted']\n" + own + "stops = ['road']\n" + until, ""},
		{"a danger's good", "[[suspect]]\nid = 'hoses_perished'\nadjust = true\ndanger = { kind = 'brakes', good = 'hose_age < 10', fires = [{ hose_year = 2020 }] }", "loosens hoses_perished"},
		{"taken out", gone, "withdraws the hold hoses_first"},
		{"another that stops less", gone + own + "stops = ['lifted']\n" + until, "withdraws the hold hoses_first"},
		{"another in its place", gone + own + "stops = ['road']\n" + until, ""},
		{"another in its place, from one side", gone + own + "stops = ['road']\nuntil = 'hose_age < 8'\nlifts = [{ hose_year = 2018 }]\n", "loosens bench_first"},
	} {
		var got string
		for _, d := range beside(t, "barn", row.text).Diagnostics {
			if d.Code == "loosens-hold" {
				got = d.Message
				assert.Equal(t, diag.Error, d.Severity)
			}
		}
		if row.want == "" {
			assert.Empty(t, got, row.name)
		} else {
			assert.Contains(t, got, row.want, row.name)
		}
	}
}

func opened(r *Result, id string) []Open {
	return r.Open(func(of, _ string) bool { return of == id })
}

// What is open comes with the specimen that would show it.
func TestOpenPointsAskForTheirSpecimen(t *testing.T) {
	open := opened(beside(t, "", salted+"fires = [{ years_laid_up = 4, climate = 'coastal' }]\nbut_not = [{ climate = 'dry' }, { years_laid_up = 3 }]"), "rule")
	require.Len(t, open, 1)
	require.Equal(t, ClassA, open[0].Class)
	var words []string
	for _, p := range open[0].Points {
		words = append(words, p.Words+" | "+p.Try.Asked())
	}
	assert.Equal(t, []string{
		"years_laid_up > 3 at 2 | years_laid_up = 2, otherwise as the first specimen: does it fire?",
		"`years_laid_up > 3` were `years_laid_up != 3` | years_laid_up = 2, otherwise as the first specimen: does it fire?",
	}, words)
	require.Len(t, open[0].Ask, 1)
	assert.Equal(t, "years stood: 2 years, otherwise as the first specimen: does it fire?", open[0].Ask[0].Try.InWords())
	assert.Equal(t, []string{"but_fires", "but_not", "{ years_laid_up = 2 }"}, []string{open[0].Key, open[0].KeyNot, open[0].Ask[0].Try.Written()})
}

// A suggestion never tells the answer: a condition and its opposite are asked
// about in the same words.
func TestSuggestionsAreBlind(t *testing.T) {
	asks := func(text string) (out []string) {
		for _, o := range opened(beside(t, "", text), "rule") {
			for _, s := range o.Ask {
				out = append(out, s.Try.InWords(), s.Try.Written())
			}
		}
		return out
	}
	for _, c := range []string{"years_laid_up > 3", "climate == \"dry\" and years_laid_up > 3", "engine_turns or hose_look == \"cracked\"", "min(compression) < 90"} {
		plain := asks(aRule + "when = '" + c + "'\n")
		assert.NotEmpty(t, plain, c)
		assert.Equal(t, plain, asks(aRule+"when = 'not ("+c+")'\n"), c)
	}
}

// Every suggestion for the built-in book shows, once it is a specimen, at least
// as many points as it says.
func TestSuggestionsShowWhatTheySay(t *testing.T) {
	r := Load(builtIn(t))
	p := newProver(r)
	shown := 0
	for _, it := range r.items {
		for _, c := range it.conds {
			if c.node == nil || !p.boolean(it, c) || len(c.to.Specimens) == 0 {
				continue
			}
			l := p.lens(it, c, p.run(it, c))
			l.points()
			for _, s := range l.asks {
				fresh := p.run(it, c)
				before, _ := fresh.Owed()
				unload := p.load(s.Try.specimen(c))
				require.True(t, fresh.Add(p.view, p.view.Truth(c.to.ID)))
				unload()
				after, _ := fresh.Owed()
				require.LessOrEqual(t, len(after), len(before)-s.Shows, "%s %s: %s", it.id, c.to.Text, s.Try.Asked())
				shown += s.Shows
			}
		}
	}
	t.Logf("%d points", shown)
}

// Slips that the specimen asked for by an edge would show are not told twice.
func TestHouseRuleIsAskedOnce(t *testing.T) {
	r := beside(t, "barn", strings.ReplaceAll(salted, "practice", "shop")+"fires = [{ years_laid_up = 4, climate = 'coastal' }]\nbut_not = [{ climate = 'dry' }, { years_laid_up = 3 }]")
	require.Len(t, r.Diagnostics, 1)
	assert.Equal(t, "open-edge", r.Diagnostics[0].Code)
	assert.Equal(t, diag.Warning, r.Diagnostics[0].Severity)
	assert.Contains(t, r.Diagnostics[0].Help, "years_laid_up = 2, otherwise as the first specimen: does it fire?")
}

// What cannot be decided over regions is, where a case near by tells it apart.
func TestReckonedNumbersAreDecidedNearBy(t *testing.T) {
	open := opened(beside(t, "", aRule+"when = 'hose_age > 10'\nfires = [{ hose_year = 2000 }]\nfires_not = [{ hose_year = 2020 }]"), "rule")
	require.NotEmpty(t, open)
	for _, p := range open[0].Points {
		assert.Equal(t, condition.OwedSlip, p.Kind)
		require.NotNil(t, p.Try, p.Words)
	}
}

func BenchmarkOpen(b *testing.B) {
	r := Check(builtIn(b))
	for b.Loop() {
		r.Open(func(string, string) bool { return true })
	}
}
