package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"longstand/advisor/casefile"
	"longstand/advisor/interview"
)

// fleet writes n cases into a folder, each a car of the stored cases with some
// answers changed, added or made unknown, the same on every run.
func fleet(t testing.TB, folder string, n int) {
	e, err := (&door{errs: os.Stderr}).engine()
	require.NoError(t, err)
	cars, err := filepath.Glob("../../testdata/cases/practice/*.toml")
	require.NoError(t, err)
	cars = append(cars, "../../testdata/cases/demo.toml")
	random := rand.New(rand.NewPCG(1, 2))
	questions := e.Book().Questions
	var texts [][]byte
	var sittings []*interview.Interview
	for _, car := range cars {
		data, err := os.ReadFile(car)
		require.NoError(t, err)
		c, faults := casefile.Read("car.toml", data, e.Book())
		require.False(t, faults.HasErrors())
		texts, sittings = append(texts, data), append(sittings, interview.New(e, c, interview.Options{}))
	}
	for i := range n {
		data, iv := texts[i%len(cars)], sittings[i%len(cars)]
		for range 1 + random.IntN(12) {
			q := &questions[random.IntN(len(questions))]
			reply, err := iv.About(q).Read(typedFor(q, random.IntN(60)))
			if err != nil {
				continue // out of the question's range
			}
			if changed, err := casefile.Answer(data, q, reply.Entry); err == nil {
				data = changed
			}
		}
		if _, faults := casefile.Read("car.toml", data, e.Book()); faults.HasErrors() {
			continue
		}
		require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("car%05d.toml", i)), data, 0o600))
	}
}

// BenchmarkImpact weighs a thousand cases under the coast's rules: a tenth of
// what a large shop has.
func BenchmarkImpact(b *testing.B) {
	folder := b.TempDir()
	fleet(b, folder, 1000)
	b.ReportAllocs()
	for b.Loop() {
		var out, errs bytes.Buffer
		require.Equal(b, exitDone, run([]string{"rules", "impact", "--cases", folder, "--house", "../../testdata/house/coast"}, nil, &out, &errs), errs.String())
	}
}

// weighed loads the impact of a house and weighs some cases.
func weighed(t *testing.T, folder string, skip bool, rules string) (*impact, string) {
	house := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(house, "rules.toml"), []byte(rules), 0o600))
	i, err := (&door{house: []string{house}, errs: os.Stderr}).impact(folder)
	require.NoError(t, err)
	if !skip {
		i.added = nil
	}
	i.weighAll()
	return i, i.page()
}

// TestImpactSkipsOnlyWhatStays: cases that no added rule touches are not
// advised on again, and the account is the same as when they are.
func TestImpactSkipsOnlyWhatStays(t *testing.T) {
	folder := t.TempDir()
	fleet(t, folder, 39)
	rule := func(kind, id, rest string) string {
		return "[[" + kind + "]]\nid = '" + id + "'\nbecause = 'So.'\nsource = 'shop'\n" + rest + "\n"
	}
	salt := rule("standing", "salt", "operation = 'exhaust'\nsays = 'in'\nwhen = 'climate == \"coastal\" and shop_q'") +
		"[[question]]\nid = 'shop_q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'story'\n"
	belt := rule("hold", "belt", "name = 'x'\nstops = ['run']\nwhen = 'timing_drive == \"belt\" and years_laid_up > 9'\nuntil = 'done(cam_belt_or_chain)'")
	for name, rules := range map[string]string{"rule": salt, "hold": belt, "both": salt + belt,
		"out": rule("standing", "out", "operation = 'exhaust'\nsays = 'out'\nwhen = 'storage == \"heated\"'")} {
		i, quick := weighed(t, folder, true, rules)
		require.NotNil(t, i.added, name)
		_, whole := weighed(t, folder, false, rules)
		require.Equal(t, whole, quick, name)
	}
	for name, rules := range map[string]string{
		"settings":  "[settings]\nrate = 90\n",
		"withdrawn": "[[withdraw]]\nid = 'exhaust_rotten'\nkind = 'suspect'\nbecause = 'So.'\n",
		"adjusted":  "[[suspect]]\nid = 'exhaust_rotten'\nadjust = true\nif_left = 900\n",
		"question":  "[[question]]\nid = 'climate'\nadjust = true\nminutes = 9\n",
		"operation": rule("operation", "wax", "name = 'wax'\npart = 'body'\nphase = 'refit'\nhours = [1, 2, 3]"),
	} {
		house := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(house, "rules.toml"), []byte(rules), 0o600))
		i, err := (&door{house: []string{house}, errs: os.Stderr}).impact(folder)
		require.NoError(t, err, name)
		require.Nil(t, i.added, name)
	}
}
