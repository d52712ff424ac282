package book

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

// TestKnownTypesAnswerFromPaper: a type's answers say where they come from, in
// the order of the file, and are written as a case writes them.
func TestKnownTypesAnswerFromPaper(t *testing.T) {
	r := with(t, "barn", "[[type]]\nid = 'van'\nname = 'the van'\nbecause = 'So.'\nsource = 'shop'\nby = 'me'\n"+
		"answers = { years_laid_up = '3 to 5', climate = 'not dry', compression = [140,  138] }\n")
	require.Empty(t, said(r))
	require.Len(t, r.Book.Types, 1)
	van := r.Book.Types[0]
	assert.Equal(t, "barn", van.Layer)
	assert.Equal(t, "me", van.By)
	var written []string
	for _, a := range van.Answers {
		assert.Equal(t, advisor.Paper, a.How)
		assert.Equal(t, "known type van", a.Note)
		written = append(written, a.Question+" = "+a.Written)
	}
	assert.Equal(t, []string{"years_laid_up = '3 to 5'", "climate = 'not dry'", "compression = [140,  138]"}, written)
	assert.Equal(t, advisor.NumberRange(3, 5), van.Answers[0].Value)
}

// TestKnownTypesAreAdjustedAndWithdrawn as any other item.
func TestKnownTypesAreAdjustedAndWithdrawn(t *testing.T) {
	van := "[[type]]\nid = 'van'\nname = 'the van'\nbecause = 'So.'\nsource = 'shop'\nanswers = { climate = 'dry' }\n"
	r := with(t, "barn", van, "shed", "[[type]]\nid = 'van'\nadjust = true\nanswers = { climate = 'damp' }\n")
	require.Empty(t, said(r))
	require.Len(t, r.Book.Types, 1)
	assert.Equal(t, "'damp'", r.Book.Types[0].Answers[0].Written)
	r = with(t, "barn", van, "shed", "[[withdraw]]\nid = 'van'\nkind = 'type'\nbecause = 'So.'\n")
	require.Empty(t, said(r))
	assert.Empty(t, r.Book.Types)
	r = with(t, "barn", van, "shed", van)
	assert.Contains(t, codesOf(r.Diagnostics), "duplicate-id")
}
