package interview

import (
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
	list, not := strings.CutPrefix(s, "not ")
	if _, named := p.Question.OptionBit(s); many && !named && !not {
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

// pick finds the options that a list names, each once. The whole text may be
// one option's name; else it is split at "or", "and", commas and, where numbers
// stand alone, at spaces.
func (p *Prompt) pick(s string, many bool) ([]int, error) {
	if i := p.named(s); i >= 0 {
		return []int{i}, nil
	}
	for _, word := range []string{" or ", " and ", " nor ", ";", " + "} {
		s = strings.ReplaceAll(s, word, ",")
	}
	words := strings.Split(s, ",")
	if len(words) == 1 && numbers(strings.Fields(s)) {
		words = strings.Fields(s)
		if len(words) > 1 && !many {
			return nil, wrong("one number, or as: 1 or 2", "one answer is wanted, and these are %d", len(words))
		}
	}
	var out []int
	for _, word := range words {
		word = strings.TrimSpace(word)
		if word == "" {
			continue
		}
		i := p.named(word)
		if i < 0 {
			return nil, p.noOption(word)
		}
		if !slices.Contains(out, i) {
			out = append(out, i)
		}
	}
	if len(out) == 0 {
		return nil, p.noOption(s)
	}
	return out, nil
}

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
