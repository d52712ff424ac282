package main

import (
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/report"
)

// careHelp says what --care may be.
const careHelp = "thrifty, normal or thorough, instead of the case's own"

// formats are what advise can print.
var formats = []string{"text", "json", "markdown"}

func (d *door) advise() *cobra.Command {
	var format, care string
	var reckoning, schema bool
	c := &cobra.Command{Use: "advise CASE", Short: "the advice on a case",
		Example: "  longstand advise testdata/cases/demo.toml\n  longstand advise testdata/cases/demo.toml --format json\n" +
			"  longstand advise testdata/cases/demo.toml --reckoning\n  longstand advise --schema"}
	c.Flags().StringVar(&format, "format", "text", strings.Join(formats, ", "))
	c.Flags().StringVar(&care, "care", "", careHelp)
	c.Flags().BoolVar(&reckoning, "reckoning", false, "how each sum came about, instead of the advice")
	c.Flags().BoolVar(&schema, "schema", false, "the JSON Schema of --format json; no case is read")
	c.Args = func(c *cobra.Command, args []string) error {
		switch {
		case !schema:
			return oneCase(c, args)
		case len(args) > 0:
			return usage("--schema reads no case; found %s", counted(args))
		}
		return nil
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", format, formats); err != nil {
			return err
		}
		if schema {
			return d.write(string(report.Schema()))
		}
		if reckoning && format != "text" {
			return usage("--reckoning is a page of text; the JSON has every sum under total, lines")
		}
		work := d.spoken
		if format == "json" { // for programs, in the book's own words
			work = d.advice
		}
		a, err := work(args[0], care)
		if err != nil {
			return err
		}
		if reckoning {
			return d.write(report.Reckoning(a))
		}
		return d.print(a, format)
	}
	return c
}

// spoken works out the advice on a case file in the words of the shop's region,
// for pages.
func (d *door) spoken(path, care string) (*advisor.Advice, error) {
	a, b, err := d.worked(path, care)
	if err != nil {
		return nil, err
	}
	return report.Spoken(a, b), nil
}

// advice works out the advice on a case file.
func (d *door) advice(path, care string) (*advisor.Advice, error) {
	a, _, err := d.worked(path, care)
	return a, err
}

// worked works out the advice on a case file, and gives the book with it.
func (d *door) worked(path, care string) (*advisor.Advice, *advisor.Book, error) {
	if care != "" {
		if err := oneOf("care", care, advisor.Cares); err != nil {
			return nil, nil, err
		}
	}
	e, c, err := d.caseOf(path)
	if err != nil {
		return nil, nil, err
	}
	if care != "" {
		c.Care = care
	}
	return e.Advise(c), e.Book(), nil
}

func (d *door) print(a *advisor.Advice, format string) error {
	var page string
	switch format {
	case "json":
		data, err := report.JSON(a)
		if err != nil {
			return failure(err)
		}
		page = string(data)
	case "markdown":
		page = report.Markdown(a)
	default:
		page = report.Text(a)
	}
	return d.write(page)
}

// write puts a page on the output.
func (d *door) write(page string) error {
	if _, err := io.WriteString(d.out, page); err != nil {
		return failure(err)
	}
	return nil
}

// oneOf checks an option's value and names the nearest allowed one.
func oneOf(option, value string, allowed []string) error {
	if slices.Contains(allowed, value) {
		return nil
	}
	if near := diag.Nearest(value, allowed); near != "" {
		return usage("--%s: %q is not one of %s; did you mean %s?", option, value, strings.Join(allowed, ", "), near)
	}
	return usage("--%s: %q is not one of %s", option, value, strings.Join(allowed, ", "))
}
