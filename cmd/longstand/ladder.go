package main

import (
	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/engine"
	"longstand/advisor/report"
)

func (d *door) ladder() *cobra.Command {
	var care, format string
	var budget int64
	c := &cobra.Command{Use: "ladder CASE", Short: "how far to go, from lean to thorough",
		Example: "  longstand ladder testdata/cases/demo.toml --budget 5000", Args: oneCase}
	c.Flags().StringVar(&care, "care", "", careHelp)
	c.Flags().StringVar(&format, "format", "text", "text, markdown; JSON has the ladder under advise")
	c.Flags().Int64Var(&budget, "budget", 0, "a sum to spend, in whole units of the currency, before tax")
	c.RunE = func(c *cobra.Command, args []string) error {
		if err := oneOf("format", format, pageFormats); err != nil {
			return err
		}
		a, err := d.spoken(args[0], care)
		if err != nil {
			return err
		}
		var place *advisor.Budget
		if c.Flags().Changed("budget") {
			sum, ok := minor(budget, a.Settings.MinorDigits)
			if !ok {
				return usage("--budget: %d is no sum to spend", budget)
			}
			b := engine.Place(&a.Ladder, sum)
			place = &b
		}
		if format == "markdown" {
			return d.write(report.LadderMarkdown(a, place))
		}
		return d.write(report.Ladder(a, place))
	}
	return c
}

// mostUnits is more money than any ladder comes to.
const mostUnits = 1_000_000_000

// minor turns whole units of a currency into its minor ones; false for less
// than nothing, or more than any job.
func minor(units int64, digits int) (int64, bool) {
	if units < 0 || units > mostUnits {
		return 0, false
	}
	for range digits {
		units *= 10
	}
	return units, true
}
