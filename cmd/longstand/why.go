package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/report"
)

// pageFormats are what why and ladder can print.
var pageFormats = []string{"text", "markdown"}

func (d *door) why() *cobra.Command {
	var format string
	c := &cobra.Command{Use: "why CASE ID", Short: "why this operation, suspect, inspection, hold or question",
		Example: "  longstand why testdata/cases/demo.toml head_off",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return usage("a case file and an id are wanted; found %s", counted(args))
			}
			return nil
		}}
	c.Flags().StringVar(&format, "format", "text", "text, markdown")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", format, pageFormats); err != nil {
			return err
		}
		e, c, err := d.caseOf(args[0])
		if err != nil {
			return err
		}
		w := e.Why(c, args[1])
		if w.Kind == "" {
			return unknownID(e.Book(), args[1])
		}
		a := e.Advise(c)
		spoken, said := report.Spoken(a, e.Book()), report.SpokenWhy(a, e.Book(), &w)
		if format == "markdown" {
			return d.write(report.WhyMarkdown(spoken, said))
		}
		return d.write(report.Why(spoken, said))
	}
	return c
}

// unknownID says that the book has no such id, and what is nearest.
func unknownID(b *advisor.Book, id string) error {
	var ids []string
	for _, it := range b.Items() {
		if slices.Contains([]string{"operation", "suspect", "inspection", "hold", "question"}, it.Kind) {
			ids = append(ids, it.ID)
		}
	}
	words := fmt.Sprintf("the rule book says nothing of %q: an operation, suspect, inspection, hold or question is wanted", id)
	if near := diag.Nearest(id, ids); near != "" {
		words += "; did you mean " + near + "?"
	}
	return usage("%s", words)
}
