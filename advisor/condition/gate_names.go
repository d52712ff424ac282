package condition

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// maxHints ends the search for nearest names in a book full of faults.
const maxHints = 200

// nearest gives the candidate that is fewest edits away from a name, or "" when
// none is near enough to be meant. Ties go to the first in order.
func (c *Compiler) nearest(name string, candidates []string) string {
	if c.hints >= maxHints || len(name) > 64 {
		return ""
	}
	c.hints++
	limit := max(1, min(3, len(name)/3))
	best, found := limit+1, ""
	for _, cand := range candidates {
		if d := len(cand) - len(name); d > limit || -d > limit {
			continue
		}
		if d := edits(name, cand, best); d < best || d == best && found != "" && cand < found {
			best, found = d, cand
		}
	}
	return found
}

// edits counts the least insertions, deletions, exchanges and swaps of
// neighbours between two words (optimal string alignment); at least limit means
// limit or more.
func edits(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > limit {
			return limit + 1
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}

// optionIDs lists the ids of a question's options.
func optionIDs(q *advisor.Question) []string {
	ids := make([]string, len(q.Options))
	for i := range q.Options {
		ids[i] = q.Options[i].ID
	}
	return ids
}

// listed joins words for a help line; a long list is cut short.
func listed(words []string) string {
	const most = 12
	if len(words) > most {
		return fmt.Sprintf("%s, ... (%d in all)", strings.Join(words[:most], ", "), len(words))
	}
	return strings.Join(words, ", ")
}

// nameHelp says what an unknown name may have meant.
func (c *Compiler) nameHelp(name string) string {
	if _, ok := c.operations[name]; ok {
		return fmt.Sprintf("%s is an operation: write done(%s)", name, name)
	}
	if _, ok := c.functions[name]; ok {
		return fmt.Sprintf("%s is a function: write %s", name, c.usage(name))
	}
	if q := c.ownerOf(name); q != nil {
		if q.Kind == advisor.Choices {
			return fmt.Sprintf("%s is an option: write %q in %s", name, name, q.ID)
		}
		return fmt.Sprintf("%s is an option: write %s == %q", name, q.ID, name)
	}
	if near := c.nearest(name, c.names); near != "" {
		return "the nearest is " + near
	}
	return "a name here is a question or a derived value of the book"
}

// ownerOf finds the one question that has an option of this id.
func (c *Compiler) ownerOf(option string) *advisor.Question {
	var owner *advisor.Question
	for i := range c.questions {
		q := &c.questions[i]
		if q.Kind != advisor.Choice && q.Kind != advisor.Choices {
			continue
		}
		if _, ok := q.OptionBit(option); ok {
			if owner != nil {
				return nil
			}
			owner = q
		}
	}
	return owner
}

// functionHelp says what an unknown function may have meant.
func (c *Compiler) functionHelp(name string) string {
	if _, ok := c.operations[name]; ok {
		return fmt.Sprintf("%s is an operation: write done(%s)", name, name)
	}
	var all []string
	for i := range own {
		all = append(all, own[i].Name)
	}
	for i := range c.trade {
		all = append(all, c.trade[i].name)
	}
	slices.Sort(all)
	if near := c.nearest(name, all); near != "" {
		return "the nearest is " + c.usage(near)
	}
	return "there are " + listed(all)
}

// usage shows how a function is called.
func (c *Compiler) usage(name string) string {
	for i := range own {
		if own[i].Name == name {
			return own[i].Write
		}
	}
	i, ok := c.functions[name]
	if !ok {
		return name
	}
	var params []string
	for _, p := range c.trade[i].params {
		params = append(params, p.name)
	}
	return name + "(" + strings.Join(params, ", ") + ")"
}
