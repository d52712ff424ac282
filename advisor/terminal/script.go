package terminal

import (
	"fmt"
	"strings"

	"longstand/advisor/interview"
)

// Script answers from a list: question id = what a person would type. A
// once-over that the list does not name is gone through one by one. It complains
// of answers that were never asked for.
type Script struct {
	answers map[string]scripted
	order   []string
	file    string
	said    string // the last thing said, which tells why an answer was refused
	last    string
	partial bool
}

type scripted struct {
	typed string
	line  int
	used  bool
}

// ReadScript reads a list of answers, a line each: id = answer. Blank lines and
// lines that begin with # are passed over. With partial, a question without an
// answer is left for another time; else it is an error.
func ReadScript(file, text string, partial bool) (*Script, error) {
	s := &Script{answers: map[string]scripted{}, file: file, partial: partial}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		id, typed, ok := strings.Cut(line, "=")
		id = strings.TrimSpace(id)
		if !ok || id == "" {
			return nil, fmt.Errorf("%s:%d: a line is a question's id, =, and the answer as one types it", file, i+1)
		}
		if before, twice := s.answers[id]; twice {
			return nil, fmt.Errorf("%s:%d: %s is answered already on line %d", file, i+1, id, before.line)
		}
		s.answers[id] = scripted{typed: strings.TrimSpace(typed), line: i + 1}
		s.order = append(s.order, id)
	}
	return s, nil
}

// Ask gives the answer of the list. An answer that was refused is an error with
// its place: asked again, a list says the same again.
func (s *Script) Ask(p *interview.Prompt) (string, error) {
	id := p.Question.ID
	a, ok := s.answers[id]
	if !ok && p.Once != nil {
		return interview.Each, nil
	}
	if !ok && s.partial {
		return string(interview.Skip), nil
	}
	if !ok {
		return "", fmt.Errorf("%s has no answer to %s (%s)", s.file, id, p.Question.Ask)
	}
	if a.used && s.last == id {
		return "", fmt.Errorf("%s:%d: %s: %s", s.file, a.line, id, s.said)
	}
	a.used, s.last = true, id
	s.answers[id] = a
	return a.typed, nil
}

// Say keeps what was said, for the error of a refused answer.
func (s *Script) Say(text string) { s.said = text }

// Unused lists the answers that nothing asked for, with their places, but for
// those that are known without being asked.
func (s *Script) Unused(known func(id, typed string) bool) (out []string) {
	for _, id := range s.order {
		if a := s.answers[id]; !a.used && !known(id, a.typed) {
			out = append(out, fmt.Sprintf("%s:%d: %s was not asked", s.file, a.line, id))
		}
	}
	return out
}

// IDs lists the questions that the list answers, in its order.
func (s *Script) IDs() []string { return s.order }
