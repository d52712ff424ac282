package main

import (
	"errors"
	"fmt"
	"strings"

	"longstand/advisor"
	"longstand/advisor/interview"
	"longstand/advisor/report"
	"longstand/advisor/terminal"
)

// unsaid lists what a closing without input would have to ask.
func (k *desk) unsaid(cl *interview.Closing, open []string) error {
	if k.d.asJSON {
		return &exit{exitFault, fmt.Errorf("not said: %s", strings.Join(open, ", "))}
	}
	for _, id := range open {
		fmt.Fprintf(k.d.out, "%-32s %s\n", id, cl.About(id).Question.Ask)
	}
	return &exit{exitFault, fmt.Errorf("not said: %s", many(len(open), "thing"))}
}

// askEnd asks for the end of a job, each answer kept before the next question,
// and tells whether all was said.
func (k *desk) askEnd(cl *interview.Closing, s *closing) (closed bool, err error) {
	asker, script, err := k.endAsker(cl, s)
	if err != nil {
		return false, err
	}
	keep := func(e interview.Ending) (*advisor.Case, error) {
		data, err := k.ending(k.data, e, s)
		if err != nil {
			return nil, failure(fmt.Errorf("%s: %w", k.path, err))
		}
		return k.keep(data)
	}
	finished, err := cl.Run(asker, keep, func(c *advisor.Case) string {
		return report.Ended(k.e.Brief(c), k.e.Book())
	})
	if err != nil {
		var told *exit
		if errors.As(err, &told) {
			return false, err
		}
		return false, &exit{exitFault, fmt.Errorf("%w\nwhat was said is kept in %s; `longstand close %s` goes on from there", err, k.path, k.path)}
	}
	left := cl.Open()
	switch {
	case len(left) == 0:
	case s.noInput:
		err = k.unsaid(cl, left)
	default:
		k.talk("not closed yet, with %s not said; `longstand close %s` goes on from there", many(len(left), "thing"), k.path)
	}
	if script != nil {
		err = complain(err, script.Unused(func(string, string) bool { return false }))
	}
	return finished && len(left) == 0, err
}

// endAsker picks who answers, as at intake.
func (k *desk) endAsker(cl *interview.Closing, s *closing) (interview.Asker, *terminal.Script, error) {
	if s.answers == "" {
		return k.person(s.plain), nil, nil
	}
	script, err := k.d.readScript(s.answers, s.noInput)
	if err != nil {
		return nil, nil, err
	}
	for _, id := range script.IDs() {
		if cl.About(id) == nil {
			return nil, nil, &exit{exitFault, fmt.Errorf("%s: %w", s.answers, k.noSuch(id))}
		}
	}
	return script, script, nil
}
