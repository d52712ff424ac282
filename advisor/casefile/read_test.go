package casefile

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// vocabulary is a small book's worth of questions, one of each kind.
func vocabulary() *advisor.Book {
	options := func(ids ...string) (out []advisor.Option) {
		for _, id := range ids {
			out = append(out, advisor.Option{ID: id})
		}
		return out
	}
	return &advisor.Book{
		Questions: []advisor.Question{
			{ID: "turns", Kind: advisor.YesNoKind, How: advisor.Seen},
			{ID: "climate", Kind: advisor.Choice, Options: options("dry", "damp", "coastal"), How: advisor.Owner},
			{ID: "finds", Kind: advisor.Choices, Options: options("mud", "oil_film", "nest"), How: advisor.Seen},
			{ID: "mileage", Kind: advisor.NumberKind, Unit: "km", Low: 0, High: 900_000, How: advisor.Owner},
			{ID: "low", Kind: advisor.NumberKind, Unit: "C", Low: -60, High: 30, How: advisor.Owner},
			{ID: "compression", Kind: advisor.ReadingsKind, Unit: "psi", Low: 0, High: 600, How: advisor.Measured},
			{ID: "made", Kind: advisor.Year, Low: 1900, High: 2100, How: advisor.Paper},
			{ID: "tyre", Kind: advisor.Code, CodeOf: "tyre_date", How: advisor.Seen},
			{ID: "wish", Kind: advisor.Text, How: advisor.Owner},
		},
		Operations: []advisor.Operation{{ID: "head_off"}, {ID: "radiator"}, {ID: "battery"}},
		Suspects:   []advisor.Suspect{{ID: "gasket_leak"}},
	}
}

const head = "case = 1\ndate = 2025-10-14\n"

func faultLines(l diag.List) string {
	var b strings.Builder
	for i := range l {
		fmt.Fprintln(&b, l[i].Line())
		if l[i].Help != "" {
			fmt.Fprintln(&b, "  "+l[i].Help)
		}
		for _, r := range l[i].Related {
			fmt.Fprintln(&b, "  "+r.At.String()+" "+r.Message)
		}
	}
	return b.String()
}

func TestAnswers(t *testing.T) {
	told := func(v advisor.Value) advisor.Value { v.State = advisor.Told; return v }
	tests := []struct {
		text    string
		want    advisor.Value
		how     advisor.Channel
		written string
	}{
		{`turns = true`, advisor.YesNo(true), advisor.Seen, "true"},
		{`turns = "no"`, advisor.YesNo(false), advisor.Seen, "no"},
		{`turns = "hidden"`, advisor.Value{State: advisor.Hidden}, advisor.Seen, "hidden"},
		{`turns = "can't tell"`, advisor.Value{State: advisor.CantTell}, advisor.Seen, "can't tell"},
		{`turns = { is = "can't tell", how = "owner" }`, advisor.Value{State: advisor.CantTell}, advisor.Owner, "can't tell"},
		{`climate = "damp"`, advisor.OneOf(2), advisor.Owner, "damp"},
		{`climate = "not dry"`, advisor.OneOf(6), advisor.Owner, "not dry"},
		{`climate = "not dry or damp"`, advisor.OneOf(4), advisor.Owner, "not dry or damp"},
		{`climate = "dry or damp"`, advisor.OneOf(3), advisor.Owner, "dry or damp"},
		{`climate = { not = ["coastal"], how = "paper" }`, advisor.OneOf(3), advisor.Paper, "not coastal"},
		{`climate = { any_of = ["dry", "coastal"] }`, advisor.OneOf(5), advisor.Owner, "dry or coastal"},
		{`finds = ["mud", "nest"]`, told(advisor.Value{Yes: 5, No: 2}), advisor.Seen, `["mud", "nest"]`},
		{`finds = []`, told(advisor.Value{No: 7}), advisor.Seen, "[]"},
		{`finds = "mud"`, told(advisor.Value{Yes: 1, No: 6}), advisor.Seen, "mud"},
		{`finds = { not = ["mud"] }`, told(advisor.Value{No: 1}), advisor.Seen, "not mud"},
		{`finds = "mud or nest"`, told(advisor.Value{No: 2}), advisor.Seen, "mud or nest"},
		{`finds = "not mud or nest"`, told(advisor.Value{No: 5}), advisor.Seen, "not mud or nest"},
		{`finds = "not mud or oil_film"`, told(advisor.Value{No: 3}), advisor.Seen, "not mud or oil_film"},
		{`finds = { any_of = ["mud", "nest"] }`, told(advisor.Value{No: 2}), advisor.Seen, "mud or nest"},
		{`mileage = 134000`, advisor.Number(134000), advisor.Owner, "134000"},
		{`mileage = 1_000.5`, advisor.Number(1000.5), advisor.Owner, "1_000.5"},
		{`mileage = "80000 to 90000"`, advisor.NumberRange(80000, 90000), advisor.Owner, "80000 to 90000"},
		{`mileage = { from = 5, to = 8, how = "paper" }`, advisor.NumberRange(5, 8), advisor.Paper, "5 to 8"},
		{`mileage = { from = 5 }`, advisor.NumberRange(5, 900_000), advisor.Owner, "from 5"},
		{`mileage = { to = 5 }`, advisor.NumberRange(0, 5), advisor.Owner, "to 5"},
		{`low = "-20 to -5.5"`, advisor.NumberRange(-20, -5.5), advisor.Owner, "-20 to -5.5"},
		{`compression = [140, 138.5, 0]`, told(advisor.Value{Readings: []float64{140, 138.5, 0}}), advisor.Measured, "[140, 138.5, 0]"},
		{`compression = 140`, told(advisor.Value{Readings: []float64{140}}), advisor.Measured, "140"},
		{`made = 1966`, advisor.Number(1966), advisor.Paper, "1966"},
		{`made = "1964 to 1967"`, advisor.NumberRange(1964, 1967), advisor.Paper, "1964 to 1967"},
		{`wish = "hidden away"`, told(advisor.Value{Text: "hidden away"}), advisor.Owner, "hidden away"},
		{`wish = "can't tell"`, advisor.Value{State: advisor.CantTell}, advisor.Owner, "can't tell"},
	}
	for _, tt := range tests {
		c, faults := Read("x.toml", []byte(head+"[answers]\n"+tt.text), vocabulary())
		require.Empty(t, faultLines(faults), tt.text)
		require.Len(t, c.Answers, 1, tt.text)
		assert.Equal(t, tt.want, c.Answers[0].Value, tt.text)
		assert.Equal(t, tt.how, c.Answers[0].How, tt.text)
		assert.Equal(t, tt.written, c.Answers[0].Written, tt.text)
		assert.Equal(t, 4, c.Answers[0].At.Line, tt.text)
	}
}

func TestTyreCodes(t *testing.T) {
	tests := []struct {
		code     string
		from, to float64
	}{{"2309", 2009.4, 2009.5}, {"DOT AB CD 2309", 2009.4, 2009.5}, {"239", 1979.4, 1999.5}}
	for _, tt := range tests {
		c, faults := Read("x.toml", []byte(head+"[answers]\ntyre = \""+tt.code+"\""), vocabulary())
		require.Empty(t, faultLines(faults), tt.code)
		v := c.Answers[0].Value
		assert.InDelta(t, tt.from, v.Low, 0.1, tt.code)
		assert.InDelta(t, tt.to, v.High, 0.1, tt.code)
		assert.Equal(t, tt.code, v.Text)
	}
}

func TestSeveralAnswers(t *testing.T) {
	for _, text := range []string{
		"[[answers.climate]]\nis = \"dry\"\nhow = \"owner\"\n[[answers.climate]]\nis = \"damp\"\nhow = \"seen\"\nnote = \"n\"\non = 2025-10-13\nby = \"ab\"\n",
		"[answers]\nclimate = [{ is = \"dry\", how = \"owner\" }, { is = \"damp\", how = \"seen\", note = \"n\", on = \"2025-10-13\", by = \"ab\" }]\n",
	} {
		c, faults := Read("x.toml", []byte(head+text), vocabulary())
		require.Empty(t, faultLines(faults))
		require.Len(t, c.Answers, 2)
		assert.Equal(t, advisor.Owner, c.Answers[0].How)
		b := c.Answers[1]
		b.At = advisor.Place{}
		assert.Equal(t, advisor.Answer{Question: "climate", Value: advisor.OneOf(2), Written: "damp", How: advisor.Seen, Note: "n", By: "ab", On: "2025-10-13"}, b)
	}
}

func TestWholeCase(t *testing.T) {
	c, faults := Read("dir/estate.toml", []byte(`case = 1
name = "Estate"
date = 2025-07-02
care = "normal"
words = "weekend use"
[decisions]
accepted = ["head_off", { operation = "radiator", by = "owner", on = 2025-07-02, note = "by telephone" }]
declined = []
done = ["battery"]
[[overruled]]
operation = "radiator"
call = "leave"
by = "foreman"
why = "it was new last year"
on = 2025-07-02
[forecast]
gasket_leak = 0.0312
gone = 1
[book]
fingerprint = "abc"
layers = ["barn"]
`), vocabulary())
	assert.Equal(t, "dir/estate.toml:18:1: warning: the book has no suspect \"gone\" [unknown-suspect]\n  allowed are \"gasket_leak\"\n", faultLines(faults))
	assert.Equal(t, "estate", c.ID)
	assert.Equal(t, "2025-07-02", c.Date)
	assert.InDelta(t, 2025+182.0/365, c.Day, 1e-9)
	assert.Equal(t, "radiator", c.Accepted[1].Operation)
	assert.Equal(t, "by telephone", c.Accepted[1].Note)
	assert.Equal(t, "leave", c.Overruled[0].Call)
	assert.Equal(t, map[string]float64{"gasket_leak": 0.0312, "gone": 1}, c.Forecast)
	assert.Equal(t, []string{"barn"}, c.Layers)
	assert.Empty(t, c.Answers)
}

func FuzzRead(f *testing.F) {
	for _, tt := range badCases {
		f.Add([]byte(tt.text))
	}
	f.Add([]byte(head + "[answers]\nclimate = \"not dry or damp\"\ntyre = \"2309\"\n"))
	book := vocabulary()
	f.Fuzz(func(t *testing.T, data []byte) {
		c, faults := Read("x.toml", data, book)
		require.NotNil(t, c)
		for _, d := range faults {
			require.True(t, 0 <= d.At.Start && d.At.Start <= d.At.End && d.At.End <= len(data), "%+v", d)
		}
		for _, a := range c.Answers {
			if a.Value.State != advisor.Told {
				continue
			}
			require.LessOrEqual(t, a.Value.Low, a.Value.High)
			require.Zero(t, a.Value.Yes&a.Value.No)
		}
	})
}

func TestReadLimited(t *testing.T) {
	data, faults, err := tomltext.ReadLimited("x.toml", strings.NewReader("case = 1"), 8)
	require.NoError(t, err)
	assert.Empty(t, faults)
	assert.Equal(t, "case = 1", string(data))
	data, faults, err = tomltext.ReadLimited("x.toml", strings.NewReader("case = 12"), 8)
	require.NoError(t, err)
	assert.Empty(t, data)
	assert.Equal(t, "x.toml: error: the file is larger than 0 KB [file-too-large]\n", faultLines(faults))
}
