package book

import (
	"fmt"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// with loads the small book under house layers, given as layer, text, ...
func with(t *testing.T, layers ...string) *Result {
	files := []File{base(t)}
	for i := 0; i < len(layers); i += 2 {
		files = append(files, File{Name: layers[i] + ".toml", Layer: layers[i], Data: []byte(layers[i+1])})
	}
	return Check(files)
}

func said(r *Result) string {
	var b strings.Builder
	if err := r.Diagnostics.WriteText(&b, nil); err != nil {
		return err.Error()
	}
	return b.String()
}

func TestAdjustReplacesFields(t *testing.T) {
	r := with(t, "barn", "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'\nby = 'the foreman'\nlearned_on = 'the saloon'\nlook_again = 2027-01-01\n")
	require.Empty(t, said(r))
	s := r.Book.Signs[0]
	assert.Equal(t, advisor.Count{N: 9, Of: 10}, s.With)
	assert.Equal(t, advisor.Count{N: 1, Of: 10}, s.Without, "the other fields stay")
	assert.Equal(t, "barn", s.Layer)
	assert.Equal(t, "the foreman", s.By)
	assert.Equal(t, "2027-01-01", s.Again)
	assert.Equal(t, []string{"barn"}, r.Book.Layers)
}

func TestWithdrawTakesSignsAlong(t *testing.T) {
	r := with(t, "barn", "[[withdraw]]\nid = 'gasket_leak'\nkind = 'suspect'\nbecause = 'We never see it.'\n[[question]]\nid = 'compression'\nadjust = true\nalways = true\n[[question]]\nid = 'years_laid_up'\nadjust = true\nalways = true\n")
	require.False(t, r.Diagnostics.HasErrors(), said(r))
	assert.Contains(t, codesOf(r.Diagnostics), "never-advised", "what cured it has no other use")
	assert.Empty(t, r.Book.Signs)
	require.Len(t, r.Book.Suspects, 1)
	assert.Equal(t, []advisor.Withdrawal{{Kind: "suspect", ID: "gasket_leak", Ground: advisor.Ground{Because: "We never see it.", Layer: "barn", At: r.Withdrawn[0].At}}}, r.Withdrawn)
}

func TestHouseSettingsReplaceKeyByKey(t *testing.T) {
	r := with(t, "barn", "[settings]\nrate = 60.5\nminor_digits = 2\ncare = { normal = '1.1' }\n")
	require.Empty(t, said(r))
	assert.Equal(t, int64(6050), r.Book.Settings.Rate)
	assert.Equal(t, advisor.Price{Num: 11, Den: 10}, r.Book.Settings.Care["normal"])
	assert.Equal(t, advisor.Price{Num: 7, Den: 10}, r.Book.Settings.Care["thrifty"])
	assert.Equal(t, "GBP", r.Book.Settings.Currency)
}

func TestMinorUnits(t *testing.T) {
	for digits, want := range map[string]int64{"0": 300, "2": 30000, "3": 300000} {
		r := with(t, "barn", "[settings]\nminor_digits = "+digits+"\n")
		require.Empty(t, said(r))
		assert.Equal(t, want, r.Book.Suspects[0].IfLeft[0].Cost)
		assert.Equal(t, want/300*80, r.Book.Settings.Rate, "the usual rate follows")
	}
}

func TestLayerFaults(t *testing.T) {
	tests := []struct {
		name   string
		layers []string
		want   string
	}{
		{"the same field twice", []string{"barn", "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'\n", "shed", "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '7 of 10'\n"},
			"shed.toml:4:1: error: with of sign \"uneven\" is adjusted twice [house-clash]\n    help: no house layer stands above another: settle which one holds\n    barn.toml:4:1: the other place\n"},
		{"the same setting twice", []string{"barn", "[settings]\nrate = 60\n", "shed", "[settings]\nrate = 70\n"},
			"shed.toml:2:1: error: the setting rate is given twice [house-clash]\n    help: no house layer stands above another: settle which one holds\n    barn.toml:2:1: the other place\n"},
		{"adjusted and withdrawn", []string{"barn", "[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'\n", "shed", "[[withdraw]]\nid = 'uneven'\nkind = 'sign'\nbecause = 'So.'\n[[question]]\nid = 'compression'\nadjust = true\nalways = true\n"},
			"shed.toml:2:6: error: sign \"uneven\" is withdrawn, and adjusted elsewhere [house-clash]\n    help: no house layer stands above another: settle which one holds\n    barn.toml:4:1: the other place\n"},
		{"the same id without adjust", []string{"barn", "[[family]]\nid = 'x'\nname = 'one'\n", "shed", "[[family]]\nid = 'x'\nname = 'two'\n"},
			"shed.toml:2:6: error: there is a family \"x\" already [duplicate-id]\n    help: give it another id, or say adjust = true to change only some fields\n    barn.toml:2:6: the first one\n"},
		{"adjust forgotten: nothing else is missing", []string{"barn", "[[sign]]\nid = 'uneven'\nwith = '9 of 10'\n"},
			"barn.toml:2:6: error: there is a sign \"uneven\" already [duplicate-id]\n    help: give it another id, or say adjust = true"},
		{"a day that no month has, told once", []string{"barn", "[[sign]]\nid = 'uneven'\nadjust = true\nlook_again = 2027-02-30\n"},
			"barn.toml:4:14: error: there is no such date: 2027-02-30 [bad-value]\n"},
		{"a withdrawn item is still named", []string{"barn", "[[withdraw]]\nid = 'head_off'\nkind = 'operation'\nbecause = 'So.'\n"},
			"base.toml:155:10: error: operation \"head_off\" is withdrawn [unknown-operation]\n    help: withdraw or adjust this as well\n    barn.toml:1:1: withdrawn here\n"},
		{"nothing to adjust", []string{"barn", "[[sign]]\nid = 'unevn'\nadjust = true\nwith = '9 of 10'\n"},
			"barn.toml:2:6: error: there is no sign \"unevn\" to adjust [unknown-id]\n    help: did you mean \"uneven\"?\n"},
		{"its own item", []string{"barn", "[[family]]\nid = 'x'\nname = 'one'\n[[family]]\nid = 'x'\nadjust = true\nname = 'two'\n"},
			"barn.toml:5:6: error: family \"x\" is of this layer itself [house-only]\n    help: change the item where it stands\n    barn.toml:1:1: here\n"},
		{"no reason", []string{"barn", "[[withdraw]]\nid = 'uneven'\nkind = 'sing'\n"},
			"barn.toml:1:1: error: this withdraw has no because [missing-key]\n    help: because: why, in one line\nbarn.toml:3:8: error: kind cannot be \"sing\" [unknown-word]\n    help: did you mean \"sign\"?\n"},
		{"an adjusted field is placed where it stands", []string{"barn", "[[sign]]\nid = 'uneven'\nadjust = true\nwhen = 'spread(compresion) > 40'\n"},
			"barn.toml:4:16: error:"},
		{"a hold loosened without specimens", []string{"barn", "[[hold]]\nid = 'hoses_first'\nadjust = true\nuntil = 'done(brake_hoses) or hose_age < 10 or engine_turns'\n"},
			"barn.toml:4:9: error: a house rule loosens hoses_first, and its specimens leave"},
		{"another house rule without specimens", []string{"barn", "[[standing]]\nid = 'x'\noperation = 'head_off'\nsays = 'in'\nwhen = 'engine_turns and years_laid_up > 3'\nbecause = 'So.'\nsource = 'shop'\n"},
			"barn.toml:5:8: warning: the condition of x has no specimen"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := said(with(t, tt.layers...))
			if strings.HasSuffix(tt.want, "\n") {
				assert.Equal(t, tt.want, got)
			} else {
				assert.True(t, strings.HasPrefix(got, tt.want), got)
			}
		})
	}
}

// TestOrderOfLayersChangesNothing: also where they clash.
func TestOrderOfLayersChangesNothing(t *testing.T) {
	files := []File{
		base(t),
		{Name: "a.toml", Layer: "shed", Data: []byte("[[sign]]\nid = 'uneven'\nadjust = true\nwith = '9 of 10'\n")},
		{Name: "b.toml", Layer: "barn", Data: []byte("[[sign]]\nid = 'uneven'\nadjust = true\nwithout = '2 of 10'\nwith = '8 of 10'\n")},
		{Name: "c.toml", Layer: "barn", Data: []byte("[[withdraw]]\nid = 'hose_dates'\nkind = 'inspection'\nbecause = 'So.'\n")},
		{Name: "d.toml", Layer: "loft", Data: []byte("[[inspection]]\nid = 'hose_dates'\nadjust = true\nminutes = 3\n")},
	}
	want := Check(files)
	require.True(t, want.Diagnostics.HasErrors())
	for range 20 {
		rand.Shuffle(len(files), func(i, j int) { files[i], files[j] = files[j], files[i] })
		got := Check(files)
		require.Equal(t, want.Diagnostics, got.Diagnostics)
		require.Equal(t, want.Book, got.Book)
	}
}

// TestAddThenWithdrawIsNothing: house rules that another layer withdraws leave
// the book and its faults as they were, one at a time and all together.
func TestAddThenWithdrawIsNothing(t *testing.T) {
	ok, err := os.ReadFile("../../testdata/check/ok/every_table.toml")
	require.NoError(t, err)
	plain := with(t)
	same := func(text string, added *Result) {
		var out strings.Builder
		for _, it := range added.items[1:] {
			sign, ok := it.value.(*advisor.Sign)
			along := ok && slices.ContainsFunc(added.items, func(s *item) bool {
				return s.layer == "barn" && s.kind.name == "suspect" && s.id == sign.Suspect
			}) // a suspect takes its signs along
			if it.layer == "barn" && !along {
				fmt.Fprintf(&out, "[[withdraw]]\nid = '%s'\nkind = '%s'\nbecause = 'So.'\n", it.id, it.kind.name)
			}
		}
		r := with(t, "barn", text, "shed", out.String())
		require.Empty(t, said(r), text)
		require.NotEmpty(t, r.Withdrawn)
		require.NotEmpty(t, r.Book.Withdrawn)
		r.Book.Withdrawn = nil
		r.Book.Layers, r.Book.Fingerprint = plain.Book.Layers, plain.Book.Fingerprint
		assert.Equal(t, plain.Book, r.Book)
	}
	whole := regexp.MustCompile(`(?s)\[settings\].*?\n\n`).ReplaceAllString(string(ok), "")
	same(whole, with(t, "barn", whole))
	for _, one := range []string{"[[family]]\nid = 'x'\nname = 'one'\n", sumpOff, aSign + "when = 'engine_turns'\n", aRule, anInward + aHold + "stops = ['road']\nuntil = 'q'\n"} {
		same(one, with(t, "barn", one))
	}
}
