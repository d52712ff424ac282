package book

import (
	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// leastAtOnce and mostAtOnce bound the questions of a once-over: fewer are
// quicker asked one by one, more cannot be taken in.
const leastAtOnce, mostAtOnce = 3, 12

var onceTable = table[advisor.OnceOver]{
	name: "once_over", doc: "one prompt of the interview for several questions that are answered at one look",
	fields: append([]field[advisor.OnceOver]{
		must("id", "its name in a file of answers", func(o *advisor.OnceOver) slot { return ownID(&o.ID) }),
		must("name", "what is looked at, for lists", func(o *advisor.OnceOver) slot { return text(&o.Name) }),
		must("station", "where one stands; that of all its questions", func(o *advisor.OnceOver) slot { return word(&o.Station, walkRound) }),
		must("ask", "the prompt as put to a person", func(o *advisor.OnceOver) slot { return text(&o.Ask) }),
		may("help", "how to take it all in at one look", func(o *advisor.OnceOver) slot { return text(&o.Help) }),
		must("questions", "from 3 to 12: the id alone, or with what is usual, { q = id, usual = option }", func(o *advisor.OnceOver) slot { return membersSlot{&o.Members} }),
	}, groundKeys(false, func(o *advisor.OnceOver) *advisor.Ground { return &o.Ground })...),
}

// walkRound are the stations at which an interview asks.
var walkRound = advisor.Stations[:len(advisor.Stations)-1]

var memberTable = table[advisor.OnceMember]{
	name: "member", doc: "one question of a once_over",
	fields: []field[advisor.OnceMember]{
		must("q", "the question", func(m *advisor.OnceMember) slot { return name(&m.Question, aQuestion) }),
		may("usual", "the option that an ordinary sound part shows; of a yesno: yes or no", func(m *advisor.OnceMember) slot { return text(&m.Usual) }),
	},
}

// membersSlot is a list of ids of questions, or of tables with what is usual.
type membersSlot struct{ to *[]advisor.OnceMember }

func (s membersSlot) form() form {
	return form{Type: asMixed, Names: "question", Of: memberTable.name, Keys: memberTable.keys}
}

func (s membersSlot) read(d *decoder, f *tomltext.Field) {
	nodes := []*tomltext.Node{f.Value}
	if f.Value.Kind == tomltext.Array {
		nodes = f.Value.Items
	}
	out := make([]advisor.OnceMember, len(nodes))
	for i, n := range nodes {
		out[i].At = n.Span
		if n.Kind == tomltext.Table {
			d.within(func() { memberTable.decode(d, n, &out[i]) })
			continue
		}
		name(&out[i].Question, aQuestion).read(d, &tomltext.Field{Key: f.Key, KeySpan: f.KeySpan, Value: n})
	}
	*s.to = out
}
