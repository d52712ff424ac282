package report

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"longstand/advisor"
)

// region turns the book's words of the trade into those of the shop's locale,
// and knows which of them a reader may need explained.
type region struct {
	settings *advisor.Settings
	find     *regexp.Regexp
	instead  map[string]string // word as in the book, lower case -> regional word
	trade    *regexp.Regexp
	means    map[string]*advisor.Word // regional word, lower case
	shown    map[string]string        // id -> regional word
}

// everyday are words of the list that any reader knows; they are there for
// their spelling elsewhere.
var everyday = []string{"petrol", "bonnet", "tyre", "centre", "aluminium", "windscreen", "boot", "luggage_space", "bumper",
	"dashboard", "number_plate", "laid_up", "estate", "saloon", "handbrake", "spanner", "indicator", "litre", "per_cent"}

func newRegion(words []advisor.Word, s *advisor.Settings) *region {
	locale := s.Locale
	r := &region{settings: s, instead: map[string]string{}, means: map[string]*advisor.Word{}, shown: map[string]string{}}
	var from, known []string
	for i := range words {
		w := &words[i]
		there := w.Regions[locale]
		r.shown[w.ID] = w.Text
		if there != "" {
			r.shown[w.ID] = there
		}
		for _, f := range append([]string{w.Text}, w.Forms...) {
			here := strings.ToLower(f)
			if here == "" {
				continue
			}
			if there != "" {
				r.instead[here] = formLike(w.Text, f, there)
				from = append(from, here)
				here = strings.ToLower(r.instead[here])
			}
			if _, twice := r.means[here]; !twice && !slices.Contains(everyday, w.ID) {
				r.means[here] = w
				known = append(known, here)
			}
		}
	}
	r.find, r.trade = anyOf(from), anyOf(known)
	return r
}

// formLike makes of a regional word the form that f is of text: its plural, or itself.
func formLike(text, f, there string) string {
	switch strings.TrimPrefix(strings.ToLower(f), strings.ToLower(text)) {
	case "s", "es":
		if strings.HasSuffix(there, "s") || strings.HasSuffix(there, "x") || strings.HasSuffix(there, "ch") {
			return there + "es"
		}
		return there + "s"
	}
	return there
}

// anyOf finds any of some words, whole, the longest first; nil for none.
func anyOf(words []string) *regexp.Regexp {
	if len(words) == 0 {
		return nil
	}
	slices.SortStableFunc(words, func(a, b string) int { return len(b) - len(a) })
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = regexp.QuoteMeta(w)
	}
	return regexp.MustCompile(`(?i)\b(?:` + strings.Join(quoted, "|") + `)\b`)
}

// atHome tells whether the book's own words and units are those of the shop.
func (r *region) atHome() bool { return r.find == nil && r.settings.Units != "imperial" }

// say puts the words of the region and the units of the shop into a text of the book.
func (r *region) say(text string) string {
	if r.settings.Units == "imperial" {
		text = inUnits(text, r.settings.Units, r.settings.Locale)
	}
	if r.find == nil {
		return text
	}
	return r.find.ReplaceAllStringFunc(text, func(m string) string {
		out := r.instead[strings.ToLower(m)]
		if first, _ := utf8.DecodeRuneInString(m); unicode.IsUpper(first) {
			c, n := utf8.DecodeRuneInString(out)
			out = string(unicode.ToUpper(c)) + out[n:]
		}
		return out
	})
}

// explain sets, beside the section or decision in which a word of the trade
// first stands, what it means.
func (l *letter) explain(d *letterText) {
	if l.region.trade == nil {
		return
	}
	said := map[string]bool{}
	for i := range d.Sections {
		s := &d.Sections[i]
		s.Gloss = l.explained(s.Blocks, said)
	}
	makeRoom(d.Sections)
}

// makeRoom moves explanations that would make a section of the first page higher
// than its text to the one after it, where the margin is free.
func makeRoom(sections []section) {
	for i := 0; i+1 < len(sections) && sections[i+1].Front; i++ {
		s, next := &sections[i], &sections[i+1]
		if room := marginRoom[s.ID]; len(s.Gloss) > room {
			next.Gloss = append(slices.Clone(s.Gloss[room:]), next.Gloss...)
			s.Gloss = s.Gloss[:room]
		}
	}
}

// marginRoom is for how many explanations the first page has room beside a section.
var marginRoom = map[string]int{"matters": 4, "money": 7}

// explained gives the words that first stand in some blocks, but for those in
// decisions, which keep their own.
func (l *letter) explained(blocks []block, said map[string]bool) []string {
	var items []string
	for i := range blocks {
		b := &blocks[i]
		if b.Kind == decisionBlock {
			b.Gloss = l.explained(b.Inside, said)
			continue
		}
		if b.Kind == quoteBlock || b.Kind == answersBlock || b.Kind == pictureBlock {
			continue
		}
		for _, m := range l.region.trade.FindAllString(b.words(), -1) {
			if w := l.region.means[strings.ToLower(m)]; !said[w.ID] {
				said[w.ID] = true
				items = append(items, advisor.Sentence(l.region.shown[w.ID]+": "+l.region.say(w.Means)))
			}
		}
	}
	return items
}

// words are all texts of a block itself, in reading order.
func (b *block) words() string {
	all := append([]string{b.Text}, b.Items...)
	for i := range b.Pairs {
		all = append(append(all, b.Pairs[i].Lead), b.Pairs[i].Texts...)
	}
	for _, r := range b.Rows {
		all = append(all, r...)
	}
	return strings.Join(all, "\n")
}
