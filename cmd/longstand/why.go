package main

import (
	"io"

	"github.com/spf13/cobra"

	"longstand/advisor/report"
)

func (d *door) why() *cobra.Command {
	c := &cobra.Command{Use: "why CASE ID", Short: "why this operation, suspect, inspection, hold or question",
		Example: "  longstand why testdata/cases/demo.toml head_off",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return usage("a case file and an id are wanted; found %s", counted(args))
			}
			return nil
		}}
	c.RunE = func(_ *cobra.Command, args []string) error {
		e, err := d.engine()
		if err != nil {
			return err
		}
		c, err := d.openCase(args[0], e.Book())
		if err != nil {
			return err
		}
		page, err := report.Why(e.Advise(c), args[1], e.Turns(c, args[1]))
		if err != nil {
			return &exit{exitUsage, err}
		}
		_, err = io.WriteString(d.out, page)
		return err
	}
	return c
}

func (d *door) ladder() *cobra.Command {
	var care string
	var budget int64
	c := &cobra.Command{Use: "ladder CASE", Short: "how far to go, from lean to thorough",
		Example: "  longstand ladder testdata/cases/demo.toml --budget 2000", Args: oneCase}
	c.Flags().StringVar(&care, "care", "", "thrifty, normal or thorough, instead of the case's own")
	c.Flags().Int64Var(&budget, "budget", 0, "a sum to spend, in whole units of the currency, before tax")
	c.RunE = func(_ *cobra.Command, args []string) error {
		a, err := d.advice(args[0], care)
		if err != nil {
			return err
		}
		_, err = io.WriteString(d.out, report.Ladder(a, budget))
		return err
	}
	return c
}
