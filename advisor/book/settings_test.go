package book_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/book"
)

// TestLocaleAndCurrencyHaveAShape: a slip in either would be printed on every
// page, or would choose no region's words.
func TestLocaleAndCurrencyHaveAShape(t *testing.T) {
	for _, c := range []struct {
		key, value string
		good       bool
	}{
		{"locale", "en", true}, {"locale", "en-GB", true}, {"locale", "de-CH", true}, {"locale", "es-419", true}, {"locale", "gsw-CH", true},
		{"locale", "", false}, {"locale", "en_GB", false}, {"locale", "en-gb", false}, {"locale", "EN", false}, {"locale", "english", false},
		{"locale", "en-", false}, {"locale", "en-GBR", false}, {"locale", "en-GB-GB", false}, {"locale", "e-GB", false}, {"locale", "en-41", false},
		{"currency", "GBP", true}, {"currency", "XTS", true},
		{"currency", "", false}, {"currency", "gbp", false}, {"currency", "£", false}, {"currency", "EURO", false}, {"currency", "EU", false}, {"currency", "E1R", false},
	} {
		r := book.Load([]book.File{{Name: "shop.toml", Data: []byte("[settings]\n" + c.key + " = \"" + c.value + "\"\n")}})
		if c.good {
			assert.Empty(t, r.Diagnostics, c.value)
			continue
		}
		require.Len(t, r.Diagnostics, 1, c.value)
		fault := r.Diagnostics[0]
		assert.Equal(t, "unknown-word", fault.Code, c.value)
		assert.Equal(t, 2, fault.At.Line)
		assert.Equal(t, len(c.key)+4, fault.At.Col)
		assert.Contains(t, fault.Help, map[string]string{"locale": `language-REGION, as "en" or "en-GB"`, "currency": `three capitals, as "GBP"`}[c.key])
	}
}
