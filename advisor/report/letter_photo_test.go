package report_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// pixel is a PNG of one grey pixel.
var pixel = func() []byte {
	data, err := os.ReadFile("../../testdata/photos/hose.png")
	if err != nil {
		panic(err)
	}
	return data
}()

// pictured is the demonstration car with a photograph of one finding.
func pictured(t *testing.T, name string) *advisor.Case {
	c := readCase(t, "demo.toml")
	for i := range c.Answers {
		if c.Answers[i].Question == "brake_hose_look" {
			c.Answers[i].Photos = []advisor.Photo{{File: name}}
			return c
		}
	}
	t.Fatal("the case says nothing of the brake hoses")
	return nil
}

func TestPhotographsStandBesideTheirFinding(t *testing.T) {
	a := shelf().Advise(pictured(t, "hose.png"))
	write := func(format string) string {
		page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: format, Photos: map[string][]byte{"hose.png": pixel}})
		require.NoError(t, err)
		return page
	}
	page := write("html")
	images := named(elements(t, page), "img")
	require.Len(t, images, 1)
	assert.Equal(t, "Photograph. Brake hoses: hairline cracks.", images[0].attrs["alt"])
	assert.True(t, strings.HasPrefix(images[0].attrs["src"], "data:image/png;base64,"), images[0].attrs["src"])
	before, _, _ := strings.Cut(page, "<img")
	assert.Greater(t, strings.LastIndex(before, "Brake hoses"), len(before)-300, "it stands beside the finding")
	assert.Contains(t, write("markdown"), "- **Brake hoses:** hairline cracks (photograph: hose.png)")
	assert.Contains(t, write("text"), "(photograph: hose.png)")
}

// TestPhotographsAreNoWayIn gives a name and bytes that are no picture.
func TestPhotographsAreNoWayIn(t *testing.T) {
	a := shelf().Advise(pictured(t, nasty))
	page, err := report.Letter(a, shelf().Book(), report.LetterOptions{Format: "html", Photos: map[string][]byte{nasty: []byte("<svg onload=alert(1)>")}})
	require.NoError(t, err)
	assert.Empty(t, named(elements(t, page), "script"))
	assert.NotContains(t, page, "onload")
	for data, want := range map[string]string{"\xff\xd8\xff\xe0": "image/jpeg", string(pixel): "image/png", "RIFF\x00\x00\x00\x00WEBPVP8 ": "image/webp",
		"GIF89a": "", "<svg/>": "", "": "", "RIFF": "", "%PDF-1.7": ""} {
		assert.Equal(t, want, report.PhotoKind([]byte(data)))
	}
}
