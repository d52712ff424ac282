package book

import (
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// settingsFigures are the settings that are figures: each has a reason and a
// source, given under because and source by its key. The cases of hours_factor
// and care_when carry their own.
var settingsFigures = []string{"rate", "minor_digits", "tax", "good_for_days", "ring_at", "hours_a_week", "parts_days", "care", "trust"}

// provenance gathers the reason and the source of each figure from the layer
// that gave it. The built-in book gives both for every figure; a house layer
// that gives none speaks from its own experience.
func (b *builder) provenance(from map[string]settingsIn) (out []tomltext.Field) {
	for _, key := range []string{"because", "source"} {
		all := tomltext.Field{Key: key, Value: &tomltext.Node{Kind: tomltext.Table}}
		for _, in := range b.in.settings {
			given := in.node.Get(key)
			if given == nil {
				continue
			}
			if given.Kind != tomltext.Table {
				b.wrong(given, key+" of the settings is a table, figure = text")
				continue
			}
			all.KeySpan, all.Value.Span = given.Span, given.Span
			for _, f := range given.Fields {
				switch {
				case !slices.Contains(settingsFigures, f.Key):
					b.list.Errorf(f.KeySpan, "unknown-key", "%s is no figure of the settings", f.Key).Help = diag.DidYouMean(f.Key, settingsFigures)
				case in.node.Get(f.Key) == nil:
					b.list.Errorf(f.KeySpan, "useless-key", "this layer does not set %s", f.Key).Help = "say it where the figure is given"
				case from[f.Key].node == in.node:
					all.Value.Fields = append(all.Value.Fields, f)
				case key == "source":
					b.in.outdone = append(b.in.outdone, f.Value)
				}
			}
		}
		out = append(out, all)
	}
	b.demandProvenance(from, out)
	return out
}

// demandProvenance reports the figures of the built-in book that lack either: who
// gives a reason for one figure gives it for all.
func (b *builder) demandProvenance(from map[string]settingsIn, given []tomltext.Field) {
	for _, figure := range settingsFigures {
		in, there := from[figure]
		if !there || in.layer != "" || in.node.Get("because") == nil && in.node.Get("source") == nil {
			continue // the book of the shelf gives both, which a test guards
		}
		var lacks []string
		for _, g := range given {
			if g.Value.Get(figure) == nil {
				lacks = append(lacks, g.Key)
			}
		}
		if len(lacks) > 0 {
			b.list.Errorf(in.node.Get(figure).Span, "missing-key", "the figure %s has no %s", figure, strings.Join(lacks, " and no ")).
				Help = "give it by its key under [settings.because] and [settings.source]"
		}
	}
}

// groundFigures gives each figure of a house layer that names no source the
// shop's own experience as its source, and notes where each is given.
func (b *builder) groundFigures(merged *tomltext.Node, s *advisor.Settings) {
	for _, figure := range settingsFigures {
		n := merged.Get(figure)
		if n == nil {
			continue
		}
		g := s.Grounds[figure]
		g.At = n.Span
		for _, in := range b.in.settings {
			if in.node.Get(figure) == n {
				g.Layer = in.layer
			}
		}
		if len(g.Sources) == 0 {
			g.Sources = []string{"shop"}
		}
		s.Grounds[figure] = g
	}
	for _, n := range b.in.outdone { // still cited by the book's own figure
		if n.Kind == tomltext.String {
			b.decoder.refer(n, aSource)
		}
		for _, one := range n.Items {
			b.decoder.refer(one, aSource)
		}
	}
	for _, in := range b.in.settings {
		s.At = append(s.At, in.node.Span)
	}
}

// groundsSlot is a table of reasons, or of sources, by the key of a figure.
type groundsSlot struct {
	to   map[string]advisor.Ground
	slot func(*advisor.Ground) slot
}

func (s groundsSlot) form() form { return form{Type: asPairs} }

func (s groundsSlot) read(d *decoder, f *tomltext.Field) {
	for i := range f.Value.Fields {
		one := &f.Value.Fields[i]
		g := s.to[one.Key]
		s.slot(&g).read(d, one)
		s.to[one.Key] = g
	}
}
