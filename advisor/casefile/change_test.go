package casefile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

func TestSetChangesOneValueOnly(t *testing.T) {
	for _, c := range []struct{ name, in, table, key, value, want string }{
		{"replaces a value", "[answers]\na = 1 # mine\nb = 2\n", "answers", "a", "7", "[answers]\na = 7 # mine\nb = 2\n"},
		{"adds behind the last key", "[answers]\na = 1 # mine\n\n# later\n[x]\n", "answers", "b", "2", "[answers]\na = 1 # mine\nb = 2\n\n# later\n[x]\n"},
		{"adds below a bare header", "[answers]", "answers", "b", "2", "[answers]\nb = 2\n"},
		{"adds a table", "case = 1\n", "answers", "b", "2", "case = 1\n\n[answers]\nb = 2\n"},
		{"adds a table behind an unfinished line", "case = 1", "answers", "b", "2", "case = 1\n\n[answers]\nb = 2\n"},
		{"adds beside arrays of tables", "[[answers.a]]\nis = 1\n", "answers", "b", "2", "[[answers.a]]\nis = 1\n\n[answers]\nb = 2\n"},
		{"adds to an inline table", "answers = { a = 1 } # x\n", "answers", "b", "2", "answers = { a = 1, b = 2 } # x\n"},
		{"adds to an empty inline table", "answers = {}\n", "answers", "b", "2", "answers = { b = 2 }\n"},
		{"adds a dotted key", "answers.a = 1\n", "answers", "b", "2", "answers.a = 1\nanswers.b = 2\n"},
		{"keeps the file's line ends", "[answers]\r\na = 1\r\n", "answers", "b", "2", "[answers]\r\na = 1\r\nb = 2\r\n"},
		{"replaces a long form", "[answers]\na = { is = 1, how = \"owner\" } # x\n", "answers", "a", "[1, 2]", "[answers]\na = [1, 2] # x\n"},
		{"replaces over several lines", "[answers]\na = [\n 1, # one\n 2,\n]\n", "answers", "a", "3", "[answers]\na = 3\n"},
		{"sets a top key", "case = 1\n\n[answers]\n", "", "care", `"thrifty"`, "case = 1\ncare = \"thrifty\"\n\n[answers]\n"},
		{"begins an empty file", "", "", "case", "1", "case = 1\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Set([]byte(c.in), c.table, c.key, c.value)
			require.NoError(t, err)
			assert.Equal(t, c.want, string(got))
		})
	}
}

func TestSetRefuses(t *testing.T) {
	for _, c := range []struct{ name, in, key, value, says string }{
		{"what is not TOML", "[answers\n", "a", "1", "this is not TOML"},
		{"a value that is none", "[answers]\n", "a", "][", "would not read back"},
		{"a table of its own", "[answers.a]\nis = 1\n", "a", "1", "header of its own"},
		{"tables of its own", "[[answers.a]]\nis = 1\n", "a", "1", "header of its own"},
		{"no table", "answers = 5\n", "a", "1", "not a table"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Set([]byte(c.in), "answers", c.key, c.value)
			assert.ErrorContains(t, err, c.says)
		})
	}
}

var oil = &advisor.Question{ID: "oil", Kind: advisor.Choice, How: advisor.Seen, Options: []advisor.Option{{ID: "clear"}, {ID: "milky"}}}

func TestAnotherKeepsTheFirst(t *testing.T) {
	second := Entry{Is: "milky", How: advisor.Owner, Note: "told us"}
	for _, c := range []struct{ name, in, want string }{
		{"none yet", "[answers]\n", "[answers]\noil = { is = \"milky\", how = \"owner\", note = \"told us\" }\n"},
		{"a short one", "[answers]\noil = \"clear\" # mine\n",
			"[answers]\noil = [\n  { is = \"clear\" },\n  { is = \"milky\", how = \"owner\", note = \"told us\" },\n] # mine\n"},
		{"a long one", "[answers]\noil = { not = [\"milky\"] }\n",
			"[answers]\noil = [\n  { not = [\"milky\"] },\n  { is = \"milky\", how = \"owner\", note = \"told us\" },\n]\n"},
		{"a list", "[answers]\noil = [{ is = \"clear\" }] # mine\n",
			"[answers]\noil = [{ is = \"clear\" }, { is = \"milky\", how = \"owner\", note = \"told us\" }] # mine\n"},
		{"headed tables", "[[answers.oil]]\nis = \"clear\" # mine\n\n[x]\n",
			"[[answers.oil]]\nis = \"clear\" # mine\n\n[[answers.oil]]\nis = \"milky\"\nhow = \"owner\"\nnote = \"told us\"\n\n[x]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Another([]byte(c.in), oil, second)
			require.NoError(t, err)
			assert.Equal(t, c.want, string(got))
			root, faults := tomltext.Parse("t", got)
			require.Empty(t, faults)
			answers, faults := ReadAnswers(oil, root.Get("answers").Get("oil"), 2025)
			require.Empty(t, faults)
			last := answers[len(answers)-1]
			assert.Equal(t, "told us", last.Note)
			assert.Equal(t, advisor.Owner, last.How)
			assert.Equal(t, uint64(2), last.Value.Options)
		})
	}
}

func TestDecide(t *testing.T) {
	for _, c := range []struct {
		name, in, list string
		d              advisor.Decision
		want           string
	}{
		{"the first", "case = 1\n", "done", advisor.Decision{Operation: "a"}, "case = 1\n\n[decisions]\ndone = [\"a\"]\n"},
		{"another", "[decisions]\ndone = [\"a\"] # x\n", "done", advisor.Decision{Operation: "b"}, "[decisions]\ndone = [\"a\", \"b\"] # x\n"},
		{"into an empty list", "[decisions]\ndone = []\n", "done", advisor.Decision{Operation: "b"}, "[decisions]\ndone = [\"b\"]\n"},
		{"one that is there", "[decisions]\ndone = [\"a\"]\n", "done", advisor.Decision{Operation: "a"}, "[decisions]\ndone = [\"a\"]\n"},
		{"the other way round", "[decisions]\ndeclined = [\"a\", \"b\"]\n", "accepted", advisor.Decision{Operation: "a"},
			"[decisions]\ndeclined = [\"b\"]\naccepted = [\"a\"]\n"},
		{"the last of the other", "[decisions]\naccepted = [\"a\"]\n", "declined", advisor.Decision{Operation: "a"},
			"[decisions]\naccepted = []\ndeclined = [\"a\"]\n"},
		{"with who and why", "case = 1\n", "accepted", advisor.Decision{Operation: "a", By: "owner", Note: "rang", Date: "2025-10-14"},
			"case = 1\n\n[decisions]\naccepted = [{ operation = \"a\", by = \"owner\", on = \"2025-10-14\", note = \"rang\" }]\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Decide([]byte(c.in), c.list, c.d)
			require.NoError(t, err)
			assert.Equal(t, c.want, string(got))
		})
	}
	_, err := Decide(nil, "denied", advisor.Decision{Operation: "a"})
	assert.ErrorContains(t, err, "no decision")
	_, err = Decide([]byte("[[decisions.declined]]\noperation = \"a\"\n"), "accepted", advisor.Decision{Operation: "a"})
	assert.ErrorContains(t, err, "by hand")
}

func TestForecastIsNeverReckonedAgain(t *testing.T) {
	b := &advisor.Book{Fingerprint: "f00d", Layers: []string{"house"}}
	once, err := Freeze([]byte("case = 1\n"), map[string]float64{"b": 0.25, "a": 1.0 / 3}, b)
	require.NoError(t, err)
	assert.Equal(t, "case = 1\n\n[forecast]\na = 0.3333\nb = 0.2500\n\n[book]\nfingerprint = \"f00d\"\nlayers = [\"house\"]\n", string(once))
	twice, err := Freeze(once, map[string]float64{"a": 0.9}, b)
	require.NoError(t, err)
	assert.Equal(t, string(once), string(twice))
}

func TestEntryInTOML(t *testing.T) {
	from := 3.0
	for _, c := range []struct {
		e    Entry
		want string
	}{
		{Entry{Is: "clear"}, `"clear"`},
		{Entry{Is: 11.0}, `11`},
		{Entry{Is: 9.65}, `9.65`},
		{Entry{Is: -0.5}, `-0.5`},
		{Entry{Is: true}, `true`},
		{Entry{Is: []string{}}, `[]`},
		{Entry{Is: []float64{140, 9.5}}, `[140, 9.5]`},
		{Entry{Is: `a "b" \ c`}, `"a \"b\" \\ c"`},
		{Entry{From: &from}, `{ from = 3 }`},
		{Entry{Not: []string{"a"}, How: advisor.Owner}, `{ not = ["a"], how = "owner" }`},
		{Entry{Is: 1.0, On: "2025-10-14", By: "x"}, `{ is = 1, how = "seen", on = 2025-10-14, by = "x" }`},
	} {
		got, err := c.e.TOML(oil)
		require.NoError(t, err)
		assert.Equal(t, c.want, got)
	}
	_, err := Entry{Is: 1.0, On: "yesterday"}.TOML(oil)
	assert.ErrorContains(t, err, "no date")
}

func TestNewCaseReads(t *testing.T) {
	c, faults := Read("x.toml", New(`the "red" one`, "2025-10-14"), &advisor.Book{})
	assert.Empty(t, faults)
	assert.Equal(t, `the "red" one`, c.Name)
	assert.True(t, strings.HasSuffix(string(New("a", "2025-10-14")), "[answers]\n"))
}
