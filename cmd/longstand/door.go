package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/engine"
	"longstand/advisor/tomltext"
	"longstand/rules"
)

// door holds the streams and the options that all commands share.
type door struct {
	in        io.Reader
	out, errs io.Writer
	house     []string          // directories of house rules
	folder    string            // of the cases, where a longstand.toml may lie
	asJSON    bool              // JSON was asked for: errors are JSON too
	sources   map[string][]byte // texts read, for the pictures of diagnostics
	disk      casefile.Disk     // where cases are kept; the machine's when nil
	loaded    *engine.Engine    // the book, when it was read before
}

// files is where cases are kept.
func (d *door) files() casefile.Disk {
	if d.disk == nil {
		return casefile.OS
	}
	return d.disk
}

func (d *door) root() *cobra.Command {
	root := &cobra.Command{Use: "longstand", SilenceUsage: true, SilenceErrors: true,
		Short: "advice on a car that has stood for years",
		Long:  "Longstand advises a workshop on a road car that has stood for years: what to look at\nfirst, what work to take on, what to leave shut, why, and at what cost.",
		Example: `  longstand advise testdata/cases/demo.toml
  longstand why testdata/cases/demo.toml head_off
  longstand rules check`}
	root.PersistentPreRun = func(c *cobra.Command, args []string) {
		d.asJSON = wantsJSON(c)
		d.cases(c.Use, args)
	}
	root.PersistentFlags().StringArrayVar(&d.house, "house", nil, "directory of house rules (repeatable)")
	root.AddCommand(d.advise(), d.why(), d.ladder(), d.sheet(), d.handback(), d.rules(), d.intake(), d.record(), d.letter(), d.close(), d.account(), d.batch())
	return root
}

// bookFiles gathers the built-in book and the house layers.
func (d *door) bookFiles() ([]book.File, error) {
	d.sources = map[string][]byte{}
	files, err := d.readAll(rules.Files, ".", "rules", "")
	if err != nil {
		return nil, err
	}
	dirs, err := d.layers()
	if err != nil {
		return nil, err
	}
	if list := os.Getenv(houseVariable); list != "" && len(d.house)+len(dirs) == 0 && !d.asJSON && d.errs != nil {
		fmt.Fprintf(d.errs, "longstand: house rules: nothing that %s names is there: %s\n", houseVariable, list)
	}
	for _, dir := range dirs {
		more, err := d.readHouse(dir)
		if err != nil {
			return nil, err
		}
		files = append(files, more...)
	}
	return files, nil
}

// readHouse reads the rule files of one house layer. A folder in which there
// is none says nothing at all, and whoever wrote a rule would not know why.
func (d *door) readHouse(dir string) ([]book.File, error) {
	info, err := os.Stat(dir)
	switch {
	case err != nil:
		return nil, fmt.Errorf("house rules: %w", plain(err))
	case !info.IsDir():
		return nil, fmt.Errorf("house rules: %w", &fileFault{dir, "is a file; name the directory in which it lies, " + filepath.Dir(dir)})
	}
	files, err := d.readAll(os.DirFS(dir), ".", dir, dir)
	if err == nil && len(files) == 0 && len(d.house) > 0 && !d.asJSON {
		fmt.Fprintf(d.errs, "longstand: house rules: %s has no rule file; they lie in it itself, and their names end in .toml\n", dir)
	}
	return files, err
}

// readAll reads the rule files of one layer, each through a limit.
func (d *door) readAll(from fs.FS, root, shown, layer string) ([]book.File, error) {
	names, err := fs.Glob(from, "*.[tT][oO][mM][lL]")
	if err != nil {
		return nil, err
	}
	slices.Sort(names)
	var out []book.File
	for _, name := range names {
		at := filepath.ToSlash(filepath.Join(shown, name))
		info, err := fs.Stat(from, name)
		if err == nil && !info.Mode().IsRegular() {
			return nil, &fileFault{at, "is no file of text, and its name says that it is a rule file"}
		}
		f, err2 := from.Open(name)
		if err = cmp.Or(err, err2); err != nil {
			return nil, named(at, err)
		}
		data, faults, err := tomltext.ReadLimited(at, f, book.MaxBytes)
		f.Close()
		if err != nil {
			return nil, err
		}
		if faults.HasErrors() {
			return nil, d.tell(faults)
		}
		d.sources[at] = data
		out = append(out, book.File{Name: at, Data: data, Layer: layer})
	}
	return out, nil
}

// engine loads the book; faults in it are told and end the command.
func (d *door) engine() (*engine.Engine, error) {
	if d.loaded != nil {
		d.sources = map[string][]byte{}
		return d.loaded, nil
	}
	files, err := d.bookFiles()
	if err != nil {
		return nil, failed(err)
	}
	r := book.Load(files)
	if r.Diagnostics.HasErrors() {
		return nil, d.tell(r.Diagnostics)
	}
	return engine.New(r.Book, r.Program), nil
}

// tell prints diagnostics and gives the exit for a fault in what was read.
func (d *door) tell(l diag.List) error {
	l.Sort()
	source := func(file string) []byte { return d.sources[file] }
	if d.asJSON {
		_ = l.WriteErrors(d.errs)
	} else {
		_ = l.WriteText(d.errs, source)
	}
	return &exit{code: exitFault}
}

// caseOf loads the book and reads a case by it.
func (d *door) caseOf(path string) (*engine.Engine, *advisor.Case, error) {
	e, err := d.engine()
	if err != nil {
		return nil, nil, err
	}
	c, err := d.openCase(path, e.Book())
	return e, c, err
}

// openCase reads a case by a book.
func (d *door) openCase(path string, b *advisor.Book) (*advisor.Case, error) {
	data, _, err := casefile.Load(d.files(), path)
	if err != nil {
		return nil, failure(plain(err))
	}
	d.sources[path] = data
	c, faults := casefile.Read(path, data, b)
	if faults.HasErrors() {
		return nil, d.tell(faults)
	}
	return c, nil
}

// oneCase checks that a command names exactly one case.
func oneCase(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return usage("one case file is wanted; found %s", counted(args))
	}
	return nil
}

// noArgs checks that a command is given options only.
func noArgs(_ *cobra.Command, args []string) error {
	if len(args) > 0 {
		return usage("only options are wanted; found %s", counted(args))
	}
	return nil
}

func counted(args []string) string {
	if len(args) == 0 {
		return "none"
	}
	return strings.Join(args, ", ")
}

// failed keeps an exit that was chosen already, and takes any other error as a failure.
func failed(err error) error {
	var e *exit
	if errors.As(err, &e) {
		return e
	}
	return failure(err)
}
