package main

import (
	"cmp"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/calibration"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/report"
)

func (d *door) account() *cobra.Command {
	var format string
	c := &cobra.Command{Use: "account DIR...", Short: "what closed cases say of the forecasts and of the estimates of hours",
		Long:    "Holds the forecasts frozen in closed cases against what was found, and the hours taken\nagainst those estimated. Only what was looked at is counted, and the page says what that\ndoes to the figures.",
		Example: "  longstand account testdata/cases/closed\n  longstand account cases --format json"}
	c.Flags().StringVar(&format, "format", "text", strings.Join(formats, ", "))
	c.Args = func(_ *cobra.Command, args []string) error {
		if len(args) == 0 {
			return usage("a directory of cases is wanted; found none")
		}
		return nil
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", format, formats); err != nil {
			return err
		}
		d.folder = args[0]
		return d.accountOf(once(args), format)
	}
	return c
}

// accountOf reads the cases and prints their account. Cases with a fault are
// told, and left out.
func (d *door) accountOf(dirs []string, format string) error {
	e, err := d.engine()
	if err != nil {
		return err
	}
	layers, err := d.layers()
	if err != nil {
		return failed(err)
	}
	t := &tally{b: e.Book(), books: map[string]bool{}, jobs: map[string][]calibration.Job{}}
	var faults diag.List
	seen := map[string]bool{}
	for _, dir := range dirs {
		paths, err := casesBelow(dir, layers)
		if err != nil {
			return failure(plain(err))
		}
		for _, path := range paths {
			if !seen[filepath.Clean(path)] {
				faults = append(faults, t.read(d, path)...)
			}
			seen[filepath.Clean(path)] = true
		}
	}
	if len(seen) == 0 {
		return failure(fmt.Errorf("%s: there is no case in it", strings.Join(dirs, ", ")))
	}
	if err := d.printAccount(t.account(), &e.Book().Settings, format); err != nil {
		return err
	}
	if len(faults) > 0 {
		return d.tell(faults)
	}
	return nil
}

func (d *door) printAccount(a *report.Account, s *advisor.Settings, format string) error {
	switch format {
	case "json":
		page, err := report.AccountJSON(a)
		if err != nil {
			return failure(err)
		}
		return d.write(string(page))
	case "markdown":
		return d.write(report.AccountMarkdown(a, s))
	}
	return d.write(report.AccountText(a, s))
}

// tally gathers closed cases, one at a time.
type tally struct {
	b         *advisor.Book
	books     map[string]bool
	suspicion []calibration.Suspicion
	jobs      map[string][]calibration.Job // by operation
	a         report.Account
}

// read counts one case, or gives the faults for which it cannot be read.
func (t *tally) read(d *door, path string) diag.List {
	data, faults := readCase(path)
	if faults.HasErrors() {
		return faults
	}
	c, faults := casefile.Read(path, data, t.b)
	switch {
	case faults.HasErrors():
		d.sources[path] = data
		return faults
	case c.Closed == nil:
		t.a.Open++
	default:
		t.add(c)
	}
	return nil
}

// add counts one closed case: its forecast as frozen, never reckoned again.
func (t *tally) add(c *advisor.Case) {
	for i := range c.Taken {
		h := &c.Taken[i]
		switch {
		case !h.Known:
		case h.Estimate == nil:
			t.a.Bare++
		default:
			t.jobs[h.Operation] = append(t.jobs[h.Operation], calibration.Job{Low: h.Estimate.Low, Usual: h.Estimate.Usual, High: h.Estimate.High, Took: h.Hours})
		}
	}
	if c.Forecast == nil {
		t.a.Late++
		return
	}
	t.a.Read++
	t.books[c.Book] = true
	for _, id := range slices.Sorted(maps.Keys(c.Forecast)) {
		s := calibration.Suspicion{Forecast: c.Forecast[id]}
		if l := c.LookedAt(id); l != nil {
			s.There = l.Found == advisor.Found
			s.Settled = s.There || l.Found == advisor.Sound
			s.LookedInVain = l.Found == advisor.Unsettled
		}
		t.suspicion = append(t.suspicion, s)
	}
	for i := range c.Looked {
		if _, ok := c.Forecast[c.Looked[i].Suspect]; !ok {
			t.a.Orphans++
		}
	}
}

// account closes the count.
func (t *tally) account() *report.Account {
	a := &t.a
	a.Books, a.Forecast = len(t.books), calibration.Reckon(t.suspicion)
	var all []calibration.Job
	for _, id := range slices.Sorted(maps.Keys(t.jobs)) {
		w := report.AccountWork{ID: id, Name: id, Hours: calibration.Compare(t.jobs[id])}
		if op := t.b.Operation(id); op != nil {
			w.Name = cmp.Or(op.Name, id)
		}
		a.Work = append(a.Work, w)
		all = append(all, t.jobs[id]...)
	}
	a.Hours = calibration.Compare(all)
	return a
}
