package book

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEveryFigureSaysWhy: no figure of the built-in book without a reason and a
// source, those of the settings included.
func TestEveryFigureSaysWhy(t *testing.T) {
	b := Load(builtIn(t)).Book
	figures := b.Figures()
	assert.Greater(t, len(figures), 900)
	settings := map[string]bool{}
	for _, f := range figures {
		assert.NotEmpty(t, f.Because, "%s %s", f.Of, f.What)
		assert.NotEmpty(t, f.Sources, "%s %s", f.Of, f.What)
		if f.Of == "settings" {
			settings[f.What] = true
		}
	}
	for _, key := range []string{"rate", "minor_digits", "tax", "good_for_days", "ring_at", "hours_a_week", "parts_days", "care", "trust", "hours_factor", "care_when"} {
		assert.True(t, settings[key], key)
	}
}

// TestProvenanceOfSettings: a figure's reason comes from the layer that gave the
// figure; a house layer that gives no source speaks from its own experience.
func TestProvenanceOfSettings(t *testing.T) {
	const own = "[settings]\nrate = 80\ntax = \"0.2\"\n[settings.because]\nrate = \"usual\"\ntax = \"the law\"\n[settings.source]\nrate = \"practice\"\ntax = \"practice\"\n"
	load := func(files ...File) *Result { return Load(files) }
	for _, c := range []struct {
		name, house, because, source, fault string
	}{
		{"the book's own", "", "usual", "practice", ""},
		{"a house figure with neither", "[settings]\nrate = 72\n", "", "shop", ""},
		{"a house figure with a reason", "[settings]\nrate = 72\n[settings.because]\nrate = \"a cheap yard\"\n", "a cheap yard", "shop", ""},
		{"a reason for what it does not set", "[settings]\nshop = \"x\"\n[settings.because]\nrate = \"?\"\n", "", "", "useless-key"},
		{"a reason for no figure", "[settings]\nshop = \"x\"\n[settings.because]\nshop = \"?\"\n", "", "", "unknown-key"},
		{"a source that is none", "[settings]\nrate = 72\n[settings.source]\nrate = \"hearsay\"\n", "", "", "unknown-source"},
		{"not a table", "[settings]\nrate = 72\nbecause = \"?\"\n", "", "", "wrong-kind"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := load(File{Name: "own.toml", Data: []byte(own)}, File{Name: "house.toml", Layer: "house", Data: []byte(c.house)})
			var codes []string
			for _, d := range r.Diagnostics {
				if d.Severity.String() == "error" {
					codes = append(codes, d.Code)
				}
			}
			if c.fault != "" {
				assert.Contains(t, codes, c.fault)
				return
			}
			require.Empty(t, codes)
			g := r.Book.Settings.Grounds["rate"]
			assert.Equal(t, c.because, g.Because)
			assert.Equal(t, []string{c.source}, g.Sources)
			assert.Equal(t, "the law", r.Book.Settings.Grounds["tax"].Because)
		})
	}
	r := load(File{Name: "own.toml", Data: []byte("[settings]\nrate = 80\ntax = \"0.2\"\n[settings.because]\nrate = \"usual\"\n")})
	assert.True(t, r.Diagnostics.HasErrors(), "who gives a reason for one figure gives it for all")
}
