package interview

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

var (
	years    = &advisor.Question{ID: "years", Kind: advisor.NumberKind, Unit: "years", Low: 0, High: 100, How: advisor.Owner}
	oilBar   = &advisor.Question{ID: "oil", Kind: advisor.NumberKind, Unit: "bar", Low: 0, High: 20, Step: 0.1, How: advisor.Measured}
	depth    = &advisor.Question{ID: "tread", Kind: advisor.NumberKind, Unit: "mm", Low: 0, High: 20, Step: 0.1, How: advisor.Measured}
	cold     = &advisor.Question{ID: "cold", Kind: advisor.NumberKind, Unit: "C", Low: -60, High: 30, How: advisor.Owner}
	distance = &advisor.Question{ID: "distance", Kind: advisor.NumberKind, Unit: "km", Low: 0, High: 2e6, How: advisor.Seen}
	sum      = &advisor.Question{ID: "sum", Kind: advisor.NumberKind, Unit: "money", Low: 0, High: 1e6, How: advisor.Owner}
	year     = &advisor.Question{ID: "year", Kind: advisor.Year, Low: 1885, High: 2030, How: advisor.Paper}
	bores    = &advisor.Question{ID: "bores", Kind: advisor.ReadingsKind, Unit: "psi", How: advisor.Measured}
	turns    = &advisor.Question{ID: "turns", Kind: advisor.YesNoKind, How: advisor.Seen}
	code     = &advisor.Question{ID: "code", Kind: advisor.Code, CodeOf: "tyre_date", How: advisor.Seen}
	keys     = &advisor.Question{ID: "keys", Kind: advisor.Text, How: advisor.Seen}
	floor    = &advisor.Question{ID: "floor", Kind: advisor.Choice, How: advisor.Owner, Options: []advisor.Option{
		{ID: "dry_hard", Name: "dry concrete"}, {ID: "damp_hard", Name: "concrete that sweats"}, {ID: "earth", Name: "earth"}}}
	found = &advisor.Question{ID: "found", Kind: advisor.Choices, How: advisor.Seen, Options: []advisor.Option{
		{ID: "mud", Name: "mud"}, {ID: "oil_film", Name: "a film of oil"}, {ID: "rust", Name: "rust"}}}
)

func about(q *advisor.Question) *Prompt {
	p := &Prompt{Question: q, currency: "GBP", day: 2025.8}
	for i := range q.Options {
		p.Options = append(p.Options, q.Options[i].Name)
	}
	p.Form = p.form()
	return p
}

func TestTypedAnswers(t *testing.T) {
	for _, c := range []struct {
		q           *advisor.Question
		typed, toml string
		shown       string
	}{
		{years, "11", `11`, "11 years"},
		{years, "about ten", `"9 to 11"`, "9 to 11 years"},
		{years, "10ish", `"9 to 11"`, "9 to 11 years"},
		{years, "~ 7", `"6 to 8"`, "6 to 8 years"},
		{years, "about 100", `"90 to 100"`, "90 to 100 years"},
		{years, "5 to 8", `"5 to 8"`, "5 to 8 years"},
		{years, "5-8", `"5 to 8"`, "5 to 8 years"},
		{years, "5 – 8", `"5 to 8"`, "5 to 8 years"},
		{years, "between five and eight", `"5 to 8"`, "5 to 8 years"},
		{years, "5 or 6", `"5 to 6"`, "5 to 6 years"},
		{years, "18 months", `1.5`, "1.5 years (18 months)"},
		{years, "6 to 18 months", `"0.5 to 1.5"`, "0.5 to 1.5 years (6 months to 18 months)"},
		{years, "at least 3", `{ from = 3 }`, "at least 3 years"},
		{years, "3 or more", `{ from = 3 }`, "at least 3 years"},
		{years, "under 5", `{ to = 5 }`, "at most 5 years"},
		{years, "up to 5", `{ to = 5 }`, "at most 5 years"},
		{years, "a dozen", `12`, "12 years"},
		{years, "Twenty-five years", `25`, "25 years"},
		{years, "2 1/2", `2.5`, "2.5 years"},
		{years, "2,5", `2.5`, "2.5 years"},
		{years, "11 @seen", `{ is = 11, how = "seen" }`, "11 years (seen)"},
		{years, "11 @second # the neighbour", `{ is = 11, how = "secondhand", note = "the neighbour" }`, "11 years (secondhand)"},
		{years, "11@seen", `{ is = 11, how = "seen" }`, "11 years (seen)"},
		{years, "11 # the neighbour @second", `{ is = 11, how = "secondhand", note = "the neighbour" }`, "11 years (secondhand)"},
		{years, "11 # write to a@b.example", `{ is = 11, how = "owner", note = "write to a@b.example" }`, "11 years"},
		{years, "don’t know", `"can't tell"`, "cannot be told"},
		{years, "hidden", `"hidden"`, "cannot be seen until something is off"},
		{oilBar, "9.6 bar", `9.6`, "9.6 bar"},
		{oilBar, "140 psi", `9.65266`, "9.653 bar (140 psi)"},
		{oilBar, "60 to 65 psi", `"4.13685 to 4.48159"`, "4.13685 to 4.48159 bar (60 psi to 65 psi)"},
		{oilBar, "about 1.6", `"1.4 to 1.8"`, "1.4 to 1.8 bar"},
		{depth, "3/32 in", `2.38125`, "2.381 mm (3/32 in)"},
		{cold, "62 F", `16.6667`, "16.67 C (62 F)"},
		{cold, "minus ten", `-10`, "-10 C"},
		{cold, "-10 to -5", `"-10 to -5"`, "-10 to -5 C"},
		{cold, "14 F to 23 F", `"-10 to -5"`, "-10 to -5 C (14 F to 23 F)"},
		{cold, "about -10", `"-11 to -9"`, "-11 to -9 C"},
		{distance, "85,000 miles", `136794`, "136794 km (85,000 miles)"},
		{sum, "£ 2500", `2500`, "2500 GBP"},
		{sum, "2500 gbp", `2500`, "2500 GBP"},
		{year, "1964", `1964`, "1964"},
		{year, "about 1965", `"1963 to 1967"`, "1963 to 1967"},
		{year, "1964-66", `"1964 to 1966"`, "1964 to 1966"},
		{year, "the 1970s", `"1970 to 1979"`, "1970 to 1979"},
		{bores, "140 138 142 136", `[140, 138, 142, 136]`, "140, 138, 142, 136 psi"},
		{bores, "140, 138,  142 and 136 psi", `[140, 138, 142, 136]`, "140, 138, 142, 136 psi"},
		{bores, "140/138/142", `[140, 138, 142]`, "140, 138, 142 psi"},
		{bores, "9,6 9,4 bar", `[139.236, 136.335]`, "139.2, 136.3 psi (9,6 9,4 bar)"},
		{bores, "140 psi 138 psi", `[140, 138]`, "140, 138 psi"},
		{turns, "Y", `true`, "yes"},
		{turns, "no @owner", `{ is = false, how = "owner" }`, "no (owner)"},
		{code, "2309", `"2309"`, "2309"},
		{keys, "one key, a blanket", `"one key, a blanket"`, "one key, a blanket"},
		{keys, "c", `"can't tell"`, "cannot be told"},
		{keys, "Can't tell # owner abroad", `{ is = "can't tell", how = "seen", note = "owner abroad" }`, "cannot be told"},
		{keys, "x", `"hidden"`, "cannot be seen until something is off"},
		{keys, `"c"`, `"c"`, "c"},
		{keys, `"stop"`, `"stop"`, "stop"},
		{keys, "mail a@b.example # twice", `{ is = "mail a@b.example", how = "seen", note = "twice" }`, "mail a@b.example"},
		{floor, "2", `"damp_hard"`, "concrete that sweats"},
		{floor, "Earth", `"earth"`, "earth"},
		{floor, "damp hard", `"damp_hard"`, "concrete that sweats"},
		{floor, "dry", `"dry_hard"`, "dry concrete"},
		{floor, "1 or 2", `"dry_hard or damp_hard"`, "dry concrete, or concrete that sweats"},
		{floor, "not 3", `"not earth"`, "anything but earth"},
		{floor, "not 1 or 3", `"not dry_hard or earth"`, "anything but dry concrete or earth"},
		{found, "none", `[]`, "none of these"},
		{found, "1 3", `["mud", "rust"]`, "mud; rust"},
		{found, "mud, a film of oil", `["mud", "oil_film"]`, "mud; a film of oil"},
		{found, "not mud", `{ not = ["mud"] }`, "not mud"},
		{found, "all", `["mud", "oil_film", "rust"]`, "mud; a film of oil; rust"},
	} {
		t.Run(c.q.ID+" "+c.typed, func(t *testing.T) {
			if c.toml == "" {
				_, err := about(c.q).Read(c.typed)
				require.Error(t, err)
				return
			}
			readAs(t, c.q, c.typed, c.toml, c.shown)
		})
	}
}

// readAs checks what a case holds of what was typed, and what is said back.
func readAs(t *testing.T, q *advisor.Question, typed, toml, shown string) {
	t.Helper()
	r, err := about(q).Read(typed)
	require.NoError(t, err)
	text, err := r.Entry.TOML(q)
	require.NoError(t, err)
	assert.Equal(t, toml, text)
	assert.Equal(t, shown, r.Shown)
	readsBack(t, q, typed, r)
}

func TestTypedFaults(t *testing.T) {
	for _, c := range []struct {
		q           *advisor.Question
		typed, says string
	}{
		{years, "200", "out of range"},
		{years, "8 to 5", "is more than"},
		{years, "blue", "does not begin with a figure"},
		{years, "not 5", "not answered by what it is not"},
		{years, "1,250", "can be read as"},
		{years, "11 @dream", "no way of knowing"},
		{years, "# only a note", "no answer before the remark"},
		{oilBar, "5 kg", "wanted in bar"},
		{turns, "perhaps", "neither yes nor no"},
		{floor, "4", "none of the options"},
		{floor, "erth", `did you mean "earth"`},
		{floor, "1 2", "one answer is wanted"},
		{floor, "not 1 or 2 or 3", "leaves no option"},
		{found, "moss", "none of the options"},
		{code, "9999", "code"},
		{years, "station moon", "no station"},
	} {
		t.Run(c.q.ID+" "+c.typed, func(t *testing.T) {
			_, err := about(c.q).Read(c.typed)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
		})
	}
}

func TestCommandsByKeyAndByWord(t *testing.T) {
	for _, c := range Commands {
		for _, typed := range []string{c.Key, string(c.Word), ":" + string(c.Word), " " + c.Key + " "} {
			for _, q := range []*advisor.Question{years, turns, keys, floor, found, code, bores, year} {
				r, err := about(q).Read(typed)
				require.NoError(t, err)
				assert.Equal(t, c.Word, r.Command, "%s at %s", typed, q.ID)
			}
		}
	}
	r, err := about(years).Read("s underneath")
	require.NoError(t, err)
	assert.Equal(t, "underneath", r.Station)
	r, err = about(years).Read("   ")
	require.NoError(t, err)
	assert.Equal(t, Skip, r.Command)
}

func FuzzTyped(f *testing.F) {
	for _, s := range []string{"5 to 8", "about ten psi", "not 1 or", "@", "#", "a # @", "1/0", "ish", "- -", "½", "~", "\xff", `"`, "1970s", "140,,138", "60k miles", "half an inch",
		"a year and a half", "since '98", "late 80s", "1998/99", "two dozen or so", "10+ k", "5 to 6k", "5 years 6 months", "1.500", "x or c"} {
		f.Add(s)
	}
	all := []*advisor.Question{years, oilBar, sum, year, distance, depth, cold, glycol, bores, turns, code, keys, floor, found}
	f.Fuzz(func(t *testing.T, typed string) {
		for _, q := range all {
			r, err := about(q).Read(typed)
			if err != nil || r.Command != None {
				continue
			}
			if r.Answer.Value.State == advisor.NotAsked {
				t.Errorf("%q at %s is an answer that says nothing", typed, q.ID)
			}
			readsBack(t, q, typed, r)
		}
	})
}

// TestNow: an answer that the case has is said as people say it.
func TestNow(t *testing.T) {
	for _, c := range []struct {
		q              *advisor.Question
		written, words string
	}{
		{sum, "5000 to 6000", "5000 to 6000 GBP"},
		{sum, "from 5", "at least 5 GBP"},
		{years, "to 3", "at most 3 years"},
		{distance, "96560.6", "96561 km"},
		{distance, "96560.6 to 104607", "96561 to 104607 km"},
		{depth, "2.38125", "2.381 mm"},
		{depth, "100.25", "100.25 mm"},
		{cold, "-16.6667", "-16.67 C"},
		{years, "0.114990", "0.115 years"},
		{year, "from 2010", "2010 or later"},
		{year, "to 2009", "2009 or before"},
		{keys, "from 2 to 3.000000 keys", "from 2 to 3.000000 keys"},
	} {
		a := &advisor.Answer{Question: c.q.ID, Written: c.written, Value: advisor.Value{State: advisor.Told}}
		assert.Equal(t, c.words, about(c.q).now(a))
	}
	assert.Equal(t, "looked, cannot say", about(sum).now(&advisor.Answer{Value: advisor.Value{State: advisor.CantTell}}))
}
