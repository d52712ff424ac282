package book

import (
	"cmp"
	"slices"
	"sync"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// Silence is a warning on an item that its author has silenced, and why.
// Errors cannot be silenced.
type Silence struct {
	Kind, ID string // the item
	Code     string
	Because  string
	At       diag.Span
	Count    int  // warnings that it silenced
	error    bool // it would have had to silence an error
}

// silenceKey may stand in every item: silence = { code = "reason" }.
const silenceKey = "silence"

var codeIDs = sync.OnceValue(func() (ids []string) {
	for _, c := range Codes() {
		ids = append(ids, c.ID)
	}
	return ids
})

// quiet is which item stands where, and what each silences.
type quiet struct {
	places   []ground // in order of file and start
	silences map[*item][]*Silence
}

// ground is where an item, or a change to it, starts.
type ground struct {
	at   diag.Span
	item *item // nil where nothing can be silenced
}

// silences reads what every live item silences. What stands in a layer's change
// of an item belongs to that item.
func (b *builder) silences() *quiet {
	q := &quiet{silences: map[*item][]*Silence{}}
	for _, it := range append([]*item{b.item0}, b.items...) {
		if f := it.node.Field(silenceKey); f != nil {
			q.silences[it] = b.silence(it, f)
		}
		q.places = append(q.places, ground{it.at, it})
	}
	for _, a := range b.in.adjusted {
		q.places = append(q.places, ground{a.at, b.live[a.kind.name][a.id]})
	}
	for _, s := range b.in.settings {
		q.places = append(q.places, ground{s.node.Span, b.item0})
	}
	for _, w := range b.in.withdrawn {
		q.places = append(q.places, ground{w.At, nil})
	}
	for _, it := range b.astray {
		q.places = append(q.places, ground{it.at, nil})
	}
	slices.SortStableFunc(q.places, func(x, y ground) int { return before(x.at, y.at) })
	return q
}

func before(x, y diag.Span) int {
	return cmp.Or(cmp.Compare(x.File, y.File), cmp.Compare(x.Start, y.Start))
}

func (b *builder) silence(it *item, f *tomltext.Field) (out []*Silence) {
	if f.Value.Kind != tomltext.Table {
		b.wrong(f.Value, "silence is a table of codes and reasons")
		return nil
	}
	for i := range f.Value.Fields {
		c := &f.Value.Fields[i]
		switch {
		case !slices.Contains(codeIDs(), c.Key):
			b.list.Errorf(c.KeySpan, "unknown-code", "no fault has the code %q", c.Key).Help = diag.DidYouMean(c.Key, codeIDs())
		case c.Value.Kind != tomltext.String:
			b.wrong(c.Value, "the reason for a silence is a text in quotes")
		case c.Value.Str == "":
			b.list.Errorf(c.Value.Span, "blank", "the reason for silencing %s is blank", c.Key).Help = "say why it is no fault here"
		default:
			out = append(out, &Silence{Kind: it.kind.name, ID: it.id, Code: c.Key, Because: c.Value.Str, At: c.KeySpan})
		}
	}
	return out
}

// of finds what silences a diagnostic: the item in which it stands.
func (q *quiet) of(d *diag.Diagnostic) *Silence {
	i, found := slices.BinarySearchFunc(q.places, d.At, func(g ground, at diag.Span) int { return before(g.at, at) })
	if !found {
		i--
	}
	if i < 0 || q.places[i].at.File != d.At.File {
		return nil
	}
	for _, s := range q.silences[q.places[i].item] {
		if s.Code == d.Code {
			return s
		}
	}
	return nil
}

// hush takes the silenced warnings out of the diagnostics.
func (r *Result) hush() {
	r.Diagnostics = slices.DeleteFunc(r.Diagnostics, func(d diag.Diagnostic) bool {
		s := r.quiet.of(&d)
		switch {
		case s == nil:
			return false
		case d.Severity == diag.Error:
			s.error = true
			return false
		}
		s.Count++
		return true
	})
}

// idleSilences warns of silences that silence nothing, once all is checked.
func (r *Result) idleSilences() {
	for _, s := range r.Silences() {
		switch {
		case s.Count > 0:
		case s.error:
			r.Diagnostics.Warnf(s.At, "idle-silence", "%s is an error here, and no error can be silenced", s.Code).Help = "mend it, or withdraw the item"
		default:
			r.Diagnostics.Warnf(s.At, "idle-silence", "%s silences nothing here", s.Code).Help = "leave it out"
		}
	}
}

// Silences lists what the book silences, in order of place.
func (r *Result) Silences() []Silence {
	var out []Silence
	for _, list := range r.quiet.silences {
		for _, s := range list {
			out = append(out, *s)
		}
	}
	slices.SortFunc(out, func(x, y Silence) int { return before(x.At, y.At) })
	return out
}

// Silenced counts the warnings that were silenced.
func (r *Result) Silenced() (n int) {
	for _, s := range r.Silences() {
		n += s.Count
	}
	return n
}
