package report_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
	"longstand/advisor/report"
)

// TestThePageShowsWhatIsReckoned: a figure that the book wants seen stands on
// the page with its unit and reason, and no other does.
func TestThePageShowsWhatIsReckoned(t *testing.T) {
	number := func(name, unit string, x float64) advisor.DerivedValue {
		return advisor.DerivedValue{Name: name, Unit: unit, IsNumber: true, Low: x, High: x, Shown: true, Because: "So it is."}
	}
	a := &advisor.Advice{Case: &advisor.Case{}, Settings: &advisor.Settings{Locale: "en-GB"}, Derived: []advisor.DerivedValue{
		number("gravity", "", 1.2256), number("share", "%", 97.1432), number("lag", "%", 2.1583), number("steel", "µm", 190.64), number("frost", "C", -67.78),
		{Name: "it sweats", Truth: advisor.True, Shown: true, Because: "Cold metal."},
		{Name: "it froze", Truth: advisor.False, Shown: true, Because: "Mild winter."},
		{Name: "hidden", Truth: advisor.True, Because: "Not for the page."},
	}}
	page := strings.ReplaceAll(report.Text(a), "\u00a0", " ")
	for _, line := range []string{"- gravity: 1.226. So it is.", "- share: 97.1 %. So it is.", "- lag: 2.16 %.", "- steel: 191 µm.", "- frost: -67.8 C.",
		"- it sweats: yes. Cold metal.", "- it froze: no. Mild winter."} {
		assert.Contains(t, page, line)
	}
	assert.NotContains(t, page, "hidden")
	assert.Equal(t, 1, strings.Count(page, "Reckoned from the answers"))

	a.Derived = a.Derived[7:]
	assert.NotContains(t, report.Text(a), "Reckoned from the answers")
}
