package book

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// TestUsualSettings: a book that says nothing has the usual figures.
func TestUsualSettings(t *testing.T) {
	s := Load([]File{base(t)}).Book.Settings
	assert.Equal(t, int64(8000), s.Rate)
	assert.Equal(t, map[string]advisor.Price{"thrifty": {Num: 7, Den: 10}, "normal": {Num: 1, Den: 1}, "thorough": {Num: 3, Den: 2}}, s.Care)
	assert.Equal(t, [5]advisor.Trust{{Hit: 1}, {Hit: 1}, {Hit: .95, FalseAlarm: .05}, {Hit: .9, FalseAlarm: .2}, {Hit: .7, FalseAlarm: .3}}, s.Trust)
	assert.Equal(t, 2, s.MinorDigits)
}

func TestWhatIsLeftOut(t *testing.T) {
	b := Load([]File{base(t)}).Book
	how := map[string]advisor.Channel{}
	var order []string
	for _, q := range b.Questions {
		how[q.ID] = q.How
		order = append(order, q.ID)
	}
	assert.Equal(t, []string{"climate", "years_laid_up", "remarks", "tyre_code", "engine_turns", "oil_finds", "hose_look", "compression", "hose_year"}, order, "by station, then as in the file")
	assert.Equal(t, advisor.Owner, how["climate"])
	assert.Equal(t, advisor.Measured, how["compression"])
	assert.Equal(t, advisor.Seen, how["hose_year"])
	s := b.Suspects[1]
	assert.Equal(t, "hoses_perished", s.ID)
	assert.Equal(t, s.Because, s.Bases[0].Because, "a base takes the suspect's reason")
	assert.Equal(t, s.Sources, s.Danger.Sources)
	assert.Equal(t, "shop", b.Operations[0].Who)
	assert.Equal(t, int64(30000), b.Suspects[0].IfLeft[0].Cost)
	assert.Equal(t, []string{"practice", "shop"}, []string{b.Sources[0].ID, b.Sources[1].ID}, "there without being declared")
}

// TestSpecimensOfABook: a change keeps the other answers of the first specimen.
func TestSpecimensOfABook(t *testing.T) {
	b := Load([]File{base(t)}).Book
	good := b.Suspects[1].Danger.Good
	require.Len(t, good.Specimens, 6)
	first, second := good.Specimens[0], good.Specimens[1]
	assert.Equal(t, advisor.True, first.Want)
	assert.Equal(t, advisor.False, second.Want)
	value := func(s advisor.Specimen, id string) advisor.Value {
		i := slices.IndexFunc(s.Answers, func(a advisor.Answer) bool { return a.Question == id })
		require.GreaterOrEqual(t, i, 0)
		return s.Answers[i].Value
	}
	assert.Equal(t, advisor.OneOf(1), value(first, "hose_look"))
	assert.Equal(t, advisor.OneOf(4), value(second, "hose_look"))
	assert.Equal(t, value(first, "hose_year"), value(second, "hose_year"))
}

func TestFingerprint(t *testing.T) {
	one, two := File{Name: "a", Data: []byte("x")}, File{Name: "b", Data: []byte("y")}
	print := func(files ...File) string { return fingerprint(files) }
	want := print(one, two)
	assert.Len(t, want, 64)
	assert.Equal(t, want, print(two, one))
	for _, other := range [][]File{{one}, {one, {Name: "b", Data: []byte("z")}}, {one, {Name: "c", Data: []byte("y")}}, {one, {Name: "b", Layer: "house", Data: []byte("y")}}, {{Name: "ab"}, {Name: "xy"}}} {
		assert.NotEqual(t, want, print(other...))
	}
}

func TestPrice(t *testing.T) {
	for text, want := range map[string]advisor.Price{"0.7": {Num: 7, Den: 10}, "1": {Num: 1, Den: 1}, "1.50": {Num: 3, Den: 2}, "0.01": {Num: 1, Den: 100}, "100": {Num: 100, Den: 1}} {
		got, ok := price(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "0", "-1", "+1", "101", "1e2", "0.00001", "one", "1.2.3", "1_0", "0.009"} {
		_, ok := price(text)
		assert.False(t, ok, text)
	}
}

// TestUnreadableFileSparesTheOthers: what is missing may stand in it.
func TestUnreadableFileSparesTheOthers(t *testing.T) {
	r := Check([]File{base(t), {Name: "x.toml", Data: []byte("[[sign]]\nid = 'x\n")}, {Name: "y.toml", Data: []byte("[[operation]]\nid = 'o'\nneds = []\n")}})
	assert.Nil(t, r.Program)
	assert.Equal(t, []string{"toml-syntax", "missing-key", "missing-key", "missing-key", "missing-key", "unknown-key"}, codesOf(r.Diagnostics))
	assert.Len(t, r.Book.Questions, 9, "what could be read is there")
}
