package main

import (
	"errors"
	"fmt"
	"io/fs"

	"github.com/spf13/cobra"

	"longstand/advisor/diag"
)

// fileFault is a file that cannot be opened, read or written, in plain words.
type fileFault struct{ path, words string }

func (f *fileFault) Error() string { return f.path + ": " + f.words }

// wantsJSON tells whether a command was asked for JSON, as far as its options
// were read.
func wantsJSON(c *cobra.Command) bool {
	f := c.Flags().Lookup("format")
	return f != nil && f.Value.String() == "json"
}

// end tells the error that ended a command and gives its exit code. What the
// command did not choose itself comes from reading the command line.
func (d *door) end(c *cobra.Command, err error) int {
	var e *exit
	help := ""
	if !errors.As(err, &e) {
		e, help = &exit{exitUsage, err}, "try `longstand --help`"
	}
	switch {
	case e.err == nil: // told already
	case d.asJSON || wantsJSON(c):
		_ = diag.List{asDiagnostic(e, help)}.WriteErrors(d.errs)
	default:
		fmt.Fprintf(d.errs, "longstand: %v\n", e.err)
		if help != "" {
			fmt.Fprintln(d.errs, help)
		}
	}
	return e.code
}

// asDiagnostic is an error of the command line or of a file as a diagnostic.
func asDiagnostic(e *exit, help string) diag.Diagnostic {
	out := diag.Diagnostic{Severity: diag.Error, Code: "failed", Message: e.Error(), Help: help}
	var f *fileFault
	switch {
	case e.code == exitUsage:
		out.Code = "usage"
	case errors.As(plain(e.err), &f):
		out.Code, out.Message, out.At = "file", f.words, diag.Span{File: f.path}
	}
	return out
}

// named is plain with the path by which whoever runs the program knows a file.
func named(path string, err error) error {
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		return plain(&fs.PathError{Op: p.Op, Path: path, Err: p.Err})
	}
	return err
}

// plain puts an error of the file system in plain words.
func plain(err error) error {
	var p *fs.PathError
	if !errors.As(err, &p) {
		return err
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return &fileFault{p.Path, "no such file"}
	case errors.Is(err, fs.ErrPermission):
		return &fileFault{p.Path, "not allowed to read it"}
	}
	return &fileFault{p.Path, p.Err.Error()}
}
