package main

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/interview"
	"longstand/advisor/terminal"
)

// types lists the ids of the known types.
func (k *desk) types() (ids []string) {
	for i := range k.e.Book().Types {
		ids = append(ids, k.e.Book().Types[i].ID)
	}
	return ids
}

// chooseType asks which known type the car is, when the shop knows some and the
// case has no answer yet. A file of answers is asked only when it says.
func (k *desk) chooseType(iv *interview.Interview, asker interview.Asker, script *terminal.Script, s *sitting) (stopped bool, err error) {
	silent := script != nil && !slices.Contains(script.IDs(), advisor.TypeQuestion)
	if s.known != "" || len(k.types()) == 0 || len(k.c.Answers) > 0 || silent {
		return false, nil
	}
	t, stopped, err := iv.ChooseType(asker)
	if t == nil || err != nil {
		return stopped, err
	}
	return false, k.take(t)
}

// unchosen ends an intake that ended at the question of the type.
func (k *desk) unchosen(iv *interview.Interview, s *sitting, err error) error {
	if err != nil {
		return k.broken(err, len(iv.Case().Answers))
	}
	return k.finish(iv, s, false)
}

// take puts the answers of a known type into the case, and says which.
func (k *desk) take(t *advisor.Type) error {
	data, kept, err := casefile.Known(k.data, t)
	if err != nil {
		return failure(fmt.Errorf("%s: %w", k.path, err))
	}
	if _, err := k.keep(data); err != nil {
		return err
	}
	var put []string
	for i := range t.Answers {
		if id := t.Answers[i].Question; !slices.Contains(kept, id) {
			put = append(put, id)
		}
	}
	tell(k.d.errs, t.Name+", put in as known from paper", put)
	tell(k.d.errs, "answered already, and left as they are", kept)
	if t.Because != "" {
		fmt.Fprintln(k.d.errs, strings.TrimSuffix(t.Because, ".")+".")
	}
	return nil
}
