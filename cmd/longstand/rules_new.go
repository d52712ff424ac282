package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// drafts are the first texts of house rules, one for each kind.
//
//go:embed drafts/*.toml
var drafts embed.FS

// draftKinds lists the kinds that have a draft, in order.
func draftKinds() (kinds []string) {
	entries, err := drafts.ReadDir("drafts")
	if err != nil {
		panic(err) // they are part of the program
	}
	for _, e := range entries {
		kinds = append(kinds, strings.TrimSuffix(e.Name(), ".toml"))
	}
	return kinds
}

func (d *door) rulesNew() *cobra.Command {
	var to string
	kinds := draftKinds()
	c := &cobra.Command{Use: "new KIND", Short: "the first text of a house rule, with comments: " + strings.Join(kinds, ", "),
		Example: "  longstand rules new standing -o house/salt.toml\n  longstand rules check house",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return usage("one kind of rule is wanted, of %s; found %s", strings.Join(kinds, ", "), counted(args))
			}
			return nil
		}}
	c.Flags().StringVarP(&to, "output", "o", "", "file to write; it must not be there yet")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if !slices.Contains(kinds, args[0]) {
			return usage("there is no draft of %q; %s", args[0], cmpHint(args[0], kinds))
		}
		text, err := drafts.ReadFile("drafts/" + args[0] + ".toml")
		if err != nil {
			return failure(err)
		}
		if to != "" {
			return d.writeNew(to, text)
		}
		if _, err := d.out.Write(text); err != nil {
			return failure(err)
		}
		return nil
	}
	return c
}

// writeNew writes a file that is not there yet: what somebody wrote is never
// written over.
func (d *door) writeNew(to string, text []byte) error {
	f, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return failure(fmt.Errorf("%s is there already; name another file", to))
	}
	if err != nil {
		return failure(plain(err))
	}
	_, err = f.Write(text)
	if err = errors.Join(err, f.Close()); err != nil {
		return failure(errors.Join(err, os.Remove(to)))
	}
	fmt.Fprintf(d.errs, "written: %s\nchange it to what you know, then: longstand rules check %s\n", to, filepath.Dir(to))
	return nil
}
