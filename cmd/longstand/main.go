// Longstand advises a workshop on a road car that has stood for years. This is
// the front door: it alone knows the operating system, exit codes and streams.
package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"
)

func main() {
	// The book is read once and kept: collecting while it is read only costs.
	debug.SetGCPercent(400)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// The exit codes, which scripts may rely on.
const (
	exitDone    = 0 // done, standing holds included
	exitFault   = 1 // a fault in what was read
	exitUsage   = 2 // the command line
	exitFailure = 3 // a file cannot be opened or written, or the program failed
)

// run runs one command and gives its exit code.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	return (&door{in: in, out: out, errs: errs}).run(args)
}

func (d *door) run(args []string) int {
	root := d.root()
	root.SetArgs(args)
	root.SetIn(d.in)
	root.SetOut(d.out)
	root.SetErr(d.errs)
	if c, err := root.ExecuteC(); err != nil {
		return d.end(c, err)
	}
	return exitDone
}

// exit is an error that chooses the exit code; without err it was told already.
type exit struct {
	code int
	err  error
}

// Error gives the words, if any are left to say.
func (e *exit) Error() string {
	if e.err == nil {
		return fmt.Sprintf("exit %d", e.code)
	}
	return e.err.Error()
}

func failure(err error) error { return &exit{exitFailure, err} }
func usage(format string, args ...any) error {
	return &exit{exitUsage, fmt.Errorf(format, args...)}
}
