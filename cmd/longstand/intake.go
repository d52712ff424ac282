package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"reflect"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/interview"
	"longstand/advisor/report"
	"longstand/advisor/terminal"
)

// sitting is how one intake is to be held.
type sitting struct {
	options        interview.Options
	noInput, plain bool
	answers, date  string
	known          string // id of a known type
}

func (d *door) intake() *cobra.Command {
	var s sitting
	c := &cobra.Command{Use: "intake CASE", Short: "the guided interview; starts a case or goes on with one",
		Long:    "Asks what can still matter, station by station. Every answer is kept before the next\nquestion, so stop whenever you like: the same command goes on from there.",
		Example: "  longstand intake estate.toml\n  longstand intake estate.toml --brief\n  longstand intake estate.toml --answers answers.txt",
		Args:    oneCase}
	c.Flags().BoolVar(&s.options.All, "all", false, "ask everything, whatever it changes")
	c.Flags().BoolVar(&s.options.Brief, "brief", false, "stop when no question is worth its minutes, and list what was left out")
	c.Flags().BoolVar(&s.noInput, "no-input", false, "ask nothing; list what is missing")
	c.Flags().BoolVar(&s.plain, "plain", false, "whole lines only, for screen readers and pipes")
	c.Flags().StringVar(&s.answers, "answers", "", "file of answers, a line each: question = answer")
	c.Flags().StringVar(&s.date, "date", "", "the day of a new case, as 2025-10-14 (default: today)")
	c.Flags().StringVar(&s.known, "type", "", "a known type of the house rules, whose answers are put in")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if s.options.All && s.options.Brief {
			return usage("--all and --brief exclude one another")
		}
		if s.date == "" {
			s.date = time.Now().Format(time.DateOnly)
		}
		k, err := d.sit(args[0], s.date)
		if err != nil {
			return err
		}
		return k.leave(k.interview(&s))
	}
	return c
}

// interview holds the intake and tells what comes next.
func (k *desk) interview(s *sitting) error {
	if k.isNew {
		fmt.Fprintf(k.d.errs, "%s is begun, on %s.\n", k.path, k.c.Date)
	}
	iv := interview.New(k.e, k.c, s.options)
	if s.known != "" {
		t := iv.KnownType(s.known)
		if t == nil {
			return usage("--type: the shop knows no type %q; %s", s.known, nearestHint(s.known, k.types()))
		}
		if err := k.take(t); err != nil {
			return err
		}
		iv = interview.New(k.e, k.c, s.options)
	}
	if s.noInput && s.answers == "" {
		return k.missing(iv)
	}
	asker, script, err := k.asker(iv, s)
	if err != nil {
		return err
	}
	if stopped, err := k.chooseType(iv, asker, script, s); stopped || err != nil {
		return k.unchosen(iv, s, err)
	}
	iv = interview.New(k.e, k.c, s.options)
	finished, err := iv.Run(asker, k.answer, report.Text)
	if err != nil {
		return k.broken(err, len(iv.Case().Answers))
	}
	err = k.finish(iv, s, finished)
	if script == nil {
		return err
	}
	return complain(err, script.Unused(k.holds(iv)))
}

// answer puts answers into the case, all of them in one write or none.
func (k *desk) answer(given []interview.Given) (*advisor.Case, error) {
	data, err := k.data, error(nil)
	for i := range given {
		g := &given[i]
		switch {
		case g.Gone:
			data, err = casefile.Without(data, g.Question.ID)
		case k.several(g.Question.ID):
			data, err = casefile.Another(data, g.Question, g.Entry)
		default:
			data, err = casefile.Answer(data, g.Question, g.Entry)
		}
		if err != nil {
			return nil, failure(fmt.Errorf("%s: %w", k.path, err))
		}
	}
	return k.keep(data)
}

// several tells whether a question has several answers already: another joins them.
func (k *desk) several(id string) bool {
	n := 0
	for i := range k.c.Answers {
		if k.c.Answers[i].Question == id {
			n++
		}
	}
	return n > 1
}

// asker picks who answers: a file, a terminal, or a pipe.
func (k *desk) asker(iv *interview.Interview, s *sitting) (interview.Asker, *terminal.Script, error) {
	if s.answers != "" {
		script, err := k.d.readScript(s.answers, s.noInput)
		if err != nil {
			return nil, nil, err
		}
		for _, id := range script.IDs() {
			if iv.Question(id) == nil && k.e.Book().OnceOver(id) == nil && id != advisor.TypeQuestion {
				return nil, nil, &exit{exitFault, fmt.Errorf("%s: there is no question %q", s.answers, id)}
			}
		}
		return script, script, nil
	}
	return k.person(s.plain), nil, nil
}

// person asks whoever sits at the terminal or at the other end of the pipe.
func (k *desk) person(wholeLines bool) interview.Asker {
	in, ok := k.d.in.(*os.File)
	readAloud := wholeLines || os.Getenv("ACCESSIBLE") != "" || os.Getenv("TERM") == "dumb"
	if ok && !readAloud && terminal.IsTerminal(in) && terminal.IsTerminal(k.d.errs) {
		return terminal.NewScreen(in, k.d.errs, os.Getenv("NO_COLOR") == "")
	}
	return terminal.NewLines(k.d.in, k.d.errs)
}

// readScript reads a file of answers.
func (d *door) readScript(file string, partial bool) (*terminal.Script, error) {
	data, _, err := casefile.Load(d.files(), file)
	if err != nil {
		return nil, failure(plain(err))
	}
	script, err := terminal.ReadScript(file, string(data), partial)
	if err != nil {
		return nil, &exit{exitFault, err}
	}
	return script, nil
}

// holds tells whether the case has an answer already, with the same value as
// was typed, or answers to what a once-over lists: the same file of answers may
// be given a second time.
func (k *desk) holds(iv *interview.Interview) func(id, typed string) bool {
	answered := func(id string) bool {
		return slices.ContainsFunc(k.c.Answers, func(a advisor.Answer) bool { return a.Question == id })
	}
	return func(id, typed string) bool {
		if o := k.e.Book().OnceOver(id); o != nil {
			return slices.ContainsFunc(o.Members, func(m advisor.OnceMember) bool { return answered(m.Question) })
		}
		q := iv.Question(id)
		if q == nil {
			return false
		}
		r, err := iv.About(q).Read(typed)
		return err == nil && slices.ContainsFunc(k.c.Answers, func(a advisor.Answer) bool {
			return a.Question == id && reflect.DeepEqual(a.Value, r.Answer.Value)
		})
	}
}

// complain tells of answers that nothing asked for, behind what went wrong else.
func complain(err error, unused []string) error {
	if len(unused) == 0 {
		return err
	}
	said := errors.New(strings.Join(unused, "\n"))
	if err != nil {
		said = fmt.Errorf("%w\n%w", err, said)
	}
	return &exit{exitFault, said}
}

// broken ends an intake that could not go on; what was answered is in the case.
func (k *desk) broken(err error, answers int) error {
	many := fmt.Sprintf("%d answers are", answers)
	if answers == 1 {
		many = "1 answer is"
	}
	kept := fmt.Sprintf("%s kept in %s; `longstand intake %s` goes on from there", many, k.path, k.path)
	var told *exit
	if errors.As(err, &told) {
		fmt.Fprintln(k.d.errs, kept)
		return err
	}
	return &exit{exitFault, fmt.Errorf("%w\n%s", err, kept)}
}

// missing lists what an intake without input would have to ask.
func (k *desk) missing(iv *interview.Interview) error {
	open := iv.Open()
	if len(open) == 0 {
		return k.finish(iv, &sitting{}, true)
	}
	for _, id := range open {
		fmt.Fprintf(k.d.out, "%-28s %s\n", id, iv.Question(id).Ask)
	}
	return &exit{exitFault, fmt.Errorf("%d questions are not answered", len(open))}
}

// finish freezes the forecast once nothing is left to ask, and says what to run next.
func (k *desk) finish(iv *interview.Interview, s *sitting, finished bool) error {
	skipped := iv.Skipped()
	if finished && len(skipped) == 0 {
		data, err := k.freeze(k.data)
		if err == nil && len(data) != len(k.data) {
			_, err = k.keep(data)
		}
		if err != nil {
			return err
		}
	}
	if s.noInput && len(skipped) > 0 {
		return k.missing(interview.New(k.e, k.c, s.options))
	}
	k.next(iv, finished, skipped)
	return nil
}

func (k *desk) next(iv *interview.Interview, finished bool, skipped []string) {
	out := k.d.out
	tell(out, "left out, as not worth their minutes", iv.LeftOut())
	tell(out, "skipped, to be asked next time", skipped)
	if !finished {
		fmt.Fprintf(out, "stopped with %d questions left\n", len(iv.Open()))
	} else if len(skipped) == 0 {
		left := "nothing is left to ask"
		if len(iv.LeftOut()) > 0 {
			left = "nothing else is worth asking"
		}
		fmt.Fprintln(out, left+"; the forecast is frozen in the case")
	}
	fmt.Fprintf(out, "\nnext:\n  longstand advise %s\n  longstand why %s OPERATION\n", k.path, k.path)
	if !finished || len(skipped) > 0 {
		fmt.Fprintf(out, "  longstand intake %s\n", k.path)
	}
	fmt.Fprintf(out, "  longstand record %s QUESTION=FINDING\n", k.path)
}

func tell(out io.Writer, what string, ids []string) {
	if len(ids) > 0 {
		fmt.Fprintf(out, "%s: %s\n", what, strings.Join(ids, ", "))
	}
}
