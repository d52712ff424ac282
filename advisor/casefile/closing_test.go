package casefile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
)

const newHead = "case = 2\ndate = 2025-10-14\n"

func TestHowAJobEnded(t *testing.T) {
	c, faults := Read("x.toml", []byte(newHead+`[closed]
on = 2025-11-20
by = "AB"
[looked]
gasket_leak = { is = "found", by = "CD", note = "between two and three" }
brackets = "not looked at"
[hours]
head_off = { took = 3.5, estimate = [2, 3, 5], by = "CD" }
battery = 0.5
radiator = "can't tell"
`), vocabulary())
	assert.Equal(t, "x.toml:8:1: warning: the book has no suspect \"brackets\" [unknown-suspect]\n  allowed are \"gasket_leak\"\n", faultLines(faults))
	require.Equal(t, &advisor.Closed{Date: "2025-11-20", By: "AB", At: c.Closed.At}, c.Closed)
	leak := c.LookedAt("gasket_leak")
	require.NotNil(t, leak)
	assert.Equal(t, []string{advisor.Found, "CD", "between two and three"}, []string{leak.Found, leak.By, leak.Note})
	assert.Equal(t, advisor.NotLookedAt, c.LookedAt("brackets").Found)
	assert.Nil(t, c.LookedAt("head_off"))
	head := c.Took("head_off")
	assert.Equal(t, &advisor.Three{Low: 2, Usual: 3, High: 5}, head.Estimate)
	assert.Equal(t, 3.5, head.Hours)
	assert.True(t, head.Known)
	assert.Equal(t, 0.5, c.Took("battery").Hours)
	assert.False(t, c.Took("radiator").Known)
}

func TestFaultsOfHowAJobEnded(t *testing.T) {
	for _, tt := range []struct{ name, text, want string }{
		{"no day", "[closed]\nby = \"AB\"\n", "x.toml:3:1: error: closed does not say on which day [missing-key]\n  add the day, as: on = 2025-10-14\n"},
		{"no such key", "[closed]\non = 2025-11-20\nat = 3\n", "x.toml:5:1: error: closed has no key \"at\" [unknown-key]\n  allowed are \"on\" and \"by\"\n"},
		{"no such finding", "[looked]\ngasket_leak = \"fonud\"\n", "x.toml:4:15: error: \"fonud\" is no finding [unknown-word]\n  did you mean \"found\"?\n"},
		{"nothing found", "[looked]\ngasket_leak = { by = \"AB\" }\n", "x.toml:4:15: error: it does not say what was found [missing-key]\n  add: is = \"found\", \"sound\", \"can't tell\" or \"not looked at\"\n"},
		{"hours in words", "[hours]\nhead_off = \"long\"\n", "x.toml:4:12: error: hours are a number from 0 to 2000, and this is \"long\" [out-of-range]\n"},
		{"hours below none", "[hours]\nhead_off = -1\n", "x.toml:4:12: error: hours are a number from 0 to 2000, and this is -1 [out-of-range]\n"},
		{"no hours", "[hours]\nhead_off = { by = \"AB\" }\n", "x.toml:4:12: error: it does not say how long it took [missing-key]\n  add: took = 2.5\n"},
		{"an estimate backwards", "[hours]\nhead_off = { took = 3, estimate = [5, 3, 2] }\n", "x.toml:4:35: error: an estimate has its least figure first [out-of-range]\n  1 in 10 is less, usual, 1 in 10 is more\n"},
		{"half an estimate", "[hours]\nhead_off = { took = 3, estimate = [5] }\n", "x.toml:4:35: error: an estimate is three figures in brackets, and this is [5] [wrong-kind]\n"},
		{"no tables", "closed = 1\nlooked = []\nhours = 2\n", "x.toml:3:10: error: closed is a table, and this is a whole number [wrong-kind]\nx.toml:4:10: error: looked is a table, and this is a list [wrong-kind]\nx.toml:5:9: error: hours is a table, and this is a whole number [wrong-kind]\n"},
	} {
		_, faults := Read("x.toml", []byte(newHead+tt.text), vocabulary())
		assert.Equal(t, tt.want, faultLines(faults), tt.name)
	}
}

// TestFormats: an older format is read, a key that it does not have is refused
// with the line to write, and a newer format is refused.
func TestFormats(t *testing.T) {
	for _, tt := range []struct {
		text    string
		version int
		want    string
	}{
		{"case = 1\ndate = 2025-10-14\n[forecast]\ngasket_leak = 0.1\n", 1, ""},
		{"case = 2\ndate = 2025-10-14\n[looked]\ngasket_leak = \"sound\"\n", 2, ""},
		{"case = 1\ndate = 2025-10-14\n[looked]\ngasket_leak = \"sound\"\n", 1, "x.toml:3:2: error: looked is a key of format 2, and the case says that it is of format 1 [newer-key]\n  write: case = 2\n  x.toml:1:8 the format\n"},
		{"case = 3\ndate = 2025-10-14\n", 2, "x.toml:1:8: error: the case is of format 3, and this program reads up to 2 [newer-format]\n  use the newer program with which it was written\n"},
	} {
		c, faults := Read("x.toml", []byte(tt.text), vocabulary())
		assert.Equal(t, tt.want, faultLines(faults), tt.text)
		assert.Equal(t, tt.version, c.Version, tt.text)
	}
	assert.Contains(t, string(New("car", "2025-10-14")), "case = 1\n", "a new case can be read by every program")
}

// TestFormatIsRaisedForANewKeyOnly: nothing else of the file changes, and what
// the first format can say leaves it at the first.
func TestFormatIsRaisedForANewKeyOnly(t *testing.T) {
	const before = "# the sawmill's\ncase = 1 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = true # by hand\n"
	three := &advisor.Three{Low: 2, Usual: 3, High: 5.5}
	for _, tt := range []struct {
		name   string
		change func([]byte) ([]byte, error)
		want   string
	}{
		{"an answer", func(d []byte) ([]byte, error) { return Set(d, "answers", "turns", "false") },
			"# the sawmill's\ncase = 1 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = false # by hand\n"},
		{"what was found", func(d []byte) ([]byte, error) {
			return Look(d, advisor.Looked{Suspect: "gasket_leak", Found: advisor.Sound})
		}, "# the sawmill's\ncase = 2 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = true # by hand\n\r\n[looked]\r\ngasket_leak = \"sound\"\r\n"},
		{"what could not be told", func(d []byte) ([]byte, error) {
			return Look(d, advisor.Looked{Suspect: "gasket_leak", Found: advisor.Unsettled, By: "AB", Note: "oil on it"})
		}, "# the sawmill's\ncase = 2 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = true # by hand\n\r\n[looked]\r\ngasket_leak = { is = \"can't tell\", by = \"AB\", note = \"oil on it\" }\r\n"},
		{"hours", func(d []byte) ([]byte, error) {
			return Take(d, advisor.Taken{Operation: "head_off", Hours: 3.25, Known: true, Estimate: three})
		}, "# the sawmill's\ncase = 2 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = true # by hand\n\r\n[hours]\r\nhead_off = { took = 3.25, estimate = [2, 3, 5.5] }\r\n"},
		{"hours not noted", func(d []byte) ([]byte, error) { return Take(d, advisor.Taken{Operation: "head_off"}) },
			"# the sawmill's\ncase = 2 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = true # by hand\n\r\n[hours]\r\nhead_off = \"can't tell\"\r\n"},
		{"the end", func(d []byte) ([]byte, error) { return Close(d, advisor.Closed{Date: "2025-11-20", By: "AB"}) },
			"# the sawmill's\ncase = 2 # the format\r\ndate = 2025-10-14\n\n[answers]\nturns = true # by hand\n\r\n[closed]\r\non = 2025-11-20\r\nby = \"AB\"\r\n"},
	} {
		after, err := tt.change([]byte(before))
		require.NoError(t, err, tt.name)
		assert.Equal(t, tt.want, string(after), tt.name)
		_, faults := Read("x.toml", after, vocabulary())
		assert.Empty(t, faultLines(faults), tt.name)
	}
	_, err := Look([]byte(before), advisor.Looked{Suspect: "gasket_leak", Found: "fine"})
	assert.ErrorContains(t, err, "is no finding")
	_, err = Close([]byte(before), advisor.Closed{Date: "today"})
	assert.ErrorContains(t, err, "is no day")
}

// TestFoundAgain: a second word on a suspect takes the first one's place.
func TestFoundAgain(t *testing.T) {
	data := []byte(newHead)
	var err error
	for _, found := range []string{advisor.Unsettled, advisor.Found} {
		data, err = Look(data, advisor.Looked{Suspect: "gasket_leak", Found: found})
		require.NoError(t, err)
	}
	assert.Equal(t, newHead+"\n[looked]\ngasket_leak = \"found\"\n", string(data))
}
