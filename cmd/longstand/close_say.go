package main

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/interview"
)

// closeAll takes everything that the command line says at once, or nothing of it.
func (k *desk) closeAll(data []byte, cl *interview.Closing, s *closing) error {
	var told []string
	for _, said := range s.said {
		var line string
		var err error
		if data, line, err = k.sayOne(data, cl, said, s); err != nil {
			return &exit{exitFault, fmt.Errorf("nothing is kept: %w", err)}
		}
		told = append(told, line)
	}
	if err := k.end(data, s); err != nil {
		return err
	}
	k.talk("%s", strings.Join(told, "\n"))
	if left := interview.NewClosing(k.e.Book(), k.e.Brief(k.c), s.all).Open(); len(left) > 0 {
		k.talk("not said, so taken as not looked at or not noted: %s", strings.Join(left, ", "))
	}
	return k.endPage(s)
}

// sayOne puts one thing said on the command line into the case's bytes, and
// says it back.
func (k *desk) sayOne(data []byte, cl *interview.Closing, said string, s *closing) ([]byte, string, error) {
	id, typed, ok := strings.Cut(said, "=")
	if id = strings.TrimSpace(id); !ok {
		return nil, "", fmt.Errorf("%q says nothing: SUSPECT=FINDING or hours:OPERATION=HOURS", said)
	}
	p := cl.About(id)
	if p == nil {
		return nil, "", k.noSuch(id)
	}
	e, shown, err := k.understood(p, typed, s)
	if err != nil {
		return nil, "", err
	}
	data, err = k.ending(data, e, s)
	return data, p.Question.Ask + ": " + shown, err
}

// understood reads one thing said on the command line; its note is the command's.
func (k *desk) understood(p *interview.Prompt, typed string, s *closing) (interview.Ending, string, error) {
	c, e, shown, err := interview.Understand(p, typed)
	if err == nil && c != interview.None {
		err = fmt.Errorf("%q is no finding", typed)
	}
	if err != nil {
		return e, "", fmt.Errorf("%s: %w", p.Question.ID, err)
	}
	if e.Looked != nil && e.Looked.Note == "" {
		e.Looked.Note = s.note
	}
	if e.Taken != nil && e.Taken.Note == "" {
		e.Taken.Note = s.note
	}
	return e, shown, nil
}

// many counts things in words: "1 thing", "3 things".
func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// noSuch says which id is nearest to one that the book does not have.
func (k *desk) noSuch(id string) error {
	b := k.e.Book()
	var ids []string
	kind := "suspect"
	if op, hours := strings.CutPrefix(id, interview.HoursOf); hours {
		kind, id = "operation", op
		for i := range b.Operations {
			ids = append(ids, b.Operations[i].ID)
		}
	} else {
		for i := range b.Suspects {
			ids = append(ids, b.Suspects[i].ID)
		}
	}
	return fmt.Errorf("there is no %s %q; %s", kind, id, near(id, ids))
}

// ending puts one thing said at the end of a job into the case's bytes.
func (k *desk) ending(data []byte, e interview.Ending, s *closing) ([]byte, error) {
	if e.Looked != nil {
		e.Looked.By = s.by
		return casefile.Look(data, *e.Looked)
	}
	done := func(d advisor.Decision) bool { return d.Operation == e.Taken.Operation }
	if !slices.ContainsFunc(k.c.Done, done) {
		return nil, fmt.Errorf("%s is not recorded as done; `longstand record %s done:%s` first", e.Taken.Operation, k.path, e.Taken.Operation)
	}
	return k.takeHours(data, e.Taken, s.by)
}

// takeHours puts hours beside what the book estimates now, so that a later
// book does not judge them.
func (k *desk) takeHours(data []byte, t *advisor.Taken, by string) ([]byte, error) {
	t.By, t.Estimate = by, k.e.Brief(k.c).Operation(t.Operation).Estimate()
	return casefile.Take(data, *t)
}

// withHours adds to an operation that is recorded as done the hours it took.
func (k *desk) withHours(data []byte, op string, e *entry) ([]byte, string, error) {
	p := interview.NewClosing(k.e.Book(), &advisor.Advice{Case: k.c}, false).About(interview.HoursOf + op)
	said, shown, err := k.understood(p, e.hours, &closing{note: e.note})
	if err != nil {
		return nil, "", err
	}
	data, err = k.takeHours(data, said.Taken, e.by)
	return data, "done: " + op + ", hours taken: " + shown, err
}

// end notes that the job has ended.
func (k *desk) end(data []byte, s *closing) error {
	data, err := casefile.Close(data, advisor.Closed{Date: s.on, By: s.by})
	if err != nil {
		return failure(fmt.Errorf("%s: %w", k.path, err))
	}
	_, err = k.keep(data)
	return err
}
