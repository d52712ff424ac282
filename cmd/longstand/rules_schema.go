package main

import (
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/book"
)

// schemas are the kinds of file that have one.
var schemas = []string{"rule", "case", "settings"}

func (d *door) rulesSchema() *cobra.Command {
	c := &cobra.Command{Use: "schema [" + strings.Join(schemas, "|") + "]", Short: "a JSON schema, by which editors complete and mark a file while it is typed",
		Long:    "A JSON schema (draft-07) of a rule file, a case or a settings file, with the ids of the\nbook and its house layers. An editor that knows TOML takes it from a first line:\n\n  #:schema ./rule.schema.json",
		Example: "  longstand rules schema > house/rule.schema.json\n  longstand rules schema case > cases/case.schema.json",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usage("one kind of file is wanted; found %s", counted(args))
			}
			return nil
		}}
	c.RunE = func(_ *cobra.Command, args []string) error {
		kind := schemas[0]
		if len(args) == 1 {
			kind = args[0]
		}
		write := map[string]func(*advisor.Book) ([]byte, error){
			"rule":     func(b *advisor.Book) ([]byte, error) { return book.Schema(b, true) },
			"case":     book.CaseSchema,
			"settings": book.SettingsSchema,
		}[kind]
		if write == nil {
			return usage("%q has no schema; %s", kind, nearestHint(kind, schemas))
		}
		e, err := d.engine()
		if err != nil {
			return err
		}
		text, err := write(e.Book())
		if err == nil {
			_, err = d.out.Write(append(text, '\n'))
		}
		if err != nil {
			return failure(err)
		}
		return nil
	}
	return c
}
