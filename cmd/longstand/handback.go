package main

import (
	"github.com/spf13/cobra"

	"longstand/advisor/report"
)

func (d *door) handback() *cobra.Command {
	var format string
	c := &cobra.Command{Use: "handback CASE", Short: "what goes with the car: done, declined, left and what to watch",
		Example: "  longstand handback testdata/cases/demo.toml", Args: oneCase}
	c.Flags().StringVar(&format, "format", "text", "text, markdown")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", format, pageFormats); err != nil {
			return err
		}
		a, err := d.spoken(args[0], "")
		if err != nil {
			return err
		}
		if format == "markdown" {
			return d.write(report.HandbackMarkdown(a))
		}
		return d.write(report.Handback(a))
	}
	return c
}
