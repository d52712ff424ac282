package interview

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// The words of a once-over besides those of every prompt.
var (
	noneDiffers = []string{"none", "nothing", "usual", "as usual", "all usual", "all as usual", "none of these", "0"}
	oneByOne    = []string{Each, "one by one"}
)

// Each asks the questions of a once-over one by one.
const Each = "each"

// only is the word before the numbers that alone can be told.
const only = "only "

// sweep understands what a person typed at a once-over.
func (p *Prompt) sweep(s string) (Reply, error) {
	e := casefile.Entry{How: advisor.Nohow}
	value, told, err := p.aside(s, &e)
	if err != nil {
		return Reply{}, err
	}
	plain := strings.ToLower(strings.NewReplacer("’", "'", "`", "'").Replace(value))
	usual := p.Once.usual()
	w := sweeper{p: p, entry: e, untold: map[int]any{}}
	switch {
	case slices.Contains(unseen, plain):
		w.rest = casefile.Hidden
	case slices.Contains(unsaid, plain), !usual && slices.Contains(noneDiffers, plain):
		w.rest = casefile.CantTell
	case slices.Contains(oneByOne, plain):
		w.all = true
	case slices.Contains(noneDiffers, plain):
	default:
		list, alone := strings.CutPrefix(plain, only)
		if alone || !usual {
			w.rest = casefile.CantTell
		}
		if err = w.pick(list); err != nil {
			return Reply{}, err
		}
	}
	r, err := w.reply()
	r.HowTold = told
	return r, err
}

// usual tells whether any question that is put has a usual answer.
func (o *Once) usual() bool {
	return slices.ContainsFunc(o.Items, func(i Item) bool { return i.Usual != "" })
}

var span = regexp.MustCompile(`(\d+) ?(?:-|–|to) ?(\d+)`)

// numbered finds the questions that a list names, each once, in their order:
// by number, by a range of numbers, by id or by words.
func (p *Prompt) numbered(s string) (picked []int, err error) {
	if i := p.named(s); i >= 0 {
		return []int{i}, nil
	}
	for _, word := range []string{" and ", ";", "&", "+"} {
		s = strings.ReplaceAll(s, word, ",")
	}
	for _, part := range strings.Split(strings.Trim(s, ", "), ",") {
		part = strings.TrimSpace(part)
		words := []string{part}
		if spaced := strings.Fields(span.ReplaceAllString(part, "$1-$2")); p.named(part) < 0 && figures(spaced) {
			words = spaced
		}
		for _, word := range words {
			from, to := p.named(word), p.named(word)
			if low, high, ok := strings.Cut(word, "-"); ok && figures([]string{word}) {
				from, to = p.named(low), p.named(high)
			}
			if from < 0 || to < from {
				return nil, wrong(fmt.Sprintf("numbers from 1 to %d, none, only 2, c or each", len(p.Options)), "%q is none of what is listed", word)
			}
			for i := from; i <= to; i++ {
				picked = append(picked, i)
			}
		}
	}
	slices.Sort(picked)
	return slices.Compact(picked), nil
}

// figures tells whether all words are numbers or ranges of numbers.
func figures(words []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return strings.Trim(w, "0123456789-") != "" }) && len(words) > 0
}
