package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/engine"
	"longstand/advisor/tomltext"
)

func (d *door) rulesTry() *cobra.Command {
	c := &cobra.Command{Use: "try FILE.toml CASE", Short: "what one draft of house rules does to one car",
		Example: "  longstand rules try draft.toml testdata/cases/demo.toml",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return usage("a file of draft rules and a case file are wanted; found %s", counted(args))
			}
			return nil
		}}
	c.RunE = func(_ *cobra.Command, args []string) error {
		files, err := d.bookFiles()
		if err != nil {
			return failed(err)
		}
		draft, err := d.draft(args[0])
		if err != nil {
			return failed(err)
		}
		files = slices.DeleteFunc(files, func(f book.File) bool { return sameFile(f.Name, args[0]) })
		return d.try(files, draft, args[1])
	}
	return c
}

// sameFile tells whether two names are of one file: a draft may lie within a
// house layer that is read anyway.
func sameFile(x, y string) bool {
	one, err := os.Stat(x)
	two, err2 := os.Stat(y)
	return err == nil && err2 == nil && os.SameFile(one, two)
}

// draft reads one rule file as a layer of its own.
func (d *door) draft(path string) (book.File, error) {
	f, err := os.Open(path)
	if err != nil {
		return book.File{}, plain(err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return book.File{}, plain(&fs.PathError{Op: "read", Path: path, Err: errors.New("it is a directory, and one rule file is wanted")})
	}
	name := filepath.ToSlash(path)
	data, faults, err := tomltext.ReadLimited(name, f, book.MaxBytes)
	if err != nil {
		return book.File{}, err
	}
	if faults.HasErrors() {
		return book.File{}, d.tell(faults)
	}
	d.sources[name] = data
	return book.File{Name: name, Data: data, Layer: name}, nil
}

// try advises on a case without and with the draft.
func (d *door) try(files []book.File, draft book.File, path string) error {
	old := book.Load(files)
	if old.Diagnostics.HasErrors() {
		return d.tell(old.Diagnostics)
	}
	now := book.Check(append(slices.Clone(files), draft))
	if now.Diagnostics.HasErrors() {
		return d.tell(about(now.Diagnostics, draft.Name))
	}
	if own := about(now.Diagnostics, draft.Name); len(own) > 0 {
		_ = own.WriteText(d.errs, func(file string) []byte { return d.sources[file] })
	}
	c, err := d.openCase(path, now.Book)
	if err != nil {
		return err
	}
	// An answer to a question of the draft is a fault to the book without it:
	// there it is left out, as what is not asked.
	was, _ := casefile.Read(path, d.sources[path], old.Book)
	before, after := engine.New(old.Book, old.Program).Advise(was), engine.New(now.Book, now.Program).Advise(c)
	var page strings.Builder
	fmt.Fprintf(&page, "%s on %s\n", draft.Name, c.Name)
	for _, it := range houseItems(now.Book) {
		if it.layer == draft.Name {
			said, _ := it.says(after)
			fmt.Fprintf(&page, "  %s %s: %s\n", it.kind, it.id, said)
		}
	}
	for _, w := range now.Withdrawn {
		if w.Layer == draft.Name {
			fmt.Fprintf(&page, "  %s %s: withdrawn, %s\n", w.Kind, w.ID, w.Because)
		}
	}
	diff := contrasted(before, after)
	diff.write(&page, "")
	if diff.nothing() {
		fmt.Fprintf(&page, "no call, no hold and no sum changes; the likely sum stays %s\n", diff.money[0])
	}
	if _, err := fmt.Fprint(d.out, page.String()); err != nil {
		return failure(err)
	}
	return nil
}

// about are the diagnostics of one file, and the errors that it makes elsewhere.
func about(l diag.List, file string) diag.List {
	return slices.DeleteFunc(slices.Clone(l), func(x diag.Diagnostic) bool {
		return x.At.File != file && x.Severity != diag.Error
	})
}
