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
	find    *regexp.Regexp
	instead map[string]string // word as in the book, lower case -> regional word
	trade   *regexp.Regexp
	means   map[string]*advisor.Word // regional word, lower case
	shown   map[string]string        // id -> regional word
}

// everyday are words of the list that any reader knows; they are there for
// their spelling elsewhere.
var everyday = []string{"petrol", "bonnet", "tyre", "centre", "aluminium", "windscreen", "boot", "luggage_space", "bumper",
	"dashboard", "number_plate", "laid_up", "estate", "saloon", "handbrake", "spanner", "indicator"}

func newRegion(words []advisor.Word, locale string) *region {
	r := &region{instead: map[string]string{}, means: map[string]*advisor.Word{}, shown: map[string]string{}}
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

// say puts the words of the region into a text of the book.
func (r *region) say(text string) string {
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

// explain sets, below the block in which a word of the trade first stands, what
// it means.
func (l *letter) explain(d *letterText) {
	if l.region.trade == nil {
		return
	}
	said := map[string]bool{}
	for i := range d.Sections {
		d.Sections[i].Blocks = l.explained(d.Sections[i].Blocks, said)
	}
}

func (l *letter) explained(blocks []block, said map[string]bool) []block {
	var out []block
	for _, b := range blocks {
		if b.Kind == decisionBlock {
			b.Inside = l.explained(b.Inside, said)
		}
		out = append(out, b)
		if b.Kind == quoteBlock || b.Kind == answersBlock || b.Kind == pictureBlock {
			continue
		}
		var items []string
		for _, m := range l.region.trade.FindAllString(b.words(), -1) {
			if w := l.region.means[strings.ToLower(m)]; !said[w.ID] {
				said[w.ID] = true
				items = append(items, sentence(l.region.shown[w.ID]+": "+l.region.say(w.Means)))
			}
		}
		if len(items) > 0 {
			out = append(out, block{Kind: glossBlock, Text: l.say("gloss", nil), Items: items})
		}
	}
	return out
}

// words are all texts of a block itself, in reading order.
func (b *block) words() string {
	all := append([]string{b.Text}, b.Items...)
	for _, r := range b.Rows {
		all = append(all, r...)
	}
	return strings.Join(all, "\n")
}
