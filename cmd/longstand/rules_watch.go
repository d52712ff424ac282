package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"time"

	"longstand/advisor/book"
)

// watchRules checks the house rules again at each change, until interrupted.
func (d *door) watchRules(format string) error {
	if format != "text" {
		return usage("--watch prints text, not %s", format)
	}
	dirs, err := d.layers()
	if err != nil {
		return failed(err)
	}
	if len(dirs) == 0 {
		return usage("--watch wants a directory of house rules: nothing else can change")
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	ticker := time.NewTicker(time.Second)
	defer ticker.Stop()
	return d.watch(func() bool {
		select {
		case <-ctx.Done():
			return false
		case <-ticker.C:
			return true
		}
	})
}

// watch looks at the files' names, sizes and times, and checks the book when
// they are not what they were. next waits until it is time to look again, and
// is false when there is to be no more looking.
func (d *door) watch(next func() bool) error {
	for last := ""; ; {
		if now := d.stamp(); now != last {
			last = now
			if err := d.recheck(); err != nil {
				return failure(err)
			}
		}
		if !next() {
			return nil
		}
	}
}

// stamp tells the state of the house layers' files.
func (d *door) stamp() string {
	var s strings.Builder
	dirs, _ := d.layers() // a fault in them is told by the check
	for _, dir := range dirs {
		entries, err := os.ReadDir(dir)
		fmt.Fprintln(&s, dir, err)
		for _, entry := range entries {
			if !strings.EqualFold(filepath.Ext(entry.Name()), ".toml") {
				continue
			}
			if info, err := os.Stat(filepath.Join(dir, entry.Name())); err == nil {
				fmt.Fprintln(&s, entry.Name(), info.Size(), info.ModTime().UnixNano())
			}
		}
	}
	return s.String()
}

// recheck prints a line for each fault, as editors' lists of problems read
// them, and how many there are. What cannot be read may be mended while we wait.
func (d *door) recheck() error {
	files, err := d.bookFiles()
	if err != nil {
		var told *exit
		if errors.As(err, &told) && told.err == nil {
			return nil
		}
		_, err = fmt.Fprintln(d.out, err)
		return err
	}
	r := book.Check(files)
	var page strings.Builder
	for _, fault := range r.Diagnostics.Apart() {
		page.WriteString(fault.Line() + "\n")
	}
	account := r.Diagnostics.Account(r.Silenced())
	if len(r.Diagnostics) == 0 {
		account = strings.Trim("no fault found, "+account, ", ")
	}
	_, err = fmt.Fprintf(d.out, "%s%s\n", page.String(), account)
	return err
}
