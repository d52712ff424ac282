package book

import (
	"math"
	"slices"
	"time"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// textSlot is a text that people read.
type textSlot struct{ to *string }

func text(to *string) slot { return textSlot{to} }

func (s textSlot) form() form { return form{Type: asText} }

func (s textSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.String {
		d.wrong(f.Value, f.Key+" is a text in quotes")
		return
	}
	if f.Value.Str == "" {
		d.list.Errorf(f.Value.Span, "blank", "%s is blank", f.Key).Help = "leave the key out when there is nothing to say"
	}
	*s.to = f.Value.Str
}

// wordSlot is one of a few words; the place among them may be kept instead.
type wordSlot struct {
	to    *string
	index func(int)
	words []string
}

func word(to *string, words []string) slot { return wordSlot{to: to, words: words} }

func wordIndex(words []string, index func(int)) slot { return wordSlot{index: index, words: words} }

func (s wordSlot) form() form { return form{Type: asText, Enum: s.words} }

func (s wordSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.String {
		d.wrong(f.Value, f.Key+" is one of "+diag.OneOf(s.words))
		return
	}
	i := slices.Index(s.words, f.Value.Str)
	if i < 0 {
		e := d.list.Errorf(f.Value.Span, "unknown-word", "%s cannot be %q", f.Key, f.Value.Str)
		e.Help = diag.DidYouMean(f.Value.Str, s.words)
		return
	}
	if s.to != nil {
		*s.to = f.Value.Str
	} else {
		s.index(i)
	}
}

// wordsSlot is a list of texts, each one of a few words when those are given.
// A single text may stand without brackets.
type wordsSlot struct {
	to    *[]string
	words []string
}

func texts(to *[]string) slot { return wordsSlot{to, nil} }

func words(to *[]string, words []string) slot { return wordsSlot{to, words} }

func (s wordsSlot) form() form { return form{Type: asWords, Enum: s.words} }

func (s wordsSlot) read(d *decoder, f *tomltext.Field) {
	for _, n := range d.listOf(f, "texts") {
		if s.words != nil && !slices.Contains(s.words, n.Str) {
			e := d.list.Errorf(n.Span, "unknown-word", "%s cannot be %q", f.Key, n.Str)
			e.Help = diag.DidYouMean(n.Str, s.words)
			continue
		}
		*s.to = append(*s.to, n.Str)
	}
}

// listOf gives the texts of a list, or a single text; the others are faults,
// and so is a text that stands twice.
func (d *decoder) listOf(f *tomltext.Field, what string) (out []*tomltext.Node) {
	nodes := []*tomltext.Node{f.Value}
	if f.Value.Kind == tomltext.Array {
		nodes = f.Value.Items
	}
	seen := map[string]*tomltext.Node{}
	for _, n := range nodes {
		if n.Kind != tomltext.String {
			d.wrong(n, f.Key+" is a list of "+what)
			continue
		}
		if first := seen[n.Str]; first != nil {
			e := d.list.Errorf(n.Span, "duplicate-id", "%q stands twice in %s", n.Str, f.Key)
			e.Related = []diag.Related{{At: first.Span, Message: "the first one"}}
			continue
		}
		seen[n.Str] = n
		out = append(out, n)
	}
	return out
}

// flagSlot is true or false.
type flagSlot struct{ to *bool }

func yes(to *bool) slot { return flagSlot{to} }

func (s flagSlot) form() form { return form{Type: asFlag} }

func (s flagSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Bool {
		d.wrong(f.Value, f.Key+" is true or false")
	}
	*s.to = f.Value.Bool
}

// numberSlot is a number between two bounds; a whole one may be asked for.
type numberSlot struct {
	to        func(float64)
	low, high float64
	whole     bool
}

func number(to *float64, low, high float64) slot {
	return numberSlot{func(x float64) { *to = x }, low, high, false}
}

func whole(to *int, low, high int) slot {
	return numberSlot{func(x float64) { *to = int(x) }, float64(low), float64(high), true}
}

func (s numberSlot) form() form {
	if s.whole {
		return form{Type: asWhole}
	}
	return form{Type: asNumber}
}

func (s numberSlot) read(d *decoder, f *tomltext.Field) {
	if x, ok := d.number(f.Value, f.Key, s.low, s.high); ok {
		if s.whole && x != math.Trunc(x) {
			d.list.Errorf(f.Value.Span, "wrong-kind", "%s is a whole number", f.Key)
			return
		}
		s.to(x)
	}
}

// number reads a number between two bounds.
func (d *decoder) number(n *tomltext.Node, what string, low, high float64) (float64, bool) {
	if n.Kind != tomltext.Integer && n.Kind != tomltext.Float || math.IsNaN(n.Float) {
		d.wrong(n, what+" is a number")
		return 0, false
	}
	if !(low <= n.Float && n.Float <= high) {
		e := d.list.Errorf(n.Span, "out-of-range", "%s is out of range for %s", n.Raw(), what)
		e.Help = "from " + plain(low) + " to " + plain(high)
		return 0, false
	}
	return n.Float, true
}

// dateSlot is a day, kept as written.
type dateSlot struct{ to *string }

func day(to *string) slot { return dateSlot{to} }

func (s dateSlot) form() form { return form{Type: asDate} }

func (s dateSlot) read(d *decoder, f *tomltext.Field) {
	if k := f.Value.Kind; k == tomltext.Date || k == tomltext.String {
		if _, err := time.Parse(time.DateOnly, f.Value.Str); err == nil {
			*s.to = f.Value.Str
			return
		}
		if k == tomltext.Date && len(f.Value.Str) == len(time.DateOnly) {
			return // there is no such day, which is told where it is read
		}
	}
	d.wrong(f.Value, f.Key+" is a date, as 2025-10-14")
}
