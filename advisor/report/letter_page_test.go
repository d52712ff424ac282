package report_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// element is an element of a page in reading order.
type element struct {
	name  string
	attrs map[string]string
	text  string // its own text and that of what is in it
	under []string
}

// elements reads a page; a tag left open or closed wrongly is an error.
func elements(t *testing.T, page string) []*element {
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, []string{"meta", "img"}, xml.HTMLEntity
	var all, open []*element
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		switch x := tok.(type) {
		case xml.StartElement:
			e := &element{name: x.Name.Local, attrs: map[string]string{}}
			for _, a := range x.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			for _, o := range open {
				e.under = append(e.under, o.name)
			}
			all, open = append(all, e), append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, o := range open {
				o.text += string(x)
			}
		}
	}
	require.Empty(t, open)
	return all
}

func named(all []*element, name string) []*element {
	var out []*element
	for _, e := range all {
		if e.name == name {
			out = append(out, e)
		}
	}
	return out
}

// TestLetterIsAccessible checks headings, landmarks, labels and alternatives.
func TestLetterIsAccessible(t *testing.T) {
	for name, file := range letterCases {
		t.Run(name, func(t *testing.T) {
			page := letterOf(t, file, "html")
			all := elements(t, page)
			assert.Equal(t, "en-GB", named(all, "html")[0].attrs["lang"])
			require.Len(t, named(all, "main"), 1)
			require.Len(t, named(all, "h1"), 1)
			assert.NotEmpty(t, named(all, "title")[0].text)
			ids, level := map[string]bool{}, 0
			for _, e := range all {
				if id := e.attrs["id"]; id != "" {
					assert.False(t, ids[id], "%s stands twice", id)
					ids[id] = true
				}
				if len(e.name) == 2 && e.name[0] == 'h' && e.name[1] >= '1' && e.name[1] <= '6' {
					now := int(e.name[1] - '0')
					assert.LessOrEqual(t, now, level+1, "heading %q leaves a level out", e.text)
					assert.NotEmpty(t, strings.TrimSpace(e.text))
					level = now
				}
			}
			for _, e := range all {
				for _, id := range strings.Fields(e.attrs["aria-labelledby"]) {
					assert.True(t, ids[id], "label %s is not there", id)
				}
			}
			checkTables(t, all)
			require.Len(t, named(all, "figure"), 2)
			for _, e := range named(all, "svg") {
				assert.Equal(t, "img", e.attrs["role"])
				assert.NotEmpty(t, e.attrs["aria-labelledby"])
			}
			assert.Empty(t, named(all, "script"))
			assert.NotRegexp(t, `(?i)src="(?:[^d]|d[^a])|href=|url\(http|@import`, page)
		})
	}
}

func checkTables(t *testing.T, all []*element) {
	tables := named(all, "table")
	require.NotEmpty(t, tables)
	assert.Len(t, named(all, "caption"), len(tables))
	assert.Len(t, named(all, "thead"), len(tables))
	for _, e := range named(all, "th") {
		assert.Contains(t, []string{"col", "row"}, e.attrs["scope"])
	}
}
