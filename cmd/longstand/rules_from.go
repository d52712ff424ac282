package main

import (
	"regexp"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/tomltext"
)

// fromCase turns the noted answers of a case into a draft: the notes become the
// reason, the answers the condition and its first specimen.
func (d *door) fromCase(t *draftText, n *newRule, files []book.File) error {
	if slices.Contains([]string{"adjust", "family", "once_over", "route", "settings", "source", "withdraw", "word"}, t.kind) {
		return usage("no case teaches %s: leave --from out", t.kind)
	}
	r := book.Load(files)
	if r.Diagnostics.HasErrors() {
		return d.tell(r.Diagnostics)
	}
	c, err := d.openCase(n.from, r.Book)
	if err != nil {
		return err
	}
	put := func(key, value string) {
		if t.key(key) != nil || key == "learned_on" || key == "by" {
			t.put(key, quoted(value))
		}
	}
	t.drawn = true
	put("learned_on", c.ID)
	if c.Words != "" {
		t.text = strings.Replace(t.text, "\n[["+t.kind+"]]", "\n# In the owner's words: "+strings.Join(strings.Fields(c.Words), " ")+"\n[["+t.kind+"]]", 1)
	}
	if t.kind == "type" {
		return t.knownOf(c, r.Book)
	}
	noted, err := notedAnswers(c, n.about)
	if err != nil {
		return err
	}
	return t.taught(c, n.from, noted, r.Book, put)
}

// taught puts what noted answers teach into a draft.
func (t *draftText) taught(c *advisor.Case, from string, noted []*advisor.Answer, b *advisor.Book, put func(key, value string)) error {
	var notes, atoms, fires, buts, stills []string
	for _, a := range noted {
		notes = append(notes, strings.Join(strings.Fields(a.Note), " "))
		if a.By != "" {
			put("by", a.By)
		}
		q := b.Question(a.Question)
		is, not := atomsOf(q, a.Value)
		if len(is) > 0 {
			atoms, buts = append(atoms, is...), append(buts, not...)
			stills = append(stills, stillsOf(q, a.Value)...)
			fires = append(fires, q.ID+" = "+valueOf(q, a.Value))
		}
	}
	put("because", strings.Join(notes, "; "))
	t.rename(slug(c.ID) + "_" + noted[0].Question)
	if len(atoms) == 0 {
		return usage("no answer of %s with a note can stand in a condition: a text or a code cannot", from)
	}
	t.condition(strings.Join(atoms, " and "), fires, buts, stills)
	return nil
}

// notedAnswers are the answers of a case that have a note of a person, or those
// that were asked for.
func notedAnswers(c *advisor.Case, about []string) (out []*advisor.Answer, err error) {
	for i := range c.Answers {
		a := &c.Answers[i]
		if _, fromType := advisor.TypeOf(a.Note); a.Note == "" || fromType || len(about) > 0 && !slices.Contains(about, a.Question) {
			continue
		}
		if !slices.ContainsFunc(out, func(x *advisor.Answer) bool { return x.Question == a.Question }) {
			out = append(out, a)
		}
	}
	for _, id := range about {
		if !slices.ContainsFunc(out, func(x *advisor.Answer) bool { return x.Question == id }) {
			return nil, usage("%s has no answer to %q with a note", c.File, id)
		}
	}
	if len(out) == 0 {
		return nil, usage("%s has no answer with a note; write one with: longstand record %s QUESTION=ANSWER --note WHY", c.File, c.File)
	}
	return out, nil
}

// condition puts a condition with its specimens into the first table of the
// draft that has one of cars; questions and looks keep their own. The rule that
// reads a derived value has the same specimens as the value.
func (t *draftText) condition(when string, fires, buts, stills []string) {
	switch t.kind {
	case "question", "inspection":
		return
	case "derived":
		t.putIn(t.item(), "is", "'"+when+"'")
		t.specimens("is", fires, buts, stills)
	default:
		t.putIn(t.having("when"), "when", "'"+when+"'")
	}
	t.specimens("when", fires, buts, stills)
}

// having is the first table of the draft with a key.
func (t *draftText) having(key string) *tomltext.Node {
	root, _ := tomltext.Parse("draft", []byte(t.text))
	for i := range root.Fields {
		for _, n := range root.Fields[i].Value.Items {
			if n.Get(key) != nil {
				return n
			}
		}
	}
	return nil
}

// specimens puts those of a condition beside it.
func (t *draftText) specimens(of string, fires, buts, stills []string) {
	t.putIn(t.having(of), "fires", "[{ "+strings.Join(fires, ", ")+" }]")
	for _, key := range []string{"fires_not", "but_not"} {
		if f := t.having(of).Field(key); f != nil {
			changed := "but_not = [{ " + strings.Join(buts, " }, { ") + " }]"
			if len(stills) > 0 {
				changed = "but_fires = [{ " + strings.Join(stills, " }, { ") + " }]\n" + changed
			}
			t.text = t.text[:f.KeySpan.Start] + changed + t.text[f.Value.Span.End:]
		}
	}
}

// knownOf puts what a case says of how the car is built into the draft of a
// known type: the fixed answers, but for its story and its year.
func (t *draftText) knownOf(c *advisor.Case, b *advisor.Book) error {
	var out []string
	for i := range c.Answers {
		q := b.Question(c.Answers[i].Question)
		if v := valueOf(q, c.Answers[i].Value); q.Fixed && q.Station != "story" && q.Kind != advisor.Year && v != "" {
			out = append(out, q.ID+" = "+v)
		}
	}
	if len(out) == 0 {
		return usage("%s answers nothing that is so of every car of its type", c.File)
	}
	t.put("answers", "{ "+strings.Join(slices.Compact(out), ", ")+" }")
	return nil
}

// slug makes an id of a file's name.
func slug(s string) string {
	s = strings.Trim(regexp.MustCompile(`[^a-z0-9]+`).ReplaceAllString(strings.ToLower(s), "_"), "_")
	if s == "" || s[0] < 'a' {
		return "case_" + s
	}
	return s
}
