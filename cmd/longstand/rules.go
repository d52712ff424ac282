package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor/book"
	"longstand/advisor/diag"
	"longstand/advisor/report"
)

func (d *door) rules() *cobra.Command {
	c := &cobra.Command{Use: "rules", Short: "the rule book and the house rules: check, list, show, new, try, impact, schema, codes",
		RunE: func(_ *cobra.Command, args []string) error {
			names := []string{"check", "codes", "impact", "list", "new", "schema", "show", "try"}
			if len(args) == 0 {
				return usage("one of %s is wanted; found none", strings.Join(names, ", "))
			}
			return usage("rules has no command %q; %s", args[0], nearestHint(args[0], names))
		}}
	c.AddCommand(d.rulesCheck(), d.rulesList(), d.rulesShow())
	c.AddCommand(d.rulesCodes(), d.rulesSchema(), d.rulesTry(), d.rulesImpact(), d.rulesNew())
	return c
}

func nearestHint(word string, names []string) string {
	if near := diag.Nearest(word, names); near != "" {
		return "did you mean " + near + "?"
	}
	if len(names) > 40 {
		return "`longstand rules list` lists them" // more than anyone reads in one line
	}
	return "it has " + strings.Join(names, ", ")
}

func (d *door) rulesCheck() *cobra.Command {
	var format string
	var watching bool
	var sharp sharpening
	c := &cobra.Command{Use: "check [DIR...] [ITEM...]", Short: "every fault of the book and its house layers, placed",
		Example: "  longstand rules check\n  longstand rules check house/ --format github\n  longstand rules check house/ --suggest\n  longstand rules check house/ --watch"}
	c.Flags().BoolVar(&sharp.survivors, "survivors", false, "what the specimens do not show, and the case that would show it: of the ITEMs, the DIRs or all")
	c.Flags().BoolVar(&sharp.suggest, "suggest", false, "specimens for a person to answer: of the ITEMs, the DIRs or all")
	c.Flags().StringVar(&format, "format", "text", "text, json, github")
	c.Flags().BoolVar(&watching, "watch", false, "check again at each change of the house rules, until interrupted")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", format, []string{"text", "json", "github"}); err != nil {
			return err
		}
		if format != "text" && (sharp.survivors || sharp.suggest) {
			return usage("--survivors and --suggest are for reading; leave --format %s out", format)
		}
		dirs := sharp.named(args)
		d.house = append(d.house, dirs...)
		if watching {
			return d.watchRules(format)
		}
		files, err := d.bookFiles()
		if err != nil {
			return failed(err)
		}
		r := book.Check(files)
		if (sharp.survivors || sharp.suggest) && !r.Diagnostics.HasErrors() {
			return sharp.show(d.out, r, dirs)
		}
		return d.checked(r, format)
	}
	return c
}

// checked prints the diagnostics of a check: the result of the command, so
// they go to standard output.
func (d *door) checked(r *book.Result, format string) error {
	l := r.Diagnostics
	l.Sort()
	var err error
	switch format {
	case "json":
		err = l.WriteJSON(d.out, r.Silenced())
	case "github":
		err = l.WriteAnnotations(d.out, r.Silenced())
	default:
		err = l.Apart().WriteText(d.out, func(file string) []byte { return d.sources[file] })
		if err == nil && !l.HasErrors() {
			summary := report.BookSummary(r.Book)
			if len(l) > 0 {
				summary = strings.Replace(summary, "no fault", "no error", 1)
			}
			_, err = fmt.Fprint(d.out, summary+scoreText(&r.Score))
		}
		if account := l.Account(r.Silenced()); err == nil && account != "" {
			_, err = fmt.Fprintln(d.out, account)
		}
	}
	if err != nil {
		return failure(err)
	}
	if l.HasErrors() {
		return &exit{code: exitFault}
	}
	return nil
}

func (d *door) rulesList() *cobra.Command {
	var sources, tools bool
	c := &cobra.Command{Use: "list", Short: "every item of the book by kind", Args: noArgs,
		Example: "  longstand rules list\n  longstand rules list --sources"}
	c.Flags().BoolVar(&sources, "sources", false, "the account of sources: where every rule and figure comes from")
	c.Flags().BoolVar(&tools, "tools", false, "every tool that a look needs, and whether the shop has it")
	c.RunE = func(*cobra.Command, []string) error {
		e, err := d.engine()
		if err != nil {
			return err
		}
		page := report.BookList(e.Book())
		if sources {
			page = report.BookSources(e.Book())
		}
		if tools {
			page = report.BookTools(e.Book())
		}
		_, err = fmt.Fprint(d.out, page)
		return err
	}
	return c
}

func (d *door) rulesShow() *cobra.Command {
	c := &cobra.Command{Use: "show ID", Short: "one item of the book as it is written",
		Example: "  longstand rules show head_off"}
	c.Args = func(_ *cobra.Command, args []string) error {
		if len(args) != 1 {
			return usage("one id is wanted; found %s", counted(args))
		}
		return nil
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		e, err := d.engine()
		if err != nil {
			return err
		}
		items := e.Book().Items()
		var ids []string
		found := false
		for _, it := range items {
			ids = append(ids, it.ID)
			if it.ID == args[0] {
				found = true
				fmt.Fprintf(d.out, "%s %s, %s\n%s\n", it.Kind, it.ID, it.At, written(d.sources[it.At.File], it.At.Line))
			}
		}
		if args[0] == "settings" {
			for _, at := range e.Book().Settings.At {
				fmt.Fprintf(d.out, "settings, %s\n%s\n", at, written(d.sources[at.File], at.Line))
			}
			return nil
		}
		if d.showTouched(args[0], found) || found {
			return nil
		}
		slices.Sort(ids)
		return &exit{exitUsage, fmt.Errorf("the book has no item %q; %s", args[0], nearestHint(args[0], ids))}
	}
	return c
}

// written cuts an item out of its file: from its header to the next item's.
func written(data []byte, line int) string {
	lines := strings.Split(string(data), "\n")
	if line < 1 || line > len(lines) {
		return ""
	}
	end := line
	for end < len(lines) && !strings.HasPrefix(lines[end], "[[") && !strings.HasPrefix(lines[end], "# ---") {
		end++
	}
	return strings.TrimRight(strings.Join(lines[line-1:end], "\n"), "\n")
}
