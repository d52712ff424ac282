package report_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestContrast reckons the contrast of the page's own colours (WCAG 2.2, 1.4.3:
// at least 4.5 to 1), dark and light.
func TestContrast(t *testing.T) {
	page := letterOn(t, readCase(t, "demo.toml"), "html")
	sets := regexp.MustCompile(`--ink: (#\w+); --paper: (#\w+); --soft: (#\w+);`).FindAllStringSubmatch(page, -1)
	require.Len(t, sets, 3)
	for _, s := range sets {
		for _, ink := range []string{s[1], s[3]} {
			a, b := luminance(ink)+0.05, luminance(s[2])+0.05
			assert.GreaterOrEqual(t, math.Max(a, b)/math.Min(a, b), 4.5, "%s on %s", ink, s[2])
		}
	}
}

func luminance(hex string) float64 {
	hex = strings.TrimPrefix(hex, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	n, _ := strconv.ParseUint(hex, 16, 32)
	sum := 0.0
	for i, share := range []float64{0.0722, 0.7152, 0.2126} {
		c := float64(n>>(8*i)&255) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += share * c
	}
	return sum
}
