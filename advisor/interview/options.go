package interview

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
)

// options reads options by number, id or words: "2", "oil_film or mud", "not 3",
// and of a question that may have several "1 3" or "none".
func (p *Prompt) options(s string, e *casefile.Entry) (string, error) {
	many := p.Question.Kind == advisor.Choices
	list, not := strings.CutPrefix(strings.Replace(s, "anything but ", "not ", 1), "not ")
	if i, _ := p.first(s); i >= 0 {
		list, not = s, false // an option whose own words begin with not
	}
	if many && !p.exactly(s) && !not {
		switch s {
		case "none", "nothing", "no", "none of these", "0":
			e.Is = []string{}
			return "none of these", nil
		case "all":
			list = strings.Join(ids(p.Question), ", ")
		}
	}
	picked, err := p.pick(list, many || not)
	if err != nil {
		return "", err
	}
	var chosen, named []string
	for _, i := range picked {
		chosen, named = append(chosen, p.Question.Options[i].ID), append(named, p.Options[i])
	}
	switch {
	case not && (many || len(chosen) >= len(p.Options)):
		e.Not = chosen
		return "not " + strings.Join(named, ", nor "), nil
	case not:
		e.Is = "not " + strings.Join(chosen, " or ")
		return "anything but " + strings.Join(named, " or "), nil
	case many:
		e.Is = chosen
		return strings.Join(named, "; "), nil
	}
	e.Is = strings.Join(chosen, " or ")
	return strings.Join(named, ", or "), nil
}

func ids(q *advisor.Question) (out []string) {
	for i := range q.Options {
		out = append(out, q.Options[i].ID)
	}
	return out
}

// listMarks stand between the options of a list; the words of one option may
// hold them too.
var listMarks = regexp.MustCompile(`[,;]? (?:or|and|nor) |[,;]| \+ `)

// pick finds the options that a list names, each once. From the left, the
// longest text up to a mark that is one option's name is taken for it. Where
// numbers stand alone, spaces are marks.
func (p *Prompt) pick(s string, many bool) ([]int, error) {
	if words := strings.Fields(s); len(words) > 1 && numbers(words) {
		if !many {
			return nil, wrong("one number, or as: 1 or 2", "one answer is wanted, and these are %d", len(words))
		}
		s = strings.Join(words, ",")
	}
	var out []int
	for rest := strings.TrimSpace(s); rest != ""; {
		i, taken := p.first(rest)
		if i < 0 {
			word := rest[:taken]
			if word = strings.TrimSpace(word); word != "" {
				return nil, p.noOption(word)
			}
		} else if !slices.Contains(out, i) {
			out = append(out, i)
		}
		rest = strings.TrimSpace(rest[taken:])
		if at := listMarks.FindStringIndex(" " + rest); at != nil && at[0] <= 1 {
			rest = strings.TrimSpace((" " + rest)[at[1]:])
		}
	}
	if len(out) == 0 {
		return nil, p.noOption(s)
	}
	return out, nil
}

// first finds the option that a list begins with, -1 for none, and how many
// bytes of the list stand for it.
func (p *Prompt) first(list string) (option, taken int) {
	ends := []int{len(list)}
	for _, at := range listMarks.FindAllStringIndex(list, maxMarks) {
		ends = append(ends, at[0])
	}
	slices.Sort(ends)
	for _, end := range slices.Backward(ends) {
		if i := p.named(strings.TrimSpace(list[:end])); i >= 0 {
			return i, end
		}
	}
	return -1, ends[0]
}

// maxMarks bounds how far the name of one option is looked for.
const maxMarks = 100

func numbers(words []string) bool {
	for _, w := range words {
		if _, err := strconv.Atoi(w); err != nil {
			return false
		}
	}
	return true
}

// named finds an option by its number, its id, its words, or as much of either
// as no other begins with; -1 for none.
func (p *Prompt) named(word string) int {
	if n, err := strconv.Atoi(word); err == nil {
		if 1 <= n && n <= len(p.Options) {
			return n - 1
		}
		return -1
	}
	id := strings.ReplaceAll(word, " ", "_")
	found := -1
	for i := range p.Question.Options {
		option, name := p.Question.Options[i].ID, strings.ToLower(p.Options[i])
		switch {
		case option == id || name == word:
			return i
		case len(word) > 1 && (strings.HasPrefix(option, id) || strings.HasPrefix(name, word)):
			if found >= 0 {
				return -1
			}
			found = i
		}
	}
	return found
}

// exactly tells whether a text is an option's id, or its words whole.
func (p *Prompt) exactly(s string) bool {
	_, id := p.Question.OptionBit(s)
	return id || slices.ContainsFunc(p.Options, func(name string) bool { return strings.EqualFold(name, s) })
}

func (p *Prompt) noOption(word string) error {
	help := "a number from 1 to " + strconv.Itoa(len(p.Options)) + ", hidden, or can't tell"
	candidates := ids(p.Question)
	for _, name := range p.Options {
		candidates = append(candidates, strings.ToLower(name))
	}
	if near := diag.Nearest(word, candidates); near != "" {
		help = `did you mean "` + near + `"?`
	}
	return wrong(help, "%q is none of the options, or begins more than one", word)
}
