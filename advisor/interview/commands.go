package interview

import (
	"strings"

	"longstand/advisor"
)

// Command is what a person can say at every prompt instead of an answer.
type Command string

// The commands. None stands for an answer.
const (
	None    Command = ""
	Skip    Command = "skip"
	Back    Command = "back"
	Help    Command = "help"
	Why     Command = "why"
	Advice  Command = "advice"
	Station Command = "station"
	Stop    Command = "stop"
)

// Commands lists each command with its key and what it does, for help and completion.
var Commands = []struct {
	Key  string
	Word Command
	Does string
}{
	{"b", Back, "the question before, with its answer kept unless you give another"},
	{"?", Help, "how to see or measure it, and how to answer"},
	{"w", Why, "all that the answer bears on"},
	{"a", Advice, "the advice so far"},
	{"s", Station, "another station, as: station underneath"},
	{"q", Stop, "stop here; every answer is kept, and intake goes on from there"},
}

// command reads a command, by key or by word. A colon before it does no harm.
func command(s string) (Reply, bool) {
	bare := strings.TrimPrefix(strings.ToLower(s), ":")
	word, rest, _ := strings.Cut(bare, " ")
	if word == string(Skip) && rest == "" {
		return Reply{Command: Skip}, true
	}
	for _, c := range Commands {
		if word != c.Key && word != string(c.Word) {
			continue
		}
		if c.Word == Station {
			return Reply{Command: Station, Station: rest}, rest == "" || len(strings.Fields(rest)) == 1
		}
		if rest == "" {
			return Reply{Command: c.Word}, true
		}
	}
	return Reply{}, false
}

// walk are the stations that an interview visits.
func walk() []string { return advisor.Stations[:len(advisor.Stations)-1] }
