package main

import (
	"cmp"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/engine"
	"longstand/advisor/tomltext"
)

func (d *door) rulesImpact() *cobra.Command {
	var dir string
	c := &cobra.Command{Use: "impact --cases DIR", Short: "which stored cases' advice the house rules change, and how",
		Example: "  longstand rules impact --cases testdata/cases/practice --house testdata/house/coast", Args: noArgs}
	c.Flags().StringVar(&dir, "cases", "", "directory of case files, read with all below it")
	c.RunE = func(*cobra.Command, []string) error {
		if dir == "" {
			return usage("a directory of cases is wanted; give --cases DIR")
		}
		d.folder = dir
		i, err := d.impact(dir)
		if err != nil {
			return err
		}
		i.weighAll()
		if _, err := fmt.Fprint(d.out, i.page()); err != nil {
			return failure(err)
		}
		if len(i.faults) > 0 {
			return d.tell(i.faults)
		}
		return nil
	}
	return c
}

// impact is the same cases advised on by the book without house rules and with.
type impact struct {
	before, after *engine.Engine
	added         *additions // nil: the house rules can change any case
	withdrawn     []advisor.Withdrawal
	items         []houseItem
	paths         []string
	outcomes      []outcome
	progress      *progress
	sources       map[string][]byte
	faults        diag.List
}

// outcome is what the house rules do to one case.
type outcome struct {
	contrast
	name  string
	fired []bool // by house item
	fault diag.List
	data  []byte // of a case with a fault, for the picture of it
}

// impact loads both books and finds the cases.
func (d *door) impact(dir string) (*impact, error) {
	files, err := d.bookFiles()
	if err != nil {
		return nil, failed(err)
	}
	own := slices.DeleteFunc(slices.Clone(files), func(f book.File) bool { return f.Layer != "" })
	if len(own) == len(files) {
		return nil, usage("there are no house rules to weigh; give --house DIR, or name them in %s", filepath.ToSlash(filepath.Join(dir, besideName)))
	}
	was, now := book.Load(own), book.Load(files)
	for _, r := range []*book.Result{was, now} {
		if r.Diagnostics.HasErrors() {
			return nil, d.tell(r.Diagnostics)
		}
	}
	i := &impact{before: engine.New(was.Book, was.Program), after: engine.New(now.Book, now.Program),
		sources: d.sources, withdrawn: now.Withdrawn, added: onlyAdditions(was.Book, now.Book), items: houseItems(now.Book)}
	layers, err := d.layers()
	if err != nil {
		return nil, failed(err)
	}
	if i.paths, err = casesBelow(dir, layers); err != nil {
		return nil, failure(plain(err))
	}
	if len(i.paths) == 0 {
		return nil, failure(fmt.Errorf("%s: there is no case in it", dir))
	}
	i.progress = newProgress(d.errs, "cases", len(i.paths))
	return i, nil
}

// casesBelow lists the case files of a directory and all below it, in order.
// The house layers may lie there as well; they are no cases.
func casesBelow(dir string, layers []string) (paths []string, err error) {
	if info, err := os.Stat(dir); err == nil && !info.IsDir() {
		return nil, fmt.Errorf("%s is not a directory", dir)
	}
	err = filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err == nil && e.IsDir() && path != dir && slices.ContainsFunc(layers, func(l string) bool { return sameFile(l, path) }) {
			return filepath.SkipDir
		}
		if err == nil && !e.IsDir() && filepath.Ext(path) == ".toml" && e.Name() != besideName {
			paths = append(paths, filepath.ToSlash(path))
		}
		return err
	})
	return paths, err
}

// weighAll weighs the cases side by side; the order of the outcomes is the cases'.
func (i *impact) weighAll() {
	// Each advice lives for a moment: collecting less often saves an eighth.
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	i.outcomes = make([]outcome, len(i.paths))
	var next atomic.Int64
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(i.paths)) {
		workers.Go(func() {
			for n := int(next.Add(1)) - 1; n < len(i.paths); n = int(next.Add(1)) - 1 {
				i.outcomes[n] = i.weigh(i.paths[n])
				i.progress.step()
			}
		})
	}
	workers.Wait()
	i.progress.end()
	for n := range i.outcomes {
		if o := &i.outcomes[n]; len(o.fault) > 0 {
			i.faults = append(i.faults, o.fault...)
			i.sources[i.paths[n]] = o.data
		}
	}
}

// weigh reads one case and advises on it twice. A case may answer questions
// that only one of the books asks; to the other they are as if not answered.
func (i *impact) weigh(path string) outcome {
	data, faults := readCase(path)
	if faults.HasErrors() {
		return outcome{fault: faults}
	}
	cases, found := casefile.ReadEach(path, data, i.before.Book(), i.after.Book())
	was, now := cases[0], cases[1]
	if found[0].HasErrors() && found[1].HasErrors() {
		return outcome{fault: found[1], data: data}
	}
	before := i.before.Brief(was)
	after := before
	if i.added == nil || !i.after.Quiet(now, i.added.standing, i.added.holds) {
		after = i.after.Brief(now)
	}
	o := outcome{contrast: contrasted(before, after), name: cmp.Or(now.Name, path), fired: make([]bool, len(i.items))}
	for n, it := range i.items {
		_, o.fired[n] = it.says(after)
	}
	return o
}

// readCase reads the bytes of a case through its limit.
func readCase(path string) ([]byte, diag.List) {
	f, err := os.Open(path)
	if err == nil {
		defer f.Close()
		var data []byte
		var faults diag.List
		if data, faults, err = tomltext.ReadLimited(path, f, casefile.MaxBytes); err == nil {
			return data, faults
		}
	}
	var faults diag.List
	faults.Errorf(diag.Span{File: path}, "unreadable", "%v", plain(err))
	return nil, faults
}
