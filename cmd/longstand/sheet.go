package main

import (
	"fmt"
	"regexp"
	"strconv"

	"github.com/spf13/cobra"

	"longstand/advisor/report"
)

func (d *door) sheet() *cobra.Command {
	c := &cobra.Command{Use: "sheet CASE", Short: "the work sheet for the bench, in working order",
		Example: "  longstand sheet testdata/cases/demo.toml\n  longstand record estate.toml --sheet EDITION done:17", Args: oneCase}
	c.RunE = func(_ *cobra.Command, args []string) error {
		a, b, err := d.worked(args[0], "")
		if err != nil {
			return err
		}
		return d.write(report.Sheet(report.Spoken(a, b), b))
	}
	return c
}

// boxed is a box number where an id may stand.
var boxed = regexp.MustCompile(`^((?:done|accepted|declined):)?\s*([0-9]+)\s*(=.*)?$`)

// unboxed puts ids for the box numbers of a sheet. Numbers count only with the
// edition printed on their sheet, since other rules number otherwise.
func (k *desk) unboxed(rows []row, edition string) ([]row, error) {
	b := k.e.Book()
	var out []row
	for _, r := range rows {
		m := boxed.FindStringSubmatch(r.said)
		if m == nil {
			out = append(out, r)
			continue
		}
		n, err := strconv.Atoi(m[2])
		switch {
		case err != nil || b.Boxed(n) == "":
			return nil, fmt.Errorf("there is no box %s", m[2])
		case edition == "":
			return nil, fmt.Errorf("box %s is of which sheet? add --sheet and the four signs at its head, or say %s", m[2], b.Boxed(n))
		case edition != b.Edition():
			return nil, fmt.Errorf("sheet %s was printed with other rules than today's (%s): print it anew, or record by id", edition, b.Edition())
		}
		r.said = m[1] + b.Boxed(n) + m[3]
		out = append(out, r)
	}
	return out, nil
}
