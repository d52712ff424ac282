package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/interview"
	"longstand/advisor/report"
)

// closing is how one job is to be closed.
type closing struct {
	all, noInput, plain  bool
	answers              string
	by, on, note, format string
	said                 []string
	schema               bool
}

func (d *door) close() *cobra.Command {
	var s closing
	c := &cobra.Command{Use: "close CASE [SUSPECT=FINDING... hours:OPERATION=HOURS...]",
		Short: "the end of a job: what was found of the suspects, and the hours taken",
		Long:  "Asks of each suspect whose cure was done or whose place was opened what was found: found,\nsound, can't tell or not looked at. What nobody says was not looked at, which is not the\nsame as not there. Or say it all at once, or more of it later. The page sets it beside the\nfrozen forecast; of a closed job it is printed again.",
		Example: "  longstand close estate.toml --by AB\n  longstand close estate.toml head_gasket_leak=found brake_hoses_perished=sound hours:water_pump=2.5 --by AB\n" +
			"  longstand close estate.toml --no-input --format json\n  longstand close --schema"}
	f := c.Flags()
	f.BoolVar(&s.all, "all", false, "ask of every suspect on the car")
	f.BoolVar(&s.noInput, "no-input", false, "ask nothing; list what is missing")
	f.BoolVar(&s.plain, "plain", false, "whole lines only, for screen readers and pipes")
	f.StringVar(&s.answers, "answers", "", "file of answers, a line each: suspect = finding, hours:operation = hours")
	f.StringVar(&s.by, "by", "", "who says so")
	f.StringVar(&s.on, "on", "", "the day on which the job ended, as 2025-10-14 (default: today)")
	f.StringVar(&s.note, "note", "", "a remark on all that is said on the command line")
	f.StringVar(&s.format, "format", "text", strings.Join(formats, ", "))
	f.BoolVar(&s.schema, "schema", false, "the JSON Schema of --format json; no case is read")
	c.Args = func(_ *cobra.Command, args []string) error {
		if s.schema == (len(args) > 0) {
			return usage("a case file is wanted, or --schema alone; found %s", counted(args))
		}
		return nil
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", s.format, formats); err != nil {
			return err
		}
		if s.schema {
			return d.write(string(report.EndedSchema()))
		}
		if _, err := time.Parse(time.DateOnly, s.on); err != nil && s.on != "" {
			return usage("--on: %q is no date; write it as 2025-10-14", s.on)
		}
		s.said = args[1:]
		k, err := d.sit(args[0], "")
		if err != nil {
			return err
		}
		return k.leave(k.close(&s))
	}
	return c
}

// close takes what is said on the command line, or asks for it.
func (k *desk) close(s *closing) error {
	if k.c.Closed != nil && len(s.said) == 0 && s.answers == "" && !s.all {
		return k.endPage(s) // what was not said then was not looked at
	}
	s.day(k.c)
	cl := interview.NewClosing(k.e.Book(), k.e.Brief(k.c), s.all)
	open := cl.Open()
	if len(s.said) == 0 && s.noInput && s.answers == "" && len(open) > 0 {
		return k.unsaid(cl, open)
	}
	data, err := k.freezeBeforeFindings()
	if err != nil {
		return failure(err)
	}
	if len(s.said) > 0 {
		return k.closeAll(data, cl, s)
	}
	if len(open) > 0 || s.answers != "" {
		if len(data) != len(k.data) {
			if _, err := k.keep(data); err != nil {
				return err
			}
		}
		if closed, err := k.askEnd(cl, s); err != nil || !closed {
			return err
		}
		data = k.data
	}
	if k.c.Closed == nil {
		if err := k.end(data, s); err != nil {
			return err
		}
	}
	return k.endPage(s)
}

// day is today unless it is said, or was when the job was closed before.
func (s *closing) day(c *advisor.Case) {
	switch {
	case s.on != "":
	case c.Closed != nil:
		s.on = c.Closed.Date
	default:
		s.on = time.Now().Format(time.DateOnly)
	}
}

// freezeBeforeFindings gives the case's bytes with the forecast frozen, unless
// there was a finding already: such a forecast would know what it foretells.
func (k *desk) freezeBeforeFindings() ([]byte, error) {
	late := len(k.c.Done)+len(k.c.Looked) > 0 || slices.ContainsFunc(k.c.Answers, func(a advisor.Answer) bool {
		q := k.e.Book().Question(a.Question)
		return q != nil && q.Station == "inspection"
	})
	if k.c.Forecast == nil && late {
		k.talk("no forecast was frozen before the first finding, and now it is too late for one")
		return k.data, nil
	}
	return k.freeze(k.data)
}

// talk says something beside the result; whoever asked for JSON hears nothing.
func (k *desk) talk(format string, args ...any) {
	if !k.d.asJSON {
		fmt.Fprintf(k.d.errs, format+"\n", args...)
	}
}

// endPage prints the end of the job.
func (k *desk) endPage(s *closing) error {
	a, b := k.e.Brief(k.c), k.e.Book()
	switch s.format {
	case "json":
		page, err := report.EndedJSON(a, b)
		if err != nil {
			return failure(err)
		}
		return k.d.write(string(page))
	case "markdown":
		return k.d.write(report.EndedMarkdown(a, b))
	}
	return k.d.write(report.Ended(a, b))
}
