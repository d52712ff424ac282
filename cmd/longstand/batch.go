package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"sync"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
	"longstand/advisor/report"
)

func (d *door) batch() *cobra.Command {
	var care string
	var schema bool
	c := &cobra.Command{Use: "batch [FILE]", Short: "one case a line in, one advice a line out (JSON lines)",
		Long:    "Reads cases from FILE or the input, each a JSON object on a line of its own: the keys of a\ncase file, and id, which a file has from its name. Writes one line for each, in the same\norder: what `advise --format json` says, or {\"line\": N, \"errors\": [...]} in its place.",
		Example: "  longstand batch cases.jsonl > advice.jsonl\n  longstand batch --schema"}
	c.Flags().StringVar(&care, "care", "", "thrifty, normal or thorough, instead of each case's own")
	c.Flags().BoolVar(&schema, "schema", false, "the JSON schema of a line; nothing is read")
	c.Args = func(_ *cobra.Command, args []string) error {
		if len(args) > 1 || schema && len(args) > 0 {
			return usage("one file is wanted, or none for the input; found %s", counted(args))
		}
		return nil
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if care != "" {
			if err := oneOf("care", care, advisor.Cares); err != nil {
				return err
			}
		}
		in, name := d.in, "input"
		if len(args) == 1 {
			f, err := os.Open(args[0])
			if err != nil {
				return failure(plain(err))
			}
			defer f.Close()
			in, name, d.folder = f, filepath.ToSlash(args[0]), filepath.Dir(args[0])
		}
		e, err := d.engine()
		if err != nil {
			return err
		}
		if schema {
			return d.lineSchema(e.Book())
		}
		return d.adviseLines(&lines{e: e, care: care, name: name}, in)
	}
	return c
}

// lineSchema prints the schema of a line: a case's, with the id.
func (d *door) lineSchema(b *advisor.Book) error {
	text, err := book.LineSchema(b)
	if err != nil {
		return failure(err)
	}
	return d.write(string(text) + "\n")
}

// lines advises on cases, a line each.
type lines struct {
	e    *engine.Engine
	care string // "" for each case's own
	name string // of what is read, for places
}

// slot is one line on its way through: in by one door, out in the same order.
type slot struct {
	number  int
	data    []byte
	tooLong bool
	out     chan outLine
}

type outLine struct {
	text  []byte
	fault bool
	err   error
}

// adviseLines reads lines, advises on them side by side, and writes the advice
// in the order of the lines. Only a few lines for each worker are held at once.
func (d *door) adviseLines(l *lines, in io.Reader) error {
	workers := runtime.GOMAXPROCS(0)
	order, work := make(chan slot, 2*workers), make(chan slot)
	var crew sync.WaitGroup
	for range workers {
		crew.Go(func() {
			for s := range work {
				s.out <- l.advise(&s)
			}
		})
	}
	failed, total := make(chan error, 1), 0
	var written sync.WaitGroup
	faults := 0
	written.Go(func() { faults = d.writeInOrder(order, failed) })
	err := eachLine(in, func(s slot) error {
		select {
		case err := <-failed:
			return err
		case order <- s:
		}
		total++
		work <- s
		return nil
	})
	close(work)
	close(order)
	crew.Wait()
	written.Wait()
	if err == nil {
		select {
		case err = <-failed:
		default:
		}
	}
	switch {
	case err != nil:
		return failure(plain(err))
	case faults > 0:
		return &exit{exitFault, fmt.Errorf("at fault: %d of %s", faults, many(total, "line"))}
	}
	return nil
}

// writeInOrder writes each line as it comes, and counts those at fault. When it
// cannot write it says so once, and lets the rest go by.
func (d *door) writeInOrder(order <-chan slot, failed chan<- error) (faults int) {
	var broken error
	for s := range order {
		o := <-s.out
		if o.fault {
			faults++
		}
		if broken != nil {
			continue
		}
		if broken = o.err; broken == nil {
			_, broken = d.out.Write(o.text)
		}
		if broken != nil {
			failed <- broken
		}
	}
	return faults
}

// advise gives the line out for a line in.
func (l *lines) advise(s *slot) outLine {
	c, text := l.read(s)
	if text != nil {
		return outLine{text: text, fault: true}
	}
	if l.care != "" {
		c.Care = l.care
	}
	text, err := report.JSONLine(l.e.Advise(c))
	return outLine{text: text, err: err}
}

// eachLine hands on every line of a stream, without its end, and with the most
// that a case may have: of what is longer only that it is so. The last line may
// lack its end.
func eachLine(in io.Reader, hand func(slot) error) error {
	r := bufio.NewReaderSize(in, 64<<10)
	for number := 1; ; number++ {
		s := slot{number: number, out: make(chan outLine, 1)}
		var part []byte
		var err error
		for {
			part, err = r.ReadSlice('\n')
			if s.tooLong = s.tooLong || len(s.data)+len(part) > casefile.MaxBytes; !s.tooLong {
				s.data = append(s.data, part...)
			}
			if !errors.Is(err, bufio.ErrBufferFull) {
				break
			}
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		if err != nil && len(s.data) == 0 && !s.tooLong {
			return nil
		}
		if number == 1 {
			s.data = bytes.TrimPrefix(s.data, []byte("\xef\xbb\xbf"))
		}
		s.data = bytes.TrimRight(s.data, "\r\n")
		if herr := hand(s); herr != nil || err != nil {
			return herr
		}
	}
}
